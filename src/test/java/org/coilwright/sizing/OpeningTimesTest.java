package org.coilwright.sizing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.Map;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Reading;
import org.coilwright.netlist.Site.Practice;
import org.coilwright.table.CitedTable;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What breakers and fuses do below and at the current that opens them at once. */
class OpeningTimesTest {
  private final Tables tables = Tables.load();
  private final OpeningTimes iec = new OpeningTimes(Practice.IEC, tables);
  private final OpeningTimes nec = new OpeningTimes(Practice.NEC, tables);

  static Part device(String keys) {
    String text =
        """
        coilwright: 1
        circuit: {title: Bench}
        site: {practice: iec}
        parts:
          F1: {%s}
          H1: {is: lamp}
        wires: [F1.2 to H1.1]
        """
            .formatted(keys);
    Reading.Read read =
        assertInstanceOf(
            Reading.Read.class,
            NetlistReader.read("bench.yaml", text.getBytes(StandardCharsets.UTF_8)));
    return read.netlist().parts().values().iterator().next();
  }

  static Part breaker(String curve, int rating) {
    return device("is: breaker, curve: %s, rating: %d A, poles: 1".formatted(curve, rating));
  }

  static Part fuse(int rating, String more) {
    return device("is: fuse, rating: %d A%s".formatted(rating, more));
  }

  @ParameterizedTest
  @CsvSource({
    "B, 6, 24, 45", "B, 6, 30, 0.1", "B, 10, 30, 45", "B, 16, 50, 45", "B, 16, 75, 45",
    "B, 16, 80, 0.1", "B, 16, 79.99, 45", "C, 16, 100, 15", "C, 16, 79, 60", "C, 16, 160, 0.1",
    "D, 16, 160, 4", "D, 16, 319, 4", "D, 16, 320, 0.1", "B, 40, 125, 90", "C, 63, 320, 30",
    "D, 50, 520, 8", "B, 16, 23.2, 3600", "B, 80, 120, 7200", "B, 16, 40.8, 60"
  })
  void a_breaker_has_opened_after(String curve, int rating, double amps, double seconds) {
    Opening.Within within =
        assertInstanceOf(Opening.Within.class, iec.at(breaker(curve, rating), amps));
    assertEquals(seconds, within.seconds());
    assertEquals(Standing.PUBLISHED, within.cited().get(0).standing());
  }

  @Test
  void below_the_conventional_current_a_breaker_may_never_open() {
    assertInstanceOf(Opening.MayNot.class, iec.at(breaker("B", 16), 22));
    assertInstanceOf(Opening.MayNot.class, iec.at(breaker("B", 16), 23.1));
    assertInstanceOf(Opening.Never.class, iec.at(breaker("B", 16), 18));
    assertInstanceOf(Opening.Never.class, iec.at(breaker("B", 16), 0));
  }

  @ParameterizedTest
  @CsvSource({
    "16, 75, 5",
    "16, 110, 0.4",
    "16, 109, 5",
    "16, 150, 0.1",
    "16, 60, 3600",
    "2, 9.2, 5"
  })
  void a_gg_fuse_has_opened_after(int rating, double amps, double seconds) {
    Opening opening = iec.at(fuse(rating, ", family: gG"), amps);
    assertEquals(seconds, assertInstanceOf(Opening.Within.class, opening).seconds());
  }

  @Test
  void a_fuse_of_unknown_family_is_the_slowest_of_them() {
    assertEquals(65, least(fuse(16, ""), 5));
    assertEquals(55, least(fuse(16, ", family: BS 88-2"), 5));
    assertEquals(434, least(fuse(80, ""), 5), "BS 88-3 asks for more than gG");
    assertEquals("family of F1", unknown(fuse(13, "")));
    assertEquals(95, least(fuse(13, ", family: BS 1362"), 0.4));
  }

  private double least(Part device, double seconds) {
    return iec.within(device, seconds).known().orElseThrow().amps();
  }

  private String unknown(Part device) {
    return assertInstanceOf(Opening.Unknown.class, iec.at(device, 100)).missing();
  }

  @Test
  void what_is_missing_is_named() {
    assertEquals("curve of F1", unknown(device("is: breaker, rating: 16 A, poles: 1")));
    assertEquals("rating of F1", unknown(device("is: breaker, curve: B, poles: 1")));
    assertEquals("time-current curve of F1", unknown(breaker("B", 160)));
    assertEquals("time-current curve of F1", unknown(fuse(17, ", family: gG")));
  }

  @Test
  void without_a_magnetic_release_by_standard_nothing_opens_at_once() {
    Part inverse = device("is: breaker, rating: 30 A, poles: 2");
    Opening.Within twice = assertInstanceOf(Opening.Within.class, nec.at(inverse, 3000));
    assertEquals(120, twice.seconds());
    assertEquals(Standing.FROM_MEMORY, twice.cited().get(0).standing());
    assertInstanceOf(Found.Unknown.class, nec.within(inverse, 0.4));
    Part industrial =
        device("is: breaker, standard: IEC 60947-2, curve: B, rating: 16 A, poles: 1");
    assertEquals(3600, assertInstanceOf(Opening.Within.class, iec.at(industrial, 3000)).seconds());
    assertInstanceOf(Opening.Never.class, iec.at(industrial, 16.8));
  }

  @Test
  void the_staircase_begins_and_ends_where_the_other_tables_say() {
    for (String curve : new String[] {"B", "C", "D"}) {
      for (String ratings : new String[] {"up-to-32", "up-to-63", "up-to-125"}) {
        var rows =
            tables
                .table("breaker-opening")
                .rows(Map.of("standard", "IEC 60898-1", "curve", curve, "ratings", ratings));
        CitedTable.Row last = rows.get(rows.size() - 1);
        assertEquals(
            tables.lookup("magnetic-trip", Map.of("curve", curve), "trips").orElseThrow().value(),
            last.number("multiple").orElseThrow().value());
        assertEquals(
            tables.figure("sizing.magnetic-time").value(),
            last.number("seconds").orElseThrow().value());
        assertEquals(1.45, rows.get(0).number("multiple").orElseThrow().value());
      }
    }
  }

  @Test
  void a_fuse_needs_more_current_to_open_sooner() {
    for (CitedTable.Row row : tables.table("fuse-opening").rows()) {
      double slow = row.number("t5").orElseThrow().value();
      double middle = row.number("t04").map(c -> c.value()).orElse(slow * 1.4);
      assertTrue(middle > slow, row::toString);
      row.number("t01").ifPresent(fast -> assertTrue(fast.value() > middle, row::toString));
    }
  }
}
