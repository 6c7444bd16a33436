// Over 250 lines: one form of a number or a time after the other.
package org.coilwright.behaviour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Bytes and text give the same rows, bit for bit, whatever is written. */
class DayRowsTest {
  private static final String HEAD = "time,pv kW,house W,oven W";

  private static final List<String> NUMBERS =
      List.of(
          "0",
          "1",
          "7.25",
          "0.1",
          "123456.789",
          "999999999999999",
          "0.000000000000001",
          "1234567890.12345",
          "12345678901234567890",
          "0.30000000000000000001",
          "1.",
          ".5",
          ".",
          "",
          "-1",
          "+5",
          "-0",
          "1e3",
          "1E-3",
          "1e",
          "1.2.3",
          "0x1p3",
          "NaN",
          "1,5",
          "12 W",
          "1f",
          "007.50",
          "1000",
          "1000.0000001",
          "1000000",
          "1000000.1",
          "९",
          "1_000",
          " 3",
          "3\t",
          "\u00a05",
          "9007199254740993",
          "5e-324",
          "179769313486231570000",
          "4.35",
          "2.675");

  private static final List<String> TIMES =
      List.of(
          "0",
          "86399.999",
          "0.0005",
          "99999999999",
          "100000000000",
          "1e5",
          "-1",
          "noon",
          "",
          "2026-06-01T12:00:00",
          "2026-06-01 12:00:00",
          "2026-06-01t12:00:00",
          "2026-06-01T12:00",
          "2026-06-01T12:00:00.5",
          "2026-06-01T24:00:00",
          "2026-06-01T23:59:60",
          "2026-02-29T00:00:00",
          "2024-02-29T00:00:00",
          "2026-13-01T00:00:00",
          "2026-06-01T12:00:00Z",
          "2026-06-01T12:00:00+02:00",
          "2026-06-01T12:00:00-03:30",
          "2026-06-01T12:00:00+18:00",
          "2026-06-01T12:00:00+18:01",
          "2026-06-01T12:00:00+02",
          "2026-06-01T12:00:00+02:60",
          "2026-06-01T12:00:00+02:00:30",
          "2026-06-01T12:00:00-00:00",
          "2026-06-01T12:00:00 Z",
          "2026-06-01T12:00:00Zx",
          "2026-06-01",
          "0000-01-01T00:00:00",
          "9999-12-31T23:59:59",
          "+10000-01-01T00:00:00",
          "+999999999-12-31T23:00:00Z",
          "-999999999-01-01T00:00:00Z",
          "12345-01-01T00:00:00",
          "1969-12-31T23:59:59",
          "1234-",
          "    -");

  private static DayRows rows(String text) throws IOException {
    DayRows rows =
        new DayRows(
            new ByteArrayInputStream((HEAD + "\n" + text).getBytes(StandardCharsets.UTF_8)));
    assertEquals(HEAD, rows.head());
    return rows;
  }

  private static String read(String line, DayHeader header) throws IOException {
    DayRows rows = rows(line);
    if (!rows.next(header)) {
      return "none";
    }
    return rows.fault().isEmpty()
        ? told(rows.form(), rows.millis(), rows.ofDay(), rows.pv(), rows.other())
        : rows.fault() + rows.remedy();
  }

  private static String told(DayHeader.Form form, long millis, int ofDay, double pv, double other) {
    return "%s %d %d %x %x"
        .formatted(
            form, millis, ofDay, Double.doubleToRawLongBits(pv), Double.doubleToRawLongBits(other));
  }

  private static String expected(String line, DayHeader header) {
    if (line.isBlank()) {
      return "none";
    }
    DayHeader.Row row = header.row(line);
    return row.fault().isEmpty()
        ? told(row.time().form(), row.time().millis(), row.time().ofDay(), row.pv(), row.other())
        : row.fault() + row.remedy();
  }

  @Test
  void every_form_of_a_number_and_of_a_time() throws IOException {
    DayHeader header = DayHeader.of(HEAD);
    for (String number : NUMBERS) {
      for (String line :
          List.of(
              "1," + number + ",300,4",
              "1,0.5," + number + ",4",
              "1,0.5,300," + number,
              " 1 , " + number + " ,300 ,4 ",
              number + ",0.5,300,4",
              "1," + number + ",300",
              "1," + number + ",300,4,5")) {
        assertEquals(expected(line, header), read(line, header), line);
      }
    }
    for (String time : TIMES) {
      String line = time + ",0.5,300,4";
      assertEquals(expected(line, header), read(line, header), line);
    }
  }

  @Test
  void random_decimals() throws IOException {
    DayHeader header = DayHeader.of(HEAD);
    Random random = new Random(510);
    for (int i = 0; i < 20_000; i++) {
      StringBuilder line = new StringBuilder().append(i);
      for (int column = 0; column < 3; column++) {
        line.append(',');
        int before = random.nextInt(7);
        int behind = random.nextInt(12);
        for (int k = 0; k < before; k++) {
          line.append((char) ('0' + random.nextInt(10)));
        }
        if (behind > 0) {
          line.append('.');
        }
        for (int k = 0; k < behind; k++) {
          line.append((char) ('0' + random.nextInt(10)));
        }
      }
      assertEquals(
          expected(line.toString(), header), read(line.toString(), header), line::toString);
    }
  }

  /** Hands out a few bytes at a time, as a slow disk may. */
  private static final class Sips extends InputStream {
    private final byte[] bytes;
    private int at;

    Sips(byte[] bytes) {
      this.bytes = bytes;
    }

    @Override
    public int read() {
      return at < bytes.length ? bytes[at++] & 0xff : -1;
    }

    @Override
    public int read(byte[] into, int from, int most) {
      int n = Math.min(Math.min(most, bytes.length - at), 1 + at % 70_001);
      System.arraycopy(bytes, at, into, from, Math.max(0, n));
      at += Math.max(0, n);
      return n <= 0 ? -1 : n;
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"\n", "\r\n", "\r"})
  void rows_across_the_ends_of_the_buffer_with_every_kind_of_line_end(String end)
      throws IOException {
    StringBuilder text = new StringBuilder(HEAD);
    Random random = new Random(7);
    for (int i = 0; i < 150_000; i++) {
      text.append(end).append(i).append(',').append(random.nextInt(5000) / 1000.0).append(',');
      text.append(random.nextInt(9000)).append(random.nextInt(50) == 0 ? "e-1," : ",");
      text.append(" ".repeat(random.nextInt(3))).append(random.nextInt(100));
      if (random.nextInt(1000) == 0) {
        text.append(end).append(" ".repeat(random.nextInt(40_000)));
      }
    }
    DayHeader header = DayHeader.of(HEAD);
    try (BufferedReader lines = new BufferedReader(new StringReader(text.toString()));
        DayRows rows = new DayRows(new Sips(text.toString().getBytes(StandardCharsets.UTF_8)))) {
      assertEquals(lines.readLine(), rows.head());
      int number = 1;
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        number++;
        if (line.isBlank()) {
          continue;
        }
        assertTrue(rows.next(header));
        assertEquals(number, rows.number());
        String told = told(rows.form(), rows.millis(), rows.ofDay(), rows.pv(), rows.other());
        assertEquals(expected(line, header), told, line);
      }
      assertFalse(rows.next(header));
    }
  }

  @Test
  void a_line_longer_than_any_row_is_refused_wherever_it_stands() throws IOException {
    DayHeader header = DayHeader.of(HEAD);
    String endless = "7".repeat(DayRows.LONGEST_LINE + 1);
    assertThrows(DayRows.LongLine.class, () -> rows(endless).next(header));
    assertThrows(
        DayRows.LongLine.class, () -> rows("1,1,1," + " ".repeat(70_000) + "1").next(header));
    assertThrows(
        DayRows.LongLine.class,
        () -> new DayRows(new ByteArrayInputStream(new byte[1 << 20])).head());
    DayRows rows = rows("1,1,1,1\n" + endless);
    assertTrue(rows.next(header));
    assertThrows(DayRows.LongLine.class, () -> rows.next(header));
    assertEquals(3, rows.number());
  }
}
