package org.coilwright.behaviour;

import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;

/** Goes along the rows of a {@link DayFile}: finds every fault in the order of its lines. */
final class DayScan {
  /** More than this many are not told one by one. */
  private static final int MOST_PROBLEMS = 20;

  private static final int MILLIS = 1000;

  private static final String WITH_OFFSET =
      "where the clock was changed, write times with their offset: 2026-03-29T03:00:00+02:00;"
          + " otherwise sort the rows and fill the gap";

  private final List<DayFile.Problem> problems = new ArrayList<>();
  private int number = 1;
  private long rows;
  private int firstMillis;
  private DayHeader.Form form = DayHeader.Form.SECONDS;
  private long before;
  private long apart;
  private double peak;

  /** True after a row that is not where it belongs: the distance from it tells nothing. */
  private boolean unsure;

  /** False once something is wrong. */
  boolean isSound() {
    return problems.isEmpty();
  }

  /** False once there are so many problems that no more are told. */
  boolean goesOn() {
    return problems.size() < MOST_PROBLEMS;
  }

  /** Rows that could be read. */
  long rows() {
    return rows;
  }

  /** Milliseconds from one row to the next; 0 before the second. */
  long apart() {
    return apart;
  }

  /** Time of the day of the first row. */
  int firstMillis() {
    return firstMillis;
  }

  /** Looks at the rest as well, as far as more problems are told. */
  void through(DayRows lines, DayHeader header) throws IOException {
    while (goesOn() && lines.next(header)) {
      take(lines);
    }
  }

  /** A line that is no row at all. */
  void tooLong(int line) {
    number = line;
    tell(
        "this line is longer than " + (DayRows.LONGEST_LINE >> 10) + " KiB",
        "write one value for each column; check that this is the file you mean");
  }

  /** What came of it. */
  DayFile.Read end(DayFile day, DayHeader header) {
    return isSound()
        ? new DayFile.Usable(day, rows, apart / (double) MILLIS, header.loads(), peak)
        : unusable();
  }

  /** What is wrong, with what only shows at the end. */
  DayFile.Unusable unusable() {
    if (rows < 2 && problems.isEmpty()) {
      tell(
          "the file has fewer than two rows", "give at least two, so that their distance is known");
    }
    return new DayFile.Unusable(List.copyOf(problems));
  }

  /** Takes the row that was read last. */
  void take(DayRows row) {
    if (row.fault().isEmpty()
        && rows > 1
        && !unsure
        && row.form() == form
        && row.millis() - before == apart) {
      // as nearly all rows are
      before = row.millis();
      peak = Math.max(peak, row.pv());
      rows++;
      return;
    }
    number = row.number();
    if (!row.fault().isEmpty()) {
      tell(row.fault(), row.remedy());
      unsure = true;
      return;
    }
    peak = Math.max(peak, row.pv());
    long after = row.millis() - before;
    boolean measured = !unsure;
    unsure = false;
    if (rows == 0) {
      firstMillis = row.ofDay();
    } else if (row.form() != form) {
      tell("the form of the time changes here", "write all times in the form of the first row");
      unsure = true;
    } else if (after == 0) {
      tell("this time is there twice", "strike one of the two rows out");
    } else if (after < 0) {
      tell(
          "this time lies before that of the row above",
          turned(row, after) ? WITH_OFFSET : "sort the rows by time");
      unsure = true;
    } else if (apart == 0) {
      apart = measured ? after : 0;
      if (apart > 3600L * MILLIS || (apart > 0 && 86_400L * MILLIS % apart != 0)) {
        tell(
            "the first two rows are %s s apart".formatted(seconds(apart)),
            "use rows at most an hour apart that divide a day evenly");
      }
    } else if (measured && after != apart) {
      tell(
          "rows are %s s apart, but this one comes %s s after the one above"
              .formatted(seconds(apart), seconds(after)),
          turned(row, after) ? WITH_OFFSET : "fill the gap; what happened in it is not guessed");
    }
    form = row.form();
    before = row.millis();
    rows++;
  }

  private static String seconds(long millis) {
    return BigDecimal.valueOf(millis, 3).stripTrailingZeros().toPlainString();
  }

  /** True if the distance is an hour off and a change of the clock may be the cause. */
  private boolean turned(DayRows row, long after) {
    return row.form() == DayHeader.Form.LOCAL && Math.abs(after - apart) == 3600L * MILLIS;
  }

  private void tell(String what, String remedy) {
    problems.add(new DayFile.Problem(number, what, remedy));
  }
}
