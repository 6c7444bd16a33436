package org.coilwright.cli;

import java.util.ArrayList;
import java.util.List;

/** Text on a terminal: wrapping, widths, and making foreign text harmless. */
final class Lines {
  private Lines() {}

  /**
   * The text with every control character replaced, so that a netlist can neither move the cursor
   * nor recolour the screen. A tab becomes one blank: columns are counted in characters.
   */
  static String harmless(String text) {
    StringBuilder out = new StringBuilder(text.length());
    text.codePoints()
        .forEach(
            c -> {
              if (c == '\t') {
                out.append(' ');
              } else if (Character.isISOControl(c) || Character.getType(c) == Character.FORMAT) {
                out.append('\u00b7');
              } else {
                out.appendCodePoint(c);
              }
            });
    return out.toString();
  }

  /** Characters, an emoji or other supplementary one counted once. */
  static int width(String text) {
    return text.codePointCount(0, text.length());
  }

  /** {@code text} filled up with blanks to {@code width}. */
  static String padded(String text, int width) {
    return text + " ".repeat(Math.max(0, width - width(text)));
  }

  /** {@code text} cut to {@code width}, with an ellipsis where something is left out. */
  static String shortened(String text, int width) {
    return width(text) <= width
        ? text
        : text.substring(0, text.offsetByCodePoints(0, Math.max(0, width - 1))).stripTrailing()
            + "…";
  }

  /**
   * Appends words, wrapped: the first line after {@code lead}, further ones indented by as much.
   */
  static void wrap(StringBuilder out, String lead, String text, int width) {
    int indent = width(lead);
    String before = lead;
    for (String line : wrapped(harmless(text), width - indent)) {
      out.append((before + line).stripTrailing()).append('\n');
      before = " ".repeat(indent);
    }
  }

  /** Words in lines of {@code width} at most, where no single word is longer; at least one line. */
  static List<String> wrapped(String text, int width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    int used = 0;
    for (String word : words(text)) {
      int length = width(word);
      if (used > 0 && used + 1 + length > width) {
        lines.add(line.toString());
        line.setLength(0);
        used = 0;
      }
      if (used > 0) {
        line.append(' ');
        used++;
      }
      line.append(word);
      used += length;
    }
    lines.add(line.toString());
    return lines;
  }

  private static List<String> words(String text) {
    List<String> words = new ArrayList<>();
    int start = 0;
    while (start < text.length()) {
      int end = text.indexOf(' ', start);
      if (end < 0) {
        end = text.length();
      }
      if (end > start) {
        words.add(text.substring(start, end));
      }
      start = end + 1;
    }
    return words;
  }
}
