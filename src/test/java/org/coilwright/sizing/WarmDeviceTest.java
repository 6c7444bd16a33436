package org.coilwright.sizing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.sizing.WarmDevice.Kind;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.Test;

/** Rated currents in warm air against what makers print. */
class WarmDeviceTest {
  private final Tables tables = Tables.load();

  private Optional<Factor> factor(Kind kind, double rating, double air) {
    return new WarmDevice(kind, rating, OptionalDouble.empty())
        .in(air, tables)
        .known()
        .orElseThrow();
  }

  private double amps(Kind kind, double rating, double air) {
    return rating * factor(kind, rating, air).map(f -> f.value().value()).orElse(1.0);
  }

  private boolean isRefused(Kind kind, double rating, double air) {
    return new WarmDevice(kind, rating, OptionalDouble.empty()).in(air, tables)
        instanceof Found.Unknown<Optional<Factor>>;
  }

  /** A breaker maker's row for 40, 50 and 55 °C, catalogue p. 201, in whole tenths of an ampere. */
  @Test
  void a_breaker_carries_what_its_makers_table_prints() {
    double[][] printed = {
      {6, 5.7, 5.3, 5.1},
      {10, 9.4, 8.8, 8.5},
      {16, 15.1, 14.1, 13.6},
      {20, 18.9, 17.6, 17.0},
      {25, 23.6, 22.0, 21.2}
    };
    for (double[] row : printed) {
      assertEquals(row[1], amps(Kind.BREAKER_IEC, row[0], 40), 0.051);
      assertEquals(row[2], amps(Kind.BREAKER_IEC, row[0], 50), 0.051);
      assertEquals(row[3], amps(Kind.BREAKER_IEC, row[0], 55), 0.051);
    }
    assertEquals(0.82, amps(Kind.BREAKER_IEC, 1, 60), 0.0051);
    assertEquals(0.75, amps(Kind.BREAKER_IEC, 1, 70), 0.0051);
    assertEquals(0.913, amps(Kind.BREAKER_IEC, 1, 45), 0.0005);
  }

  @Test
  void cold_air_raises_no_rating_and_seventy_degrees_are_the_end() {
    for (double air : List.of(-25.0, 0.0, 20.0, 30.0)) {
      assertTrue(factor(Kind.BREAKER_IEC, 16, air).isEmpty());
    }
    assertTrue(factor(Kind.BREAKER_IEC, 16, 30.1).isPresent());
    assertTrue(!isRefused(Kind.BREAKER_IEC, 16, 70));
    assertTrue(isRefused(Kind.BREAKER_IEC, 16, 70.1));
  }

  /** Eight of them side by side at 40 °C: 11.33 A in print, from a rounded 15.1 A. */
  @Test
  void breakers_side_by_side_carry_what_their_maker_prints() {
    double left = amps(Kind.BREAKER_IEC, 16, 40) * WarmDevice.inARow(8, tables).value().value();
    assertEquals(11.33, left, 0.021);
    assertEquals(1, WarmDevice.inARow(1, tables).value().value());
    assertEquals(0.9, WarmDevice.inARow(3, tables).value().value());
    assertEquals(0.8, WarmDevice.inARow(4, tables).value().value());
    assertEquals(0.75, WarmDevice.inARow(6, tables).value().value());
  }

  @Test
  void a_breaker_to_ul_489_goes_by_its_own_table() {
    assertTrue(factor(Kind.BREAKER_UL, 30, 40).isEmpty());
    assertEquals(28, amps(Kind.BREAKER_UL, 30, 50), 1e-9);
    assertEquals(28, amps(Kind.BREAKER_UL, 30, 46), 1e-9);
    assertTrue(isRefused(Kind.BREAKER_UL, 35, 50));
    assertTrue(isRefused(Kind.BREAKER_UL, 30, 71));
  }

  @Test
  void a_fuse_loses_half_a_per_cent_for_each_degree_above_forty() {
    assertTrue(factor(Kind.FUSE, 16, 40).isEmpty());
    assertEquals(14.4, amps(Kind.FUSE, 16, 60), 1e-9);
    assertTrue(isRefused(Kind.FUSE, 16, 60.1));
  }

  @Test
  void an_industrial_breaker_without_a_reference_is_not_known() {
    assertTrue(isRefused(Kind.BREAKER_INDUSTRIAL, 16, 20));
    assertTrue(
        new WarmDevice(Kind.BREAKER_INDUSTRIAL, 16, OptionalDouble.of(50))
            .in(50, tables)
            .known()
            .orElseThrow()
            .isEmpty());
  }

  @Test
  void a_reference_of_its_own_moves_the_law_and_makes_it_practice() {
    Factor factor =
        new WarmDevice(Kind.BREAKER_IEC, 16, OptionalDouble.of(50))
            .in(60, tables)
            .known()
            .orElseThrow()
            .orElseThrow();
    assertEquals(Math.sqrt(60.0 / 70), factor.value().value(), 1e-12);
    assertEquals(Standing.COMMON_PRACTICE, factor.value().standing());
    assertTrue(
        new WarmDevice(Kind.BREAKER_IEC, 16, OptionalDouble.of(50))
            .in(50, tables)
            .known()
            .orElseThrow()
            .isEmpty());
  }

  /** The rows as they were read, so that a slip of the pen shows. */
  @Test
  void the_tables_hold_what_was_read() {
    assertEquals(30, air("breaker-60898", "reference"));
    assertEquals(-5, air("breaker-60898", "coldest"));
    assertEquals(40, air("breaker-60898", "warmest"));
    assertEquals(40, air("rcd", "warmest"));
    assertEquals(40, air("fuse-gg", "reference"));
    assertEquals(40, air("breaker-ul489", "reference"));
    assertEquals(
        11,
        tables
            .lookup("breaker-air-ul489", Map.of("rating", "15"), 70, "amps")
            .orElseThrow()
            .value());
    assertTrue(tables.lookup("fuse-air", Map.of(), 21, "factor").isEmpty());
    assertTrue(tables.lookup("breakers-in-a-row", Map.of(), 7, "factor").isEmpty());
  }

  private double air(String device, String column) {
    return tables.lookup("device-air", Map.of("device", device), column).orElseThrow().value();
  }
}
