package org.coilwright.pdf;

import java.util.List;
import org.coilwright.checklist.TestRow;

/** How rows are told by their numbers. */
final class Rows {
  private Rows() {}

  /** {@code 5.1, 5.3–5.6}: rows that follow each other are told by the first and the last. */
  static String ranges(List<TestRow> rows) {
    StringBuilder out = new StringBuilder();
    int from = 0;
    for (int i = 0; i < rows.size(); i++) {
      if (i == rows.size() - 1 || !follows(rows.get(i), rows.get(i + 1))) {
        out.append(out.isEmpty() ? "" : ", ").append(rows.get(from).number());
        if (i > from) {
          out.append(i == from + 1 ? ", " : "–").append(rows.get(i).number());
        }
        from = i + 1;
      }
    }
    return out.toString();
  }

  private static boolean follows(TestRow row, TestRow next) {
    int point = row.number().lastIndexOf('.') + 1;
    return next.number().startsWith(row.number().substring(0, point))
        && next.number().lastIndexOf('.') + 1 == point
        && Integer.parseInt(next.number().substring(point))
            == Integer.parseInt(row.number().substring(point)) + 1;
  }
}
