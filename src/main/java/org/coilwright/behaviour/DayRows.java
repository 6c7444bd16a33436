// Over 250 lines: one loop over bytes, with every form of a number and a time in it.
package org.coilwright.behaviour;

import java.io.Closeable;
import java.io.IOException;
import java.io.InputStream;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;

/**
 * The lines of a {@link DayFile}, one after the other, from its bytes. A row of plain decimals with
 * its time in seconds or ISO 8601 is read as it lies there, with no text made of it; any other line
 * becomes a text and is read by {@link DayHeader#row}, which also says what is wrong with it. Both
 * ways give the same figures, bit for bit.
 */
final class DayRows implements Closeable {
  /** In bytes. A row of a hundred columns stays far below it. */
  static final int LONGEST_LINE = 1 << 16;

  private static final int BUFFER = 1 << 20;

  /** What is looked at beyond the end of what was read, up to the first byte that does not fit. */
  private static final int BEYOND = 64;

  /** A decimal of no more digits is a whole number divided by a power of ten, rounded once. */
  private static final int MOST_DIGITS = 15;

  private static final double[] POWERS = new double[MOST_DIGITS + 1];

  static {
    double power = 1;
    for (int i = 0; i < POWERS.length; i++) {
      POWERS[i] = power;
      power *= 10;
    }
  }

  private static final int DAY_SECONDS = 86_400;
  private static final int MILLIS = 1000;

  /** A line that is longer than any row: nothing behind it is looked at. */
  static final class LongLine extends IOException {
    private static final long serialVersionUID = 1;

    LongLine() {
      super("a line longer than " + LONGEST_LINE + " bytes");
    }
  }

  private final InputStream in;
  private final byte[] bytes = new byte[BUFFER + BEYOND];
  private int at;
  private int end;
  private boolean ended;
  private int number;

  // the columns, as the loop wants them
  private double[] factors = new double[0];
  private int sunAt;
  private int separator;

  // the row
  private DayHeader.Form form = DayHeader.Form.SECONDS;
  private long millis;
  private int ofDay;
  private double pv;
  private double other;
  private String fault = "";
  private String remedy = "";

  // what the last number was, and the last date
  private double value;
  private int date = -1;
  private long dateSeconds;

  DayRows(InputStream in) {
    this.in = in;
  }

  /** Number of the line that was read last, 1 for the first. */
  int number() {
    return number;
  }

  DayHeader.Form form() {
    return form;
  }

  /** What distances are measured on; see {@link DayHeader.Time}. */
  long millis() {
    return millis;
  }

  /** Milliseconds since midnight by the clock on the wall. */
  int ofDay() {
    return form == DayHeader.Form.WITH_OFFSET
        ? ofDay
        : (int) Math.floorMod(millis, (long) DAY_SECONDS * MILLIS);
  }

  double pv() {
    return pv;
  }

  double other() {
    return other;
  }

  /** What is wrong with the row; empty if it is sound. */
  String fault() {
    return fault;
  }

  String remedy() {
    return remedy;
  }

  /**
   * The first line, without a byte order mark.
   *
   * @return blank if there is none
   */
  String head() throws IOException {
    number++;
    fill();
    String line = at == end ? "" : text();
    return line.startsWith("\uFEFF") ? line.substring(1) : line;
  }

  /**
   * Goes on to the next row; empty lines are left out but counted.
   *
   * @return false at the end
   * @throws LongLine if a line is too long
   */
  boolean next(DayHeader header) throws IOException {
    if (factors.length == 0) {
      factors = header.factors();
      sunAt = header.sun();
      separator = header.separator();
    }
    while (true) {
      if (end - at < LONGEST_LINE + 2) {
        fill();
      }
      number++;
      if (at == end) {
        return false;
      }
      if (bytes[at] == '\n' || bytes[at] == '\r') {
        at = behind(at);
        continue;
      }
      if (isPlain()) {
        return true;
      }
      String line = text();
      if (!line.isBlank()) {
        take(header.row(line));
        return true;
      }
    }
  }

  private void take(DayHeader.Row row) {
    fault = row.fault();
    remedy = row.remedy();
    form = row.time().form();
    millis = row.time().millis();
    ofDay = row.time().ofDay();
    pv = row.pv();
    other = row.other();
  }

  /** Moves what is left to the front and reads on until the buffer is full or the file ends. */
  private void fill() throws IOException {
    if (ended) {
      return;
    }
    System.arraycopy(bytes, at, bytes, 0, end - at);
    end -= at;
    at = 0;
    int read = in.readNBytes(bytes, end, BUFFER - end);
    end += read;
    ended = end < BUFFER;
    bytes[end] = '\n';
  }

  /** The line that begins here, as text; goes on behind it. */
  private String text() throws IOException {
    int to = at;
    while (to < end && bytes[to] != '\n' && bytes[to] != '\r') {
      to++;
      if (to - at > LONGEST_LINE) {
        throw new LongLine();
      }
    }
    String line =
        StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes, at, to - at)).toString();
    at = behind(to);
    return line;
  }

  /** Behind the line end that stands at {@code to}. */
  private int behind(int to) {
    if (to == end) {
      return end;
    }
    return bytes[to] == '\r' && to + 1 < end && bytes[to + 1] == '\n' ? to + 2 : to + 1;
  }

  /**
   * Takes the row that begins here and goes on behind it; if it is not a plain one, does nothing.
   */
  private boolean isPlain() {
    byte[] b = bytes;
    double[] watts = factors;
    double sun = 0;
    double rest = 0;
    int p = at;
    for (int i = 0; i < watts.length; i++) {
      if (i > 0 && b[p++] != separator) {
        return false;
      }
      while (b[p] == ' ') {
        p++;
      }
      double factor = watts[i];
      if (factor == 0) {
        p = b[p + 4] == '-' ? date(p) : seconds(p);
        if (p < 0) {
          return false;
        }
      } else {
        p = decimal(p);
        if (p < 0) {
          return false;
        }
        double power = value * factor;
        if (!(power <= DayHeader.MOST_WATTS)) {
          return false;
        }
        if (i == sunAt) {
          sun = power;
        } else {
          rest += power;
        }
      }
      while (b[p] == ' ') {
        p++;
      }
    }
    // so long a line may only seem to end, where the buffer does
    if ((b[p] != '\n' && b[p] != '\r') || p - at > LONGEST_LINE) {
      return false;
    }
    at = behind(p);
    pv = sun;
    other = rest;
    fault = "";
    return true;
  }

  /** Reads digits with or without a point; what stands there else, or too many, gives -1. */
  private int decimal(int from) {
    byte[] b = bytes;
    int p = from;
    long whole = 0;
    int digit = b[p] - '0';
    while (digit >= 0 && digit <= 9) {
      whole = whole * 10 + digit;
      digit = b[++p] - '0';
    }
    int digits = p - from;
    int behindPoint = 0;
    if (b[p] == '.') {
      int point = p;
      digit = b[++p] - '0';
      while (digit >= 0 && digit <= 9) {
        whole = whole * 10 + digit;
        digit = b[++p] - '0';
      }
      behindPoint = p - point - 1;
      digits += behindPoint;
    }
    if (digits == 0 || digits > MOST_DIGITS) {
      return -1;
    }
    value = behindPoint == 0 ? whole : whole / POWERS[behindPoint];
    return p;
  }

  private int seconds(int from) {
    int p = decimal(from);
    if (p < 0 || !(value < DayHeader.MOST_SECONDS)) {
      return -1;
    }
    millis = Math.round(value * MILLIS);
    form = DayHeader.Form.SECONDS;
    return p;
  }

  /** {@code 2026-06-01T12:00:00}, with {@code Z}, an offset such as {@code +02:00}, or neither. */
  private int date(int from) {
    byte[] b = bytes;
    int p = from;
    int century = two(p);
    int year = two(p + 2);
    int month = two(p + 5);
    int day = two(p + 8);
    int hour = two(p + 11);
    int minute = two(p + 14);
    int second = two(p + 17);
    boolean shaped =
        b[p + 7] == '-'
            && (b[p + 10] == 'T' || b[p + 10] == ' ')
            && b[p + 13] == ':'
            && b[p + 16] == ':'
            && (century | year | month | day | hour | minute | second) >= 0
            && hour < 24
            && minute < 60
            && second < 60;
    if (!shaped || !isDate(((century * 100 + year) * 100 + month) * 100 + day)) {
      return -1;
    }
    int clock = hour * 3600 + minute * 60 + second;
    p += 19;
    int offset = 0;
    DayHeader.Form written = DayHeader.Form.LOCAL;
    if (b[p] == 'Z') {
      written = DayHeader.Form.WITH_OFFSET;
      p++;
    } else if (b[p] == '+' || b[p] == '-') {
      int hours = two(p + 1);
      int minutes = two(p + 4);
      if (hours < 0 || hours > 17 || minutes < 0 || minutes > 59 || b[p + 3] != ':') {
        return -1;
      }
      offset = (hours * 60 + minutes) * (b[p] == '+' ? 60 : -60);
      written = DayHeader.Form.WITH_OFFSET;
      p += 6;
    }
    form = written;
    millis = (dateSeconds + clock - offset) * MILLIS;
    ofDay = clock * MILLIS;
    return p;
  }

  /** Two digits; -1 if they are none. */
  private int two(int p) {
    int tens = bytes[p] - '0';
    int ones = bytes[p + 1] - '0';
    return tens >= 0 && tens <= 9 && ones >= 0 && ones <= 9 ? tens * 10 + ones : -1;
  }

  private boolean isDate(int written) {
    if (written != date) {
      try {
        dateSeconds =
            LocalDate.of(written / 10_000, written / 100 % 100, written % 100).toEpochDay()
                * DAY_SECONDS;
        date = written;
      } catch (DateTimeException e) {
        return false;
      }
    }
    return true;
  }

  @Override
  public void close() throws IOException {
    in.close();
  }
}
