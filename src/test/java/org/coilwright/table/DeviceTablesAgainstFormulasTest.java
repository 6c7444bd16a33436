package org.coilwright.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** Tables of devices and insulation against the closed formulas behind them. */
class DeviceTablesAgainstFormulasTest {
  private final Tables tables = Tables.load();

  private static double number(CitedTable.Row row, String column) {
    return row.number(column).orElseThrow().value();
  }

  private static String word(CitedTable.Row row, String column) {
    return row.word(column).orElseThrow().value();
  }

  @Test
  void short_circuit_factors_follow_the_adiabatic_formula() {
    Map<String, double[]> metals =
        Map.of("copper", new double[] {226, 234.5}, "aluminium", new double[] {148, 228});
    for (CitedTable.Row row : tables.table("adiabatic-k").rows()) {
      double[] metal = metals.getOrDefault(word(row, "material"), new double[] {0, 0});
      double k =
          metal[0]
              * Math.sqrt(
                  Math.log((metal[1] + number(row, "end")) / (metal[1] + number(row, "start"))));
      boolean gauge = row.number("k").orElseThrow().source().key().equals("icea-short-circuit");
      double mils =
          Math.sqrt(0.0297 * Math.log10((234 + number(row, "end")) / (234 + number(row, "start"))))
              / 5.067075e-4;
      assertEquals(gauge ? mils : k, number(row, "k"), gauge ? 0.06 : 1.1, row::toString);
    }
  }

  @Test
  void reinforced_distances_reproduce_a_relay_makers_eight_millimetres() {
    // A relay stated for 230/400 V, reinforced, 8 mm and 6 kV: at 250 V in pollution degree 3 and
    // at
    // 400 V in degree 2.
    double twice = tables.figure("separation.reinforced-creepage-multiple").value();
    for (String[] at : List.of(new String[] {"250", "pd3"}, new String[] {"400", "pd2"})) {
      double basic =
          tables
              .lookup("creepage", Map.of(), Double.parseDouble(at[0]), at[1])
              .orElseThrow()
              .value();
      assertEquals(8.0, twice * basic, 1e-9, at[1]);
    }
    double impulse =
        tables.lookup("rated-impulse-voltage", Map.of(), 230, "III-next").orElseThrow().value();
    assertEquals(6.0, impulse);
    assertEquals(5.5, tables.lookup("clearance", Map.of(), impulse, "pd2").orElseThrow().value());
  }

  @Test
  void the_next_impulse_step_is_that_of_the_series() {
    List<Double> series = List.of(0.33, 0.5, 0.8, 1.5, 2.5, 4.0, 6.0, 8.0, 12.0);
    for (CitedTable.Row row : tables.table("rated-impulse-voltage").rows()) {
      double third = number(row, "III");
      double next = series.stream().filter(s -> s > third).findFirst().orElseThrow();
      assertEquals(next, number(row, "III-next"), row::toString);
    }
  }

  @Test
  void what_a_breaker_breaks_at_least_is_in_the_series_of_capacities() {
    // IEC 60898-1, standard values up to 10 kA; UL 489 begins with 5 kA
    List<Double> series = List.of(1500.0, 3000.0, 4500.0, 5000.0, 6000.0, 10_000.0);
    for (CitedTable.Row row : tables.table("breaker-least-capacity").rows()) {
      assertEquals(
          word(row, "standard").equals("UL 489") ? series.get(3) : series.get(0),
          number(row, "amps"),
          row::toString);
    }
  }

  @Test
  void no_colour_is_kept_for_two_uses_in_one_practice() {
    Map<String, String> uses = new HashMap<>();
    for (CitedTable.Row row : tables.table("core-colours").rows()) {
      String colour = word(row, "practice") + " " + word(row, "colour");
      assertNull(uses.put(colour, word(row, "use")), row::toString);
    }
    // letters of IEC 60757: green-and-yellow protects everywhere, blue is the neutral of IEC
    assertEquals("protective", uses.get("iec GNYE"));
    assertEquals("protective", uses.get("nec GNYE"));
    assertEquals("neutral", uses.get("iec BU"));
  }

  @Test
  void a_fuse_melts_with_about_the_square_of_its_rating() {
    double before = 0;
    for (CitedTable.Row row : tables.table("fuse-melting").rows()) {
      double share = number(row, "energy") / Math.pow(number(row, "rating"), 2);
      assertTrue(share > 3 && share < 8, row::toString);
      assertTrue(number(row, "energy") > before, row::toString);
      before = number(row, "energy");
    }
  }

  /** The two gates of one standard at 0.1 s: what surely does not melt a fuse, and what does. */
  @Test
  void what_a_fuse_stands_lies_between_its_rating_and_what_opens_it_in_the_same_time() {
    List<CitedTable.Row> rows = tables.table("fuse-holding").rows();
    assertTrue(rows.size() > 10);
    for (CitedTable.Row row : rows) {
      double rating = number(row, "rating");
      double opens =
          tables
              .lookup("fuse-opening", Map.of("family", "gG"), rating, "t01")
              .orElseThrow()
              .value();
      double share = number(row, "t01") / rating;
      assertTrue(share >= 3 && share < 8, row::toString);
      assertTrue(number(row, "t01") < opens, row::toString);
    }
  }

  @Test
  void figures_told_twice_agree() {
    for (String curve : List.of("b", "c", "d")) {
      assertEquals(
          tables
              .lookup(
                  "magnetic-trip",
                  Map.of("curve", curve.toUpperCase(java.util.Locale.ROOT)),
                  "trips")
              .orElseThrow()
              .value(),
          tables.figure("checklist.breaker-" + curve + "-multiple").value());
    }
    for (String category : List.of("AC-12", "AC-13", "AC-14", "AC-15")) {
      assertEquals(
          tables
              .figure("drive." + category.toLowerCase(java.util.Locale.ROOT) + "-make-multiple")
              .value(),
          tables
              .lookup("control-contact-categories", Map.of("category", category), "make")
              .orElseThrow()
              .value());
    }
  }
}
