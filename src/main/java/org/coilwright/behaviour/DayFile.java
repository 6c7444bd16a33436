package org.coilwright.behaviour;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A day or a year of measurements as comma-separated values, read in a stream: whole once to find
 * every fault, and again for each rehearsal.
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

  /** It can be used. */
  public record Usable(DayFile day, long rows, double secondsApart, List<String> loads)
      implements Read {}

  /** It cannot; at least one problem, in line order. */
  public record Unusable(List<Problem> problems) implements Read {}

  /**
   * What is wrong with a line.
   *
   * @param line 1 for the first; 0 if it is about the file as a whole
   */
  public record Problem(int line, String what, String remedy) {}

  /** More than this many are not told one by one. */
  private static final int MOST_PROBLEMS = 20;

  private static final int MILLIS = 1000;

  private final Bytes bytes;
  private final DayHeader header;
  private final int stepMillis;
  private final int firstMillis;
  private final int repeats;
  private @Nullable BufferedReader reader;
  private float pvNow;
  private float otherNow;
  private int left;

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
    try (BufferedReader lines = reader(bytes)) {
      String first = lines.readLine();
      if (first == null || first.isBlank()) {
        return unusable(1, "the file is empty", "begin with: time,pv W,house W");
      }
      DayHeader header = DayHeader.of(first.startsWith("\uFEFF") ? first.substring(1) : first);
      if (!header.problems().isEmpty()) {
        return new Unusable(header.problems());
      }
      return new Scan(bytes, header).through(lines);
    } catch (CharacterCodingException e) {
      return unusable(0, "the file is not UTF-8 text", "save it as plain text with commas");
    }
  }

  private static Unusable unusable(int line, String what, String remedy) {
    return new Unusable(List.of(new Problem(line, what, remedy)));
  }

  private static BufferedReader reader(Bytes bytes) throws IOException {
    return new BufferedReader(
        new InputStreamReader(bytes.open(), StandardCharsets.UTF_8.newDecoder()), 1 << 16);
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
  }

  @Override
  public int next(float[] pv, float[] other) {
    try {
      if (reader == null) {
        reader = reader(bytes);
        reader.readLine();
      }
      int n = 0;
      while (n < pv.length && (left > 0 || nextRow(reader))) {
        int run = Math.min(left, pv.length - n);
        java.util.Arrays.fill(pv, n, n + run, pvNow);
        java.util.Arrays.fill(other, n, n + run, otherNow);
        n += run;
        left -= run;
      }
      if (n == 0) {
        close();
      }
      return n;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private boolean nextRow(BufferedReader lines) throws IOException {
    String line = lines.readLine();
    while (line != null && line.isBlank()) {
      line = lines.readLine();
    }
    if (line == null) {
      return false;
    }
    DayHeader.Row row = header.row(line);
    pvNow = (float) row.pv();
    otherNow = (float) row.other();
    left = repeats;
    return true;
  }

  private void close() {
    try {
      if (reader != null) {
        reader.close();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    reader = null;
  }

  private static final String WITH_OFFSET =
      "where the clock was changed, write times with their offset: 2026-03-29T03:00:00+02:00;"
          + " otherwise sort the rows and fill the gap";

  /** The first way through the file. */
  private static final class Scan {
    private final Bytes bytes;
    private final DayHeader header;
    private final List<Problem> problems = new ArrayList<>();
    private int number = 1;
    private long rows;
    private DayHeader.@Nullable Time first;
    private long before;
    private long apart;

    Scan(Bytes bytes, DayHeader header) {
      this.bytes = bytes;
      this.header = header;
    }

    Read through(BufferedReader lines) throws IOException {
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
            "the file has fewer than two rows",
            "give at least two, so that their distance is known");
      }
      if (!problems.isEmpty()) {
        return new Unusable(List.copyOf(problems));
      }
      int firstMillis = first == null ? 0 : first.ofDay();
      return new Usable(
          new DayFile(bytes, header, apart, firstMillis),
          rows,
          apart / (double) MILLIS,
          header.loads());
    }

    private void take(DayHeader.Row row) {
      if (!row.fault().isEmpty()) {
        tell(row.fault(), row.remedy());
        return;
      }
      DayHeader.Time time = row.time();
      long after = time.millis() - before;
      if (first == null) {
        first = time;
      } else if (after == 0) {
        tell("this time is there twice", "strike one of the two rows out");
      } else if (after < 0) {
        tell(
            "this time lies before that of the row above",
            turned(time, after) ? WITH_OFFSET : "sort the rows by time");
      } else if (rows == 1) {
        apart = after;
        if (apart > 3600L * MILLIS || 86_400L * MILLIS % apart != 0) {
          tell(
              "the first two rows are %s s apart".formatted(apart / (double) MILLIS),
              "use rows at most an hour apart that divide a day evenly");
        }
      } else if (after != apart) {
        tell(
            "rows are %s s apart, but this one comes %s s after the one above"
                .formatted(apart / (double) MILLIS, after / (double) MILLIS),
            turned(time, after) ? WITH_OFFSET : "fill the gap; what happened in it is not guessed");
      }
      before = time.millis();
      rows++;
    }

    /** True if the distance is an hour off and a change of the clock may be the cause. */
    private boolean turned(DayHeader.Time time, long after) {
      return time.form() == DayHeader.Form.LOCAL && Math.abs(after - apart) == 3600L * MILLIS;
    }

    private void tell(String what, String remedy) {
      problems.add(new Problem(number, what, remedy));
    }
  }
}
