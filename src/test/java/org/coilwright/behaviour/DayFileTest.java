// Over 250 lines: one thing wrong with a file after the other.
package org.coilwright.behaviour;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.behaviour.DayFile.Problem;
import org.coilwright.behaviour.DayFile.Unusable;
import org.coilwright.behaviour.DayFile.Usable;
import org.junit.jupiter.api.Test;

class DayFileTest {
  private static DayFile.Read read(String... lines) throws IOException {
    return read(String.join("\n", lines).getBytes(StandardCharsets.UTF_8));
  }

  private static DayFile.Read read(byte[] bytes) throws IOException {
    return DayFile.read(() -> new ByteArrayInputStream(bytes));
  }

  private static void assertProblems(DayFile.Read read, Problem... expected) {
    assertTrue(read instanceof Unusable, "it was taken");
    assertEquals(List.of(expected), ((Unusable) read).problems());
  }

  private static Usable usable(DayFile.Read read) {
    assertTrue(read instanceof Usable, read.toString());
    return (Usable) read;
  }

  private static float[][] rows(DayFile day) {
    day.rewind();
    float[] pv = new float[1000];
    float[] other = new float[1000];
    int n = day.next(pv, other);
    assertEquals(0, day.next(new float[1], new float[1]));
    return new float[][] {Arrays.copyOf(pv, n), Arrays.copyOf(other, n)};
  }

  @Test
  void columns_units_and_further_loads_are_read() throws IOException {
    Usable day =
        usable(read("time,pv kW,oven W,house W", "0,1.5,2000,300", "1,0,0,300", "2,0,0,300.5"));
    assertEquals(3, day.rows());
    assertEquals(1.0, day.secondsApart());
    assertEquals(List.of("oven"), day.loads());
    assertEquals(0, day.day().firstMillisOfDay());
    float[][] rows = rows(day.day());
    assertEquals(List.of(1500f, 0f, 0f), List.of(rows[0][0], rows[0][1], rows[0][2]));
    assertEquals(List.of(2300f, 300f, 300.5f), List.of(rows[1][0], rows[1][1], rows[1][2]));
  }

  @Test
  void rows_of_five_minutes_hold_until_the_next_one() throws IOException {
    Usable day = usable(read("time,pv W,house W", "0,100,1", "300,200,2", "600,300,3"));
    assertEquals(300.0, day.secondsApart());
    assertEquals(1000, day.day().stepMillis());
    float[][] rows = rows(day.day());
    assertEquals(900, rows[0].length);
    assertEquals(100f, rows[0][299]);
    assertEquals(200f, rows[0][300]);
    assertEquals(300f, rows[0][899]);
  }

  @Test
  void times_may_be_iso_8601_and_the_time_of_day_is_the_local_one() throws IOException {
    Usable plain =
        usable(read("time,pv W,house W", "2026-06-01T12:00:00,1,2", "2026-06-01T12:00:01,1,2"));
    assertEquals(12 * 3_600_000, plain.day().firstMillisOfDay());
    Usable offset =
        usable(
            read(
                "time,pv W,house W",
                "2026-06-01T06:00:00+02:00,1,2",
                "2026-06-01T06:00:01+02:00,1,2"));
    assertEquals(6 * 3_600_000, offset.day().firstMillisOfDay());
  }

  @Test
  void the_clock_put_forward_in_spring_leaves_no_gap() throws IOException {
    Usable day =
        usable(
            read(
                "time,pv W,house W",
                "2026-03-29T01:30:00+01:00,1,2",
                "2026-03-29T01:45:00+01:00,1,2",
                "2026-03-29T03:00:00+02:00,1,2",
                "2026-03-29T03:15:00+02:00,1,2"));
    assertEquals(4, day.rows());
    assertEquals(900.0, day.secondsApart());
    assertEquals(90 * 60_000, day.day().firstMillisOfDay());
  }

  @Test
  void the_clock_put_back_in_autumn_has_no_time_twice() throws IOException {
    Usable day =
        usable(
            read(
                "time,pv W,house W",
                "2026-10-25T02:00:00+02:00,1,2",
                "2026-10-25T02:30:00+02:00,1,2",
                "2026-10-25T02:00:00+01:00,1,2",
                "2026-10-25T02:30:00+01:00,1,2",
                "2026-10-25T03:00:00+01:00,1,2"));
    assertEquals(5, day.rows());
    assertEquals(120 * 60_000, day.day().firstMillisOfDay());
  }

  @Test
  void an_hour_that_is_missing_with_its_offsets_written_is_a_gap() throws IOException {
    assertProblems(
        read(
            "time,pv W,house W",
            "2026-03-29T00:00:00+01:00,1,2",
            "2026-03-29T00:30:00+01:00,1,2",
            "2026-03-29T02:00:00+01:00,1,2"),
        new Problem(
            4,
            "rows are 1800 s apart, but this one comes 5400 s after the one above",
            "fill the gap; what happened in it is not guessed"));
  }

  @Test
  void without_offsets_an_hour_too_much_says_that_the_clock_may_have_been_changed()
      throws IOException {
    DayFile.Read read =
        read(
            "time,pv W,house W",
            "2026-03-29T01:30:00,1,2",
            "2026-03-29T01:45:00,1,2",
            "2026-03-29T03:00:00,1,2");
    assertTrue(((Unusable) read).problems().get(0).remedy().contains("offset"), read.toString());
  }

  @Test
  void a_byte_order_mark_before_the_first_name_is_no_part_of_it() throws IOException {
    assertEquals(2, usable(read("\uFEFFtime,pv W,house W", "0,1,2", "1,1,2")).rows());
  }

  @Test
  void an_empty_line_is_left_out_but_counted() throws IOException {
    assertProblems(
        read("time,pv W,house W", "0,1,2", "", "1,1,two"),
        new Problem(4, "house is no number: \"two\"", "write a number with a point for decimals"));
  }

  @Test
  void a_gap_is_told_at_the_row_after_it() throws IOException {
    assertProblems(
        read("time,pv W,house W", "0,0,1", "60,0,1", "180,0,1", "240,0,1"),
        new Problem(
            4,
            "rows are 60 s apart, but this one comes 120 s after the one above",
            "fill the gap; what happened in it is not guessed"));
  }

  @Test
  void a_time_that_is_there_twice_is_told() throws IOException {
    assertProblems(
        read("time,pv W,house W", "0,0,1", "60,0,1", "60,0,1"),
        new Problem(4, "this time is there twice", "strike one of the two rows out"));
  }

  @Test
  void a_row_in_the_wrong_order_is_told() throws IOException {
    assertEquals(
        new Problem(4, "this time lies before that of the row above", "sort the rows by time"),
        ((Unusable) read("time,pv W,house W", "60,0,1", "120,0,1", "0,0,1")).problems().get(0));
  }

  @Test
  void a_faulty_row_is_the_only_thing_told() throws IOException {
    Problem bad =
        new Problem(4, "pv is no number: \"x\"", "write a number with a point for decimals");
    assertProblems(read("time,pv W,house W", "0,0,1", "60,0,1", "120,x,1", "180,0,1"), bad);
    assertProblems(
        read("time,pv W,house W", "0,0,1", "60,0,1", "120,x,1", "180,0,1", "300,0,1"),
        bad,
        new Problem(
            6,
            "rows are 60 s apart, but this one comes 120 s after the one above",
            "fill the gap; what happened in it is not guessed"));
    assertProblems(
        read("time,pv W,house W", "0,0,1", "60,x,1", "120,0,1", "180,0,1", "240,0,1"),
        new Problem(3, "pv is no number: \"x\"", "write a number with a point for decimals"));
  }

  @Test
  void a_misplaced_row_is_told_once() throws IOException {
    assertProblems(
        read("time,pv W,house W", "0,0,1", "60,0,1", "120,0,1", "0,0,1", "180,0,1", "240,0,1"),
        new Problem(5, "this time lies before that of the row above", "sort the rows by time"));
  }

  @Test
  void another_form_of_the_time_is_told_where_it_begins() throws IOException {
    assertProblems(
        read("time,pv W,house W", "0,0,1", "2026-06-01T00:01:00,0,1", "2026-06-01T00:02:00,0,1"),
        new Problem(
            3,
            "the form of the time changes here",
            "write all times in the form of the first row"));
  }

  @Test
  void a_decimal_comma_makes_one_value_too_many() throws IOException {
    assertProblems(
        read("time,pv kW,house W", "0,1,5,300", "1,1.5,300", "2,1.5,300"),
        new Problem(
            2,
            "3 values are needed, one for each column; this row has 4",
            "write one value for each column, with a point for decimals"));
  }

  @Test
  void a_decimal_comma_between_semicolons_is_no_number() throws IOException {
    assertProblems(
        read("time;pv kW;house W", "0;1,5;300", "1;1.5;300", "2;1.5;300"),
        new Problem(2, "pv is no number: \"1,5\"", "write a number with a point for decimals"));
  }

  @Test
  void numbers_that_are_none_are_told() throws IOException {
    for (String bad : List.of("", "NaN", "1e", "0x1p3", "12 W", "1f")) {
      DayFile.Read read = read("time,pv W,house W", "0,%s,1".formatted(bad), "1,1,1", "2,1,1");
      assertTrue(read instanceof Unusable u && u.problems().get(0).line() == 2, bad);
    }
  }

  @Test
  void a_negative_power_is_told() throws IOException {
    assertProblems(
        read("time,pv W,house W", "0,-5,1", "1,1,1", "2,1,1"),
        new Problem(2, "pv is negative: -5", "generation and loads are written as positive power"));
  }

  @Test
  void a_power_no_house_has_is_told() throws IOException {
    assertProblems(
        read("time,pv kW,house W", "0,5000,1", "1,1,1", "2,1,1"),
        new Problem(
            2,
            "pv is 5000: more than a house connection carries",
            "check the unit in the first line"));
  }

  @Test
  void a_column_without_its_unit_is_told() throws IOException {
    assertProblems(
        read("time,pv,house W", "0,1,1"),
        new Problem(1, "the column pv has no unit", "write pv W or pv kW"));
    assertProblems(
        read("time,pv kWh,house W", "0,1,1"),
        new Problem(
            1, "the column pv is in kWh, which is no unit of power here", "write pv W or pv kW"));
  }

  @Test
  void a_column_that_is_missing_is_told() throws IOException {
    assertProblems(
        read("time,pv W", "0,1"),
        new Problem(1, "no column is named house", "name the columns: time,pv W,house W"));
  }

  @Test
  void a_time_that_is_none_is_told() throws IOException {
    assertProblems(
        read("time,pv W,house W", "noon,1,1", "1,1,1", "2,1,1"),
        new Problem(
            2,
            "time is no time: \"noon\"",
            "write seconds since midnight, or 2026-06-01T12:00:00"));
  }

  @Test
  void an_empty_file_is_told() throws IOException {
    assertProblems(read(""), new Problem(1, "the file is empty", "begin with: time,pv W,house W"));
  }

  @Test
  void one_row_is_too_few() throws IOException {
    assertProblems(
        read("time,pv W,house W", "0,1,1"),
        new Problem(
            2,
            "the file has fewer than two rows",
            "give at least two, so that their distance is known"));
  }

  @Test
  void bytes_that_are_no_text_are_told() throws IOException {
    byte[] bytes = "time,pv W,house W\n0,1,1\n1,\u00e9,1\n".getBytes(StandardCharsets.ISO_8859_1);
    assertProblems(
        read(bytes),
        new Problem(0, "the file is not UTF-8 text", "save it as plain text with commas"));
  }

  @Test
  void a_line_without_end_is_told_and_nothing_behind_it_is_looked_at() throws IOException {
    Problem endless =
        new Problem(
            3,
            "this line is longer than 64 KiB",
            "write one value for each column; check that this is the file you mean");
    String line = "1".repeat(1 << 17);
    assertProblems(read("time,pv W,house W", "0,1,1", line, "x"), endless);
    assertProblems(read("time,pv W,house W", "0,1,1", line), endless);
    assertProblems(
        read("time,pv W,house W", "0,1,1", "1,1,1", "2,1,1", "3,x,1", line),
        new Problem(5, "pv is no number: \"x\"", "write a number with a point for decimals"),
        new Problem(6, endless.what(), endless.remedy()));
  }

  @Test
  void more_columns_than_any_house_has_are_told() throws IOException {
    String head = "time,pv W,house W" + ",load W".repeat(9000);
    assertProblems(
        read(head, "0,1,1"),
        new Problem(
            1,
            "the first line names 9003 columns; at most 100 are read",
            "keep time, pv, house and the loads that count"));
  }

  @Test
  void a_year_of_five_digits_is_no_time() throws IOException {
    DayFile.Read read =
        read(
            "time,pv W,house W",
            "+999999999-12-31T23:00:00Z,1,1",
            "+999999999-12-31T23:00:01Z,1,1");
    assertEquals(2, ((Unusable) read).problems().size());
    assertTrue(((Unusable) read).problems().get(0).what().startsWith("time is no time"));
  }

  /** What is wrong shows while the rows are handed out, and then there are no more of them. */
  @Test
  void rows_are_handed_out_until_the_first_that_is_wrong() throws IOException {
    byte[] bytes =
        "time,pv W,house W\n0,1,2\n1,1,2\n2,1,2\n3,x,2\n4,1,2\n9,1,2\n"
            .getBytes(StandardCharsets.UTF_8);
    DayFile.Read begun = DayFile.begin(() -> new ByteArrayInputStream(bytes));
    DayFile day = ((DayFile.Begun) begun).day();
    assertThrows(IllegalStateException.class, day::outcome);
    assertEquals(3, rows(day)[0].length);
    assertEquals(0, day.next(new float[10], new float[10]));
    assertProblems(
        day.outcome(),
        new Problem(5, "pv is no number: \"x\"", "write a number with a point for decimals"),
        new Problem(
            7,
            "rows are 1 s apart, but this one comes 5 s after the one above",
            "fill the gap; what happened in it is not guessed"));
  }

  @Test
  void a_day_begun_again_is_looked_at_again() throws IOException {
    byte[] bytes = "time,pv W,house W\n0,1,2\n1,1,2\n2,5,2\n".getBytes(StandardCharsets.UTF_8);
    DayFile.Read begun = DayFile.begin(() -> new ByteArrayInputStream(bytes));
    DayFile day = ((DayFile.Begun) begun).day();
    day.next(new float[2], new float[2]);
    assertEquals(3, rows(day)[0].length);
    Usable usable = usable(day.outcome());
    assertEquals(3, usable.rows());
    assertEquals(5.0, usable.peakWatts());
    assertEquals(3, rows(day)[0].length);
  }

  @Test
  void no_more_than_twenty_problems_are_told() throws IOException {
    StringBuilder text = new StringBuilder("time,pv W,house W\n");
    for (int i = 0; i < 100; i++) {
      text.append(i).append(",x,1\n");
    }
    assertEquals(20, ((Unusable) read(text.toString())).problems().size());
  }

  /** Seconds made up as they are read. */
  private static final class Seconds extends InputStream {
    private static final byte[] HEAD = "time,pv W,house W\n".getBytes(StandardCharsets.US_ASCII);
    private final long rows;
    private byte[] line = HEAD;
    private int at;
    private long row;

    Seconds(long rows) {
      this.rows = rows;
    }

    @Override
    public int read() {
      byte[] one = new byte[1];
      return read(one, 0, 1) < 0 ? -1 : one[0];
    }

    @Override
    public int read(byte[] into, int from, int most) {
      int n = 0;
      while (n < most && (at < line.length || next())) {
        int some = Math.min(most - n, line.length - at);
        System.arraycopy(line, at, into, from + n, some);
        at += some;
        n += some;
      }
      return n == 0 ? -1 : n;
    }

    private boolean next() {
      if (row == rows) {
        return false;
      }
      line = (row + "," + row % 7000 + ",400\n").getBytes(StandardCharsets.US_ASCII);
      at = 0;
      row++;
      return true;
    }
  }

  @Test
  void a_long_file_needs_no_more_memory_than_a_short_one() throws IOException {
    long before = used();
    Usable year = usable(DayFile.read(() -> new Seconds(3_000_000)));
    Plant plant = new Plant(3000, Optional.empty(), Optional.empty());
    Settings settings =
        new Settings(
            OptionalDouble.of(3000),
            60,
            OptionalDouble.of(300),
            20,
            OptionalDouble.empty(),
            600,
            OptionalDouble.empty(),
            List.of());
    Recording recording = new Recording(year.day());
    Tally tally = Rehearsal.run(recording, plant, settings, recording);
    assertEquals(3_000_000, tally.steps());
    assertTrue(tally.runs().size() > 10, "runs: " + tally.runs().size());
    assertTrue(recording.moments().size() <= 2000);
    // rows kept in any form would be 24 MB or more
    assertTrue(used() - before < 16_000_000, "kept: " + (used() - before));
  }

  private static long used() {
    System.gc();
    Runtime runtime = Runtime.getRuntime();
    return runtime.totalMemory() - runtime.freeMemory();
  }
}
