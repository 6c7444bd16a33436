package org.coilwright.behaviour;

import java.io.BufferedReader;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The first way through a {@link DayFile}: finds every fault in the order of its lines. */
final class DayScan {
  /** More than this many are not told one by one. */
  private static final int MOST_PROBLEMS = 20;

  private static final int MILLIS = 1000;

  private static final String WITH_OFFSET =
      "where the clock was changed, write times with their offset: 2026-03-29T03:00:00+02:00;"
          + " otherwise sort the rows and fill the gap";

  private final DayFile.Bytes bytes;
  private final DayHeader header;
  private final List<DayFile.Problem> problems = new ArrayList<>();
  private int number = 1;
  private long rows;
  private DayHeader.@Nullable Time first;
  private DayHeader.Form form = DayHeader.Form.SECONDS;
  private long before;
  private long apart;
  private double peak;

  /** True after a row that is not where it belongs: the distance from it tells nothing. */
  private boolean unsure;

  DayScan(DayFile.Bytes bytes, DayHeader header) {
    this.bytes = bytes;
    this.header = header;
  }

  DayFile.Read through(BufferedReader lines) throws IOException {
    String line = lines.readLine();
    while (line != null && problems.size() < MOST_PROBLEMS) {
      number++;
      if (!line.isBlank()) {
        take(header.row(line));
      }
      line = lines.readLine();
    }
    if (rows < 2 && problems.isEmpty()) {
      tell(
          "the file has fewer than two rows", "give at least two, so that their distance is known");
    }
    if (!problems.isEmpty()) {
      return new DayFile.Unusable(List.copyOf(problems));
    }
    int firstMillis = first == null ? 0 : first.ofDay();
    return new DayFile.Usable(
        new DayFile(bytes, header, apart, firstMillis),
        rows,
        apart / (double) MILLIS,
        header.loads(),
        peak);
  }

  private void take(DayHeader.Row row) {
    if (!row.fault().isEmpty()) {
      tell(row.fault(), row.remedy());
      unsure = true;
      return;
    }
    peak = Math.max(peak, row.pv());
    DayHeader.Time time = row.time();
    long after = time.millis() - before;
    boolean measured = !unsure;
    unsure = false;
    if (first == null) {
      first = time;
    } else if (time.form() != form) {
      tell("the form of the time changes here", "write all times in the form of the first row");
      unsure = true;
    } else if (after == 0) {
      tell("this time is there twice", "strike one of the two rows out");
    } else if (after < 0) {
      tell(
          "this time lies before that of the row above",
          turned(time, after) ? WITH_OFFSET : "sort the rows by time");
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
          turned(time, after) ? WITH_OFFSET : "fill the gap; what happened in it is not guessed");
    }
    form = time.form();
    before = time.millis();
    rows++;
  }

  private static String seconds(long millis) {
    return BigDecimal.valueOf(millis, 3).stripTrailingZeros().toPlainString();
  }

  /** True if the distance is an hour off and a change of the clock may be the cause. */
  private boolean turned(DayHeader.Time time, long after) {
    return time.form() == DayHeader.Form.LOCAL && Math.abs(after - apart) == 3600L * MILLIS;
  }

  private void tell(String what, String remedy) {
    problems.add(new DayFile.Problem(number, what, remedy));
  }
}
