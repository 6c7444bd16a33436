// Over 250 lines: what a day file is asked, from its name to its last row.
package org.coilwright.behaviour;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A day or a year of measurements as comma-separated values, read in a stream, again for each
 * rehearsal. The first that runs through it finds every fault on the way.
 *
 * <p>The first line names the columns: {@code time}, {@code pv}, {@code house} and any further
 * loads, each power with its unit: {@code time,pv W,house W,oven kW}. {@code time} is in seconds
 * since midnight or in ISO 8601; with offsets, a change of the clock is no gap, and the time of day
 * goes on by the offset of the first row. Rows are equally far apart; each value holds until the
 * next row. Rows further than a second apart are stepped at one second.
 */
public final class DayFile implements Feed {
  /** Opens the same bytes again and again. */
  @FunctionalInterface
  public interface Bytes {
    /** A new stream from the first byte. */
    InputStream open() throws IOException;
  }

  /** What came of reading the file. */
  public sealed interface Read {}

  /**
   * It can be used.
   *
   * @param peakWatts the most that the column {@code pv} holds
   */
  public record Usable(
      DayFile day, long rows, double secondsApart, List<String> loads, double peakWatts)
      implements Read {}

  /** Its first rows are sound; of the others nothing is known yet. */
  public record Begun(DayFile day) implements Read {}

  /** It cannot; at least one problem, in line order. */
  public record Unusable(List<Problem> problems) implements Read {}

  /**
   * What is wrong with a line.
   *
   * @param line 1 for the first; 0 if it is about the file as a whole
   */
  public record Problem(int line, String what, String remedy) {}

  private static final int MILLIS = 1000;

  private final Bytes bytes;
  private final DayHeader header;
  private final int stepMillis;
  private final int firstMillis;
  private final int repeats;
  private @Nullable DayRows lines;
  private float pvNow;
  private float otherNow;
  private int left;

  /** What the rows are held against the first time they are handed out. */
  private DayScan scan = new DayScan();

  private @Nullable Read outcome;

  private DayFile(Bytes bytes, DayHeader header, long apartMillis, int firstMillis) {
    this.bytes = bytes;
    this.header = header;
    this.firstMillis = firstMillis;
    boolean fine = apartMillis < MILLIS || apartMillis % MILLIS != 0;
    this.stepMillis = fine ? (int) apartMillis : MILLIS;
    this.repeats = (int) (apartMillis / stepMillis);
  }

  /**
   * Reads the file through and tells what is wrong with it.
   *
   * @throws IOException if the bytes cannot be had
   */
  public static Read read(Bytes bytes) throws IOException {
    Read begun = begin(bytes);
    if (!(begun instanceof Begun begin)) {
      return begun;
    }
    float[] pv = new float[1 << 12];
    float[] other = new float[1 << 12];
    try {
      while (begin.day.next(pv, other) > 0) {
        // only what is wrong with them is wanted
      }
    } catch (UncheckedIOException e) {
      throw e.getCause();
    }
    return begin.day.outcome();
  }

  /**
   * Reads the first line and two rows: enough to begin. The rest is looked at while the rows are
   * handed out for the first time, so that they need be read but once; what came of it {@link
   * #outcome} then tells, and until it says {@link Usable}, nothing that was made of the rows
   * holds.
   *
   * @return {@link Begun}, or {@link Unusable} with every problem if one shows this early
   * @throws IOException if the bytes cannot be had
   */
  public static Read begin(Bytes bytes) throws IOException {
    DayScan scan = new DayScan();
    try (DayRows rows = new DayRows(bytes.open())) {
      try {
        String first = rows.head();
        if (first.isBlank()) {
          return unusable(1, "the file is empty", "begin with: time,pv W,house W");
        }
        DayHeader header = DayHeader.of(first);
        if (!header.problems().isEmpty()) {
          return new Unusable(header.problems());
        }
        while (scan.rows() < 2 && scan.isSound() && rows.next(header)) {
          scan.take(rows);
        }
        if (scan.isSound() && scan.rows() == 2) {
          return new Begun(new DayFile(bytes, header, scan.apart(), scan.firstMillis()));
        }
        scan.through(rows, header);
        return scan.unusable();
      } catch (DayRows.LongLine e) {
        scan.tooLong(rows.number());
        return scan.unusable();
      }
    } catch (CharacterCodingException e) {
      return noText();
    }
  }

  private static Unusable noText() {
    return unusable(0, "the file is not UTF-8 text", "save it as plain text with commas");
  }

  private static Unusable unusable(int line, String what, String remedy) {
    return new Unusable(List.of(new Problem(line, what, remedy)));
  }

  /**
   * What came of the file.
   *
   * @return {@link Usable} or {@link Unusable}
   * @throws IllegalStateException before all rows have been handed out once
   */
  public Read outcome() {
    if (outcome == null) {
      throw new IllegalStateException("not read to its end");
    }
    return outcome;
  }

  @Override
  public int stepMillis() {
    return stepMillis;
  }

  @Override
  public int firstMillisOfDay() {
    return firstMillis;
  }

  @Override
  public void rewind() {
    close();
    left = 0;
    if (outcome == null) {
      scan = new DayScan();
    }
  }

  @Override
  public int next(float[] pv, float[] other) {
    try {
      if (outcome instanceof Unusable) {
        return 0;
      }
      if (lines == null) {
        lines = new DayRows(bytes.open());
        lines.head();
      }
      int n = 0;
      while (n < pv.length && (left > 0 || nextRow(lines))) {
        if (left == 1) {
          pv[n] = pvNow;
          other[n++] = otherNow;
          left = 0;
        } else {
          int run = Math.min(left, pv.length - n);
          Arrays.fill(pv, n, n + run, pvNow);
          Arrays.fill(other, n, n + run, otherNow);
          n += run;
          left -= run;
        }
      }
      if (n == 0) {
        close();
      }
      return n;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private boolean nextRow(DayRows rows) throws IOException {
    boolean more = outcome == null ? nextScanned(rows) : rows.next(header);
    if (more) {
      pvNow = (float) rows.pv();
      otherNow = (float) rows.other();
      left = repeats;
    }
    return more;
  }

  /** The next row if nothing has been wrong so far; otherwise looks for what else is wrong. */
  private boolean nextScanned(DayRows rows) throws IOException {
    try {
      if (rows.next(header)) {
        scan.take(rows);
        if (scan.isSound()) {
          return true;
        }
        scan.through(rows, header);
      }
      outcome = scan.end(this, header);
    } catch (DayRows.LongLine e) {
      scan.tooLong(rows.number());
      outcome = scan.unusable();
    } catch (CharacterCodingException e) {
      outcome = noText();
    }
    return false;
  }

  private void close() {
    try {
      if (lines != null) {
        lines.close();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    lines = null;
  }
}
