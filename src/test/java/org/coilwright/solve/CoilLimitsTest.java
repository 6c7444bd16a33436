package org.coilwright.solve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The three voltages of a coil of 24 V, from what its part says. */
class CoilLimitsTest {
  private static CoilLimits limits(String says) {
    return Studies.study(
            """
            parts:
            %s  K1:
                is: relay
                coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 1 kΩ%s}
                contacts: [{pins: [11, 14], form: NO}]
            wires:
              - G1.P to K1.A1
              - G1.M to K1.A2
            """
                .formatted(Studies.SUPPLY, says))
        .limits("K1")
        .orElseThrow();
  }

  /** It surely lets go at the low end of its release only. */
  @Test
  void of_a_range_of_release_the_low_end_counts() {
    assertEquals(2.4, limits(", release: 10..30 %").release().value(), 1e-9);
    assertEquals(7.2, limits(", release: 30 %").release().value(), 1e-9);
  }

  @Test
  void a_range_gives_where_it_pulls_in_and_what_it_may_stand() {
    CoilLimits limits = limits(", range: 80..110 %");
    assertEquals(19.2, limits.operate().value(), 1e-9);
    assertEquals(26.4, limits.highest().value(), 1e-9);
    assertEquals(Optional.empty(), limits.operateMark());
  }

  /** The cold value rises with the copper to 45 °C, and only counts where it is above the range. */
  @Test
  void a_cold_pull_in_value_counts_where_it_is_higher_once_the_coil_is_warm() {
    CoilLimits cold = limits(", range: 80..110 %, operate: 80 % at 20 °C");
    double warm = 19.2 * (1 + 0.00393 * 25);
    assertEquals(warm, cold.operate().value(), 0.01);
    assertTrue(cold.operateMark().isPresent());
    CoilLimits low = limits(", range: 80..110 %, operate: 60 % at 20 °C");
    assertEquals(19.2, low.operate().value(), 1e-9);
    assertEquals(Optional.empty(), low.operateMark());
  }
}
