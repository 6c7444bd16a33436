package org.coilwright.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.OptionalInt;
import org.coilwright.quantity.ConductorSize;
import org.junit.jupiter.api.Test;

class ConductorTableTest {
  private final ConductorTable table = new ConductorTable(Tables.load());

  private static ConductorSize mm2(double area) {
    return new ConductorSize(area, OptionalInt.empty());
  }

  private static ConductorSize awg(int gauge) {
    return new ConductorSize(1, OptionalInt.of(gauge));
  }

  @Test
  void flexible_and_stranded_conductors_have_their_own_columns() {
    assertEquals(13.3, table.ohmPerKm(mm2(1.5), true).orElseThrow().value());
    assertEquals(12.1, table.ohmPerKm(mm2(1.5), false).orElseThrow().value());
  }

  @Test
  void a_size_between_two_rows_has_no_answer() {
    assertTrue(table.ohmPerKm(mm2(1.2), true).isEmpty());
  }

  @Test
  void a_size_outside_the_rows_has_no_answer() {
    assertTrue(table.ohmPerKm(mm2(0.05), true).isEmpty());
    assertTrue(table.ohmPerKm(mm2(400), false).isEmpty());
  }

  @Test
  void a_gauge_of_the_code_is_published_and_one_outside_is_from_memory() {
    assertEquals(Standing.PUBLISHED, table.ohmPerKm(awg(18), true).orElseThrow().standing());
    assertEquals(21.45, table.ohmPerKm(awg(18), true).orElseThrow().value());
    assertEquals(Standing.FROM_MEMORY, table.ohmPerKm(awg(22), true).orElseThrow().standing());
  }

  @Test
  void zero_gauges_are_found() {
    assertEquals(0.2621, table.ohmPerKm(awg(-1), false).orElseThrow().value());
  }

  @Test
  void the_signal_core_of_a_data_cable_is_from_memory() {
    assertEquals(Standing.FROM_MEMORY, table.ohmPerKm(mm2(0.25), true).orElseThrow().standing());
    assertTrue(table.ohmPerKm(mm2(0.25), false).isEmpty());
  }
}
