package org.coilwright.cli;

import java.util.List;
import org.coilwright.draft.Draft;

/** What a draft came to, as text. */
final class DraftText {
  private static final int DESIGNATION = 4;

  private DraftText() {}

  static String of(Draft.Drafted drafted, Style style) {
    StringBuilder out = new StringBuilder();
    out.append(style.strong(drafted.title())).append('\n');
    Lines.wrap(out, "  ", drafted.says() + ".", style.width());
    out.append("\nTo buy, at least as good as this\n");
    drafted
        .buy()
        .forEach(
            (name, what) ->
                Lines.wrap(out, "  " + Lines.padded(name, DESIGNATION), what, style.width()));
    others(out, "Beside it", drafted.others(), style);
    list(out, "Assumed, because the brief does not say it", drafted.assumed(), style);
    list(out, "Open", drafted.open(), style);
    out.append('\n').append(VerdictLine.of(drafted.report(), style)).append('\n');
    return out.toString();
  }

  static String of(Draft.Nothing nothing, Style style) {
    StringBuilder out = new StringBuilder();
    out.append(style.bad("No arrangement passes"))
        .append(", so nothing was written. The nearest come first.\n");
    others(out, "Why not", nothing.others(), style);
    list(out, "What would have to change", nothing.change(), style);
    list(out, "Assumed, because the brief does not say it", nothing.assumed(), style);
    return out.toString();
  }

  private static void others(
      StringBuilder out, String title, List<Draft.Other> others, Style style) {
    if (others.isEmpty()) {
      return;
    }
    out.append('\n').append(title).append('\n');
    for (Draft.Other other : others) {
      out.append("  ").append(other.title()).append('\n');
      other.lines().forEach(line -> Lines.wrap(out, "      ", line, style.width()));
    }
  }

  private static void list(StringBuilder out, String title, List<String> lines, Style style) {
    if (!lines.isEmpty()) {
      out.append('\n').append(title).append('\n');
      lines.forEach(line -> Lines.wrap(out, "  - ", line, style.width()));
    }
  }
}
