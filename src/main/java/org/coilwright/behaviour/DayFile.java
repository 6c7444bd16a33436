package org.coilwright.behaviour;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
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

  /**
   * It can be used.
   *
   * @param peakWatts the most that the column {@code pv} holds
   */
  public record Usable(
      DayFile day, long rows, double secondsApart, List<String> loads, double peakWatts)
      implements Read {}

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
  private @Nullable BufferedReader reader;
  private float pvNow;
  private float otherNow;
  private int left;

  DayFile(Bytes bytes, DayHeader header, long apartMillis, int firstMillis) {
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
      return new DayScan(bytes, header).through(lines);
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
}
