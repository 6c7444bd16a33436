package org.coilwright.sizing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Random;
import org.coilwright.netlist.Site;
import org.coilwright.table.CitedTable;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.Test;

/** The power side's tables against closed formulas, at their edges and beyond them. */
class SizingTablesTest {
  private final Tables tables = Tables.load();

  @Test
  void warm_air_takes_one_per_cent_for_each_degree_up_to_thirty_and_ends_there() {
    for (int above = 0; above <= 30; above++) {
      assertEquals(
          1 - 0.01 * above,
          tables.lookup("contact-air", Map.of(), above, "factor").orElseThrow().value(),
          1e-12);
    }
    assertTrue(tables.lookup("contact-air", Map.of(), 30.001, "factor").isEmpty());
  }

  @Test
  void the_remembered_rises_of_small_boxes_lie_on_one_power_law() {
    for (CitedTable.Row row : tables.table("enclosure-small").rows()) {
      double area = row.number("area").orElseThrow().value();
      double k = row.number("k").orElseThrow().value();
      assertEquals(1, 0.6173 * Math.pow(area, -0.737) / k, 0.0015, () -> "at " + area);
    }
  }

  /** W width, H height, D depth: the area formulas that a controller maker prints. */
  @Test
  void surface_factors_add_up_to_the_printed_area_formulas() {
    Random random = new Random(7);
    for (int i = 0; i < 100; i++) {
      double w = 0.1 + random.nextDouble();
      double h = 0.1 + random.nextDouble();
      double d = 0.1 + random.nextDouble();
      assertEquals(
          1.8 * h * (w + d) + 1.4 * w * d,
          BoxHeat.area(Site.BoxMounting.FREE_STANDING, w, h, d, tables),
          1e-9);
      assertEquals(
          1.4 * w * (h + d) + 1.8 * d * h,
          BoxHeat.area(Site.BoxMounting.WALL, w, h, d, tables),
          1e-9);
    }
  }

  @Test
  void thin_air_holds_up_to_and_including_its_row_and_ends_at_five_thousand_metres() {
    assertEquals(1, current(3000));
    assertEquals(0.92, current(3000.1));
    assertEquals(0.92, current(3500));
    assertEquals(0.86, current(5000));
    assertTrue(tables.lookup("contact-altitude", Map.of(), 5000.1, "current").isEmpty());
  }

  private double current(double metres) {
    return tables.lookup("contact-altitude", Map.of(), metres, "current").orElseThrow().value();
  }

  @Test
  void more_poles_in_parallel_carry_more_but_never_as_much_as_apart() {
    double before = 0;
    for (int poles = 1; poles <= 4; poles++) {
      double factor =
          tables.lookup("parallel-poles", Map.of(), poles, "factor").orElseThrow().value();
      assertTrue(factor > before && factor <= poles);
      before = factor;
    }
    assertTrue(tables.lookup("parallel-poles", Map.of(), 5, "factor").isEmpty());
  }

  @Test
  void a_larger_fault_current_and_a_larger_breaker_let_more_through() {
    for (String curve : List.of("B", "C")) {
      double before = 0;
      for (double fault : List.of(1000.0, 3000.0, 3001.0, 6000.0, 10000.0)) {
        double small = through(curve, "up-to-16", fault);
        assertTrue(small >= before);
        assertTrue(through(curve, "up-to-32", fault) >= small);
        before = small;
      }
    }
    assertTrue(
        tables
            .lookup("let-through", Map.of("curve", "B", "ratings", "up-to-16"), 10000.1, "energy")
            .isEmpty());
  }

  private double through(String curve, String ratings, double fault) {
    return tables
        .lookup("let-through", Map.of("curve", curve, "ratings", ratings), fault, "energy")
        .orElseThrow()
        .value();
  }

  @Test
  void a_rating_that_is_just_enough_is_chosen_and_one_a_hair_too_small_is_not() {
    assertEquals(20, Series.contactorAtLeast(20, tables).orElseThrow().value());
    assertEquals(25, Series.contactorAtLeast(20.0052, tables).orElseThrow().value());
    assertTrue(Series.contactorAtLeast(100.1, tables).isEmpty());
    assertEquals(16, Series.breakerUpTo(19.99, tables).orElseThrow().value());
    assertTrue(Series.breakerUpTo(5.9, tables).isEmpty());
    assertEquals(2.5, Series.wireOf(1.51, tables).orElseThrow());
  }

  @Test
  void close_mounting_is_remembered_and_says_so() {
    List<Factor> factors =
        new ContactConditions(53, OptionalDouble.empty(), true, OptionalDouble.empty(), 50, 1)
            .factors(tables)
            .known()
            .orElseThrow();
    Derated may = new Derated(25, factors, List.of());
    assertEquals("25 A × 0.87 (air at 53 °C) × 0.80 (close-mounted) = 17.4 A", may.words());
    assertEquals(
        Standing.FROM_MEMORY,
        may.basis().stream().map(c -> c.standing()).reduce(Standing.PUBLISHED, Standing::weaker));
  }

  @Test
  void direct_current_gains_nothing_from_poles_in_parallel() {
    assertTrue(
        new ContactConditions(20, OptionalDouble.empty(), false, OptionalDouble.empty(), 0, 2)
            .factors(tables)
            .known()
            .isEmpty());
  }

  @Test
  void every_category_has_its_multiples_or_says_why_not() {
    for (String category :
        List.of(
            "AC-1", "AC-2", "AC-3", "AC-3e", "AC-4", "AC-5a", "AC-5b", "AC-6a", "AC-6b", "AC-7a",
            "AC-7b", "AC-7c", "AC-7d", "AC-8a", "AC-8b", "DC-1", "DC-3", "DC-5")) {
      boolean given = Making.makes(category, tables).isPresent();
      assertEquals(given, Making.whyNot(category, tables).isEmpty(), category);
      List<CitedTable.Row> rows =
          tables.table("power-contact-categories").rows().stream()
              .filter(r -> r.word("category").orElseThrow().value().equals(category))
              .toList();
      assertTrue(!rows.isEmpty(), category);
      for (CitedTable.Row row : rows) {
        assertEquals(given, row.number("break").isPresent(), category);
        if (given) {
          assertTrue(
              row.number("make").orElseThrow().value()
                  >= row.number("break").orElseThrow().value());
        }
      }
    }
    for (String category : List.of("AC-15", "DC-13")) {
      assertTrue(
          tables
              .lookup("control-contact-categories", Map.of("category", category), "make")
              .isPresent());
    }
  }

  @Test
  void a_transformer_rating_is_one_for_a_peak_and_counts_as_its_rms() {
    assertEquals(21.21, Making.makes("AC-6a", tables).orElseThrow().value(), 0.005);
    assertEquals(Standing.FROM_MEMORY, Making.makes("AC-6a", tables).orElseThrow().standing());
  }

  @Test
  void every_kind_of_load_has_an_inrush_with_its_duration_or_says_why_not() {
    for (String load :
        List.of(
            "metal-sheathed",
            "carbide",
            "ptc",
            "tungsten",
            "discharge",
            "transformer",
            "motor",
            "capacitor-input",
            "charger")) {
      CitedTable.Row row =
          tables.table("inrush").rows().stream()
              .filter(r -> r.word("load").orElseThrow().value().equals(load))
              .findFirst()
              .orElseThrow(() -> new AssertionError(load));
      assertTrue(row.number("high").isPresent() || row.word("note").isPresent(), load);
      assertEquals(row.number("low").isPresent(), row.number("high").isPresent(), load);
      row.number("low")
          .ifPresent(l -> assertTrue(l.value() <= row.number("high").orElseThrow().value(), load));
      assertTrue(
          row.number("lasts-least").orElseThrow().value()
              <= row.number("lasts-most").orElseThrow().value(),
          load);
    }
  }
}
