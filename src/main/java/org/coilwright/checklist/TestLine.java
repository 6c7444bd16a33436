package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;

/**
 * Rows that are answered on one printed line: one pair of boxes for all.
 *
 * @param rows at least one
 */
public record TestLine(List<TestRow> rows) {
  /** Copies the list. */
  public TestLine {
    rows = List.copyOf(rows);
  }

  /** The row after which the boxes are named. */
  public TestRow first() {
    return rows.get(0);
  }

  /** True if several share the line. */
  public boolean isShared() {
    return rows.size() > 1;
  }

  /** True if the line has a box for what did not come out as expected. */
  public boolean hasFail() {
    return !first().manner().isDone() && first().manner() != Manner.LISTED;
  }

  /** True if a row of this line is told by a tick of its own beside the line's pair. */
  public boolean ticksAlone(TestRow row) {
    return isShared() && row.manner() == Manner.SEEN;
  }

  /** The lines that rows stand in, in order. */
  static List<TestLine> of(List<TestRow> rows) {
    List<TestLine> lines = new ArrayList<>();
    List<TestRow> open = new ArrayList<>();
    for (TestRow row : rows) {
      if (!open.isEmpty() && !row.line().equals(open.get(0).name())) {
        lines.add(new TestLine(open));
        open.clear();
      }
      open.add(row);
    }
    if (!open.isEmpty()) {
      lines.add(new TestLine(open));
    }
    return List.copyOf(lines);
  }
}
