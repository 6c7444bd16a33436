package org.coilwright.pdf;

import java.util.List;
import org.coilwright.checklist.RowRanges;
import org.coilwright.checklist.TestRow;
import org.coilwright.checklist.Texts;

/** How rows are told by their numbers. */
final class Rows {
  private Rows() {}

  /** {@code 5.1, 5.3–5.6}: rows that follow each other are told by the first and the last. */
  static String ranges(List<TestRow> rows, Texts texts) {
    return String.join(", ", RowRanges.of(rows.stream().map(row -> row.called(texts)).toList()));
  }
}
