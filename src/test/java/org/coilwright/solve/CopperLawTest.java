package org.coilwright.solve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.coilwright.table.Cited;
import org.coilwright.table.Source;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.Test;

class CopperLawTest {
  private final CopperLaw copper = CopperLaw.from(Tables.load());

  @Test
  void there_and_back_is_the_same_resistance() {
    assertEquals(100, copper.at(copper.at(100, 20, 75), 75, 20), 1e-12);
  }

  @Test
  void a_resistance_never_vanishes_however_cold_it_is_written() {
    assertTrue(copper.at(100, 20, -5000) > 0);
    assertTrue(Double.isFinite(copper.at(100, -234.5, 20)));
  }

  @Test
  void temperature_and_rise_turn_the_law_round() {
    assertEquals(75, copper.temperatureFor(copper.ratio(20, 75), 20), 1e-9);
    assertEquals(55, copper.riseFromResistance(100, copper.at(100, 20, 75), 20), 1e-9);
  }

  @Test
  void the_weaker_standing_travels() {
    Cited<Double> remembered = new Cited<>(10.0, new Source("x", "x"), "", Standing.FROM_MEMORY);
    assertEquals(Standing.FROM_MEMORY, copper.at(remembered, 20, 45).standing());
  }
}
