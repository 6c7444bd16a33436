package org.coilwright.cli;

import java.util.List;

/** Rows of words in columns, the first row as a heading. */
final class Columns {
  private Columns() {}

  static void print(StringBuilder out, List<List<String>> rows, Style style) {
    int[] widths = new int[rows.get(0).size()];
    for (List<String> row : rows) {
      for (int i = 0; i < widths.length; i++) {
        widths[i] = Math.max(widths[i], Lines.width(Lines.harmless(row.get(i))));
      }
    }
    boolean heading = true;
    for (List<String> row : rows) {
      StringBuilder line = new StringBuilder();
      for (int i = 0; i < widths.length; i++) {
        line.append(Lines.padded(Lines.harmless(row.get(i)), widths[i])).append("  ");
      }
      String text = line.toString().stripTrailing();
      out.append(heading ? style.strong(text) : text).append('\n');
      heading = false;
    }
  }
}
