package org.coilwright.solve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.coilwright.solve.InsulationDistances.Distance;
import org.coilwright.solve.InsulationDistances.Pollution;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.Test;

class InsulationDistancesTest {
  private final InsulationDistances distances = new InsulationDistances(Tables.load());

  private double clearance(double lineToEarth, double altitude) {
    return distances.reinforcedClearance(lineToEarth, altitude).orElseThrow().metres() * 1000;
  }

  private double creepage(double lineToEarth, double altitude, Pollution pollution) {
    return distances.reinforcedCreepage(lineToEarth, altitude, pollution).orElseThrow().metres()
        * 1000;
  }

  @Test
  void mains_of_230_V_asks_for_the_clearance_of_the_next_impulse_step() {
    assertEquals(4, distances.impulseKilovolts(230).orElseThrow().value());
    assertEquals(5.5, clearance(230, 0), 1e-9);
    assertEquals(3, clearance(120, 0), 1e-9);
    assertEquals(8, clearance(400, 0), 1e-9);
  }

  @Test
  void clearances_grow_above_2000_m_and_not_below() {
    assertEquals(5.5, clearance(230, 2000), 1e-9);
    assertEquals(6.27, clearance(230, 2001), 1e-9);
    assertEquals(6.27, clearance(230, 3000), 1e-9);
    assertEquals(7.095, clearance(230, 4000), 1e-9);
  }

  @Test
  void creepage_is_twice_that_of_basic_insulation() {
    assertEquals(8, creepage(230, 0, Pollution.DEGREE_3), 1e-9);
    assertEquals(10, creepage(300, 0, Pollution.DEGREE_3), 1e-9);
  }

  @Test
  void creepage_is_never_below_the_clearance() {
    assertEquals(5.5, creepage(230, 0, Pollution.DEGREE_2), 1e-9);
    assertEquals(7.095, creepage(230, 4000, Pollution.DEGREE_2), 1e-9);
  }

  @Test
  void outside_the_tables_there_is_no_answer() {
    assertTrue(distances.reinforcedClearance(1001, 0).isEmpty());
    assertTrue(distances.reinforcedClearance(230, 20001).isEmpty());
    assertTrue(distances.reinforcedCreepage(1001, 0, Pollution.DEGREE_3).isEmpty());
  }

  @Test
  void the_step_from_basic_to_reinforced_is_from_memory() {
    Distance distance = distances.reinforcedClearance(230, 0).orElseThrow();
    assertTrue(
        distance.from().stream().map(Cited::standing).anyMatch(Standing.FROM_MEMORY::equals));
  }
}
