// Over 250 lines: one table after the other.
package org.coilwright.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Tables of the power side against closed formulas, and at the very edge of their rows. */
class PowerTablesAgainstFormulasTest {
  private final Tables tables = Tables.load();

  private static double number(CitedTable.Row row, String column) {
    return row.number(column).orElseThrow().value();
  }

  private static String word(CitedTable.Row row, String column) {
    return row.word(column).orElseThrow().value();
  }

  private Optional<Double> at(String table, double key, String column) {
    return tables.lookup(table, Map.of(), key, column).map(Cited::value);
  }

  /** Heat goes with I²R, and the warmth it may make is what is left above 30 °C. */
  @Test
  void gauges_carry_in_each_column_what_their_warmth_allows() {
    for (CitedTable.Row row : tables.table("ampacity-nec").rows()) {
      if (!List.of("14", "12").contains(word(row, "awg"))) {
        double from60 = number(row, "c60") * warmth(60, 75);
        assertEquals(from60, number(row, "c75"), 0.06 * from60, row::toString);
        double from75 = number(row, "c75") * warmth(75, 90);
        assertEquals(from75, number(row, "c90"), 0.06 * from75, row::toString);
      }
    }
  }

  private static double warmth(double from, double to) {
    return Math.sqrt((to - 30) / (from - 30) * (234.5 + from) / (234.5 + to));
  }

  @Test
  void small_gauges_may_have_a_device_as_large_as_their_60_degree_column() {
    for (String gauge : List.of("14", "12", "10")) {
      assertEquals(
          tables.lookup("ampacity-nec", Map.of("awg", gauge), "c60").orElseThrow().value(),
          tables.lookup("small-conductor-nec", Map.of("awg", gauge), "amps").orElseThrow().value());
      assertEquals(
          tables.lookup("small-conductor-nec", Map.of("awg", gauge), "amps").orElseThrow().value(),
          tables
              .lookup("control-wire-current-awg", Map.of("awg", gauge), "amps")
              .orElseThrow()
              .value());
    }
  }

  @Test
  void standard_devices_step_by_five_ten_and_no_more_up_to_a_hundred() {
    double before = 10;
    for (CitedTable.Row row : tables.table("device-ratings-nec").rows()) {
      double amps = number(row, "amps");
      assertEquals(before < 50 ? 5 : 10, amps - before, () -> "at " + row);
      before = amps;
    }
    assertEquals(100, before);
  }

  @Test
  void more_conductors_change_their_factor_just_beyond_each_row() {
    double[][] edges = {{3, 1}, {4, 0.8}, {6, 0.8}, {7, 0.7}, {9, 0.7}, {10, 0.5}, {20, 0.5}};
    for (double[] edge : edges) {
      assertEquals(edge[1], at("more-conductors-nec", edge[0], "factor").orElseThrow());
    }
    assertEquals(0.35, at("more-conductors-nec", 41, "factor").orElseThrow());
    assertTrue(at("more-conductors-nec", 101, "factor").isEmpty());
  }

  @Test
  void a_circuit_alone_has_no_grouping_factor_and_each_more_lowers_it() {
    for (String arrangement :
        tables.table("grouping-iec").rows().stream()
            .map(r -> word(r, "arrangement"))
            .distinct()
            .toList()) {
      double before =
          tables
              .lookup("grouping-iec", Map.of("arrangement", arrangement), 1, "factor")
              .orElseThrow()
              .value();
      assertTrue(before <= 1, arrangement);
      for (int circuits = 2; circuits <= 9; circuits++) {
        Optional<Cited<Double>> next =
            tables.lookup("grouping-iec", Map.of("arrangement", arrangement), circuits, "factor");
        if (next.isPresent()) {
          assertTrue(next.get().value() <= before, arrangement);
          before = next.get().value();
        }
      }
    }
    assertEquals(
        1,
        tables
            .lookup("grouping-iec", Map.of("arrangement", "bunched"), 1, "factor")
            .orElseThrow()
            .value());
  }

  @Test
  void the_protective_conductor_is_the_line_up_to_16_then_16_then_half() {
    for (CitedTable.Row row : tables.table("protective-conductor-size").rows()) {
      double line = number(row, "line");
      double right = line <= 16 ? line : line <= 35 ? 16 : line / 2;
      assertEquals(right, number(row, "protective"), row::toString);
    }
  }

  @ParameterizedTest
  @CsvSource({"15, 14", "15.1, 12", "20, 12", "25, 10", "30, 10", "60, 10", "70, 8", "1000, -1"})
  void the_grounding_conductor_follows_the_device(double device, double gauge) {
    assertEquals(
        gauge,
        tables.lookup("protective-conductor-nec", Map.of(), device, "awg").orElseThrow().value());
  }

  /** The standard atmosphere: clearances grow as the air's pressure falls from that at 2000 m. */
  @Test
  void clearances_grow_as_the_air_thins() {
    for (CitedTable.Row row : tables.table("clearance-altitude").rows()) {
      double metres = number(row, "altitude");
      double factor = pressure(2000) / pressure(metres);
      assertEquals(factor, number(row, "factor"), 0.025 * factor, row::toString);
    }
  }

  private static double pressure(double metres) {
    double tropopause = 11000;
    double low = Math.pow(1 - 0.0065 * Math.min(metres, tropopause) / 288.15, 5.2559);
    return low * Math.exp(-Math.max(0, metres - tropopause) / 6341.6);
  }

  @ParameterizedTest
  @CsvSource({
    "TN, 120, 0.8",
    "TN, 120.1, 0.4",
    "TN, 230, 0.4",
    "TN, 230.1, 0.2",
    "TN, 400, 0.2",
    "TN, 400.1, 0.1",
    "TT, 230, 0.2",
    "TT, 230.1, 0.07"
  })
  void disconnection_times_change_just_beyond_each_voltage(
      String earthing, double volts, double seconds) {
    assertEquals(
        seconds,
        tables
            .lookup("disconnection-times", Map.of("earthing", earthing), volts, "ac")
            .orElseThrow()
            .value());
  }

  @Test
  void a_tt_system_is_disconnected_sooner_than_a_tn_system() {
    for (double volts : List.of(50.0, 120.0, 230.0, 400.0, 1000.0)) {
      double tt = time("TT", volts);
      assertTrue(tt < time("TN", volts), () -> "at " + volts);
    }
  }

  private double time(String earthing, double volts) {
    return tables
        .lookup("disconnection-times", Map.of("earthing", earthing), volts, "ac")
        .orElseThrow()
        .value();
  }

  @Test
  void the_top_of_a_box_is_warmer_than_its_middle_and_the_table_ends_at_twice_as_high() {
    assertEquals(1.1, at("enclosure-top", 0.5, "c").orElseThrow());
    assertEquals(1.145, at("enclosure-top", 0.75, "c").orElseThrow(), 1e-9);
    assertEquals(1.28, at("enclosure-top", 2, "c").orElseThrow());
    assertTrue(at("enclosure-top", 0.499, "c").isEmpty());
    assertTrue(at("enclosure-top", 2.001, "c").isEmpty());
    assertTrue(at("enclosure-small", 0.0799, "k").isEmpty());
    assertTrue(at("enclosure-small", 0.501, "k").isEmpty());
  }

  @Test
  void frequencies_that_no_data_sheet_gives_have_no_factor() {
    assertEquals(1, at("contact-frequency", 50, "factor").orElseThrow());
    assertEquals(1, at("contact-frequency", 60, "factor").orElseThrow());
    assertTrue(at("contact-frequency", 55, "factor").isEmpty());
    assertTrue(at("contact-frequency", 400, "factor").isEmpty());
    assertEquals(
        0.8,
        tables
            .lookup("contact-duty", Map.of("duty", "uninterrupted"), "factor")
            .orElseThrow()
            .value());
  }

  @Test
  void thin_wires_carry_no_more_than_the_tables_of_fixed_wiring_give() {
    for (CitedTable.Row row : tables.table("ampacity-iec-pvc-2-loaded").rows()) {
      double thin = at("control-wire-current", number(row, "mm2"), "amps").orElse(0.0);
      assertTrue(thin <= number(row, "B1"), row::toString);
    }
  }

  @Test
  void every_insulation_names_columns_and_rows_that_exist_and_start_at_its_own_warmth() {
    for (CitedTable.Row row : tables.table("insulation-materials").rows()) {
      double celsius = number(row, "celsius");
      assertTrue(word(row, "words").contains(Math.round(celsius) + " °C"), row::toString);
      row.word("gauge")
          .ifPresent(c -> assertEquals("c" + Math.round(celsius), c.value(), row::toString));
      row.word("metric")
          .ifPresent(
              c -> assertTrue(at("ambient-air-iec", 30, c.value()).isPresent(), row::toString));
      for (String k : List.of("metric-k", "gauge-k")) {
        row.word(k)
            .ifPresent(
                insulation ->
                    assertEquals(
                        celsius,
                        tables
                            .lookup(
                                "adiabatic-k",
                                Map.of(
                                    "material",
                                    "copper",
                                    "use",
                                    "live",
                                    "insulation",
                                    insulation.value()),
                                "start")
                            .orElseThrow()
                            .value(),
                        row::toString));
      }
    }
  }

  @Test
  void what_is_at_least_is_never_above_what_is_at_most() {
    for (CitedTable.Row row : tables.table("terminal-torque").rows()) {
      assertTrue(number(row, "over") < number(row, "up-to"), row::toString);
      row.number("II").ifPresent(ii -> assertTrue(ii.value() <= number(row, "III")));
    }
  }

  @Test
  void breakers_step_by_a_fifth_to_two_thirds() {
    double before = 0;
    for (CitedTable.Row row : tables.table("breaker-ratings").rows()) {
      double amps = number(row, "amps");
      if (before > 0) {
        assertTrue(amps / before > 1.2 && amps / before < 1.67, row::toString);
      }
      before = amps;
    }
    assertEquals(125, before);
  }

  @Test
  void a_larger_contactor_takes_no_less_to_hold_and_less_watts_than_voltamperes() {
    double before = 0;
    for (CitedTable.Row row : tables.table("contactor-ratings").rows()) {
      assertTrue(number(row, "holding") >= before, row::toString);
      assertTrue(number(row, "watts") < number(row, "holding"), row::toString);
      before = number(row, "holding");
    }
  }

  @Test
  void a_covered_surface_gives_off_less_and_the_floor_nothing() {
    assertEquals(2 * surface("top-covered"), surface("top"), 1e-12);
    assertTrue(surface("covered-side") < surface("exposed-side"));
    assertEquals(0, surface("floor"));
  }

  private double surface(String name) {
    return tables.lookup("enclosure-surface", Map.of("surface", name), "b").orElseThrow().value();
  }

  @Test
  void every_category_that_covers_a_load_is_a_row_and_so_is_its_inrush() {
    for (CitedTable.Row row : tables.table("load-category").rows()) {
      assertTrue(
          tables.table("power-contact-categories").rows().stream()
              .anyMatch(r -> word(r, "category").equals(word(row, "category"))),
          row::toString);
      assertTrue(
          tables.lookup("inrush", Map.of("load", word(row, "inrush")), "high").isPresent(),
          row::toString);
    }
  }

  @Test
  void household_categories_end_at_63_and_32_amperes() {
    for (CitedTable.Row row : tables.table("household-limits").rows()) {
      assertEquals(word(row, "category").equals("AC-7a") ? 63 : 32, number(row, "amps"));
      assertEquals(440, number(row, "volts"));
    }
  }
}
