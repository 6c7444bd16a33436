package org.coilwright.cli;

import org.coilwright.netlist.Mark;

/** A line of the netlist with carets under the part that matters. */
final class Excerpt {
  /** Blanks, line number, blank, bar, blank. */
  private static final int GUTTER = 8;

  private final Style style;

  Excerpt(Style style) {
    this.style = style;
  }

  /**
   * Appends the line and, under it, carets and label.
   *
   * @param text the whole line as it stands in the file
   * @param carets how carets and label are coloured
   */
  void append(StringBuilder out, Mark mark, String text, String label, Paint carets) {
    int[] characters = Lines.harmless(text).codePoints().toArray();
    int from = Math.min(Math.max(0, mark.column() - 1), characters.length);
    int to = Math.max(from + 1, Math.min(mark.endColumn() - 1, characters.length));
    int room = Math.max(24, style.width() - GUTTER);

    // A long line is cut around its place, so that carets never wrap away from what they mark.
    int start = 0;
    int end = characters.length;
    if (end > room) {
      start = Math.max(0, Math.min(from - room / 4, end - room));
      end = Math.min(characters.length, start + room);
      to = Math.min(to, Math.max(from + 1, end));
    }
    StringBuilder shown = new StringBuilder();
    for (int i = start; i < end; i++) {
      boolean cut = (i == start && start > 0) || (i == end - 1 && end < characters.length);
      shown.appendCodePoint(cut ? '…' : characters[i]);
    }
    String number = String.valueOf(mark.line());
    out.append(" ".repeat(Math.max(0, GUTTER - 3 - number.length())))
        .append(style.faint(number + " |"))
        .append((" " + shown).stripTrailing())
        .append('\n');
    out.append(" ".repeat(GUTTER - 2)).append(style.faint("|")).append(' ');
    out.append(" ".repeat(from - start));
    String under = "^".repeat(to - from);
    String words = Lines.harmless(label);
    int column = GUTTER + from - start + under.length() + 1;
    if (words.isEmpty()) {
      out.append(carets.paint(under)).append('\n');
    } else if (column + Lines.width(words) <= style.width()) {
      out.append(carets.paint(under + " " + words)).append('\n');
    } else {
      out.append(carets.paint(under)).append('\n');
      int left = Math.max(0, Math.min(from - start, room - Lines.width(words)));
      for (String line : Lines.wrapped(words, room)) {
        out.append(" ".repeat(GUTTER - 2)).append(style.faint("|")).append(' ');
        out.append(" ".repeat(left)).append(carets.paint(line)).append('\n');
      }
    }
  }

  /** A colour. */
  interface Paint {
    String paint(String text);
  }
}
