package org.coilwright.solve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;

/** Relays of which each switches the next: all are one group, however few the contacts. */
class ChainTest {
  private static final Set<Fault.Kind> WELDS = EnumSet.of(Fault.Kind.CONTACT_WELDS);

  private static Study chain(int relays) {
    StringBuilder parts = new StringBuilder("parts:\n");
    StringBuilder wires = new StringBuilder("wires:\n  - P1.P to S1.1\n  - S1.2 to K1.A1\n");
    parts.append(
        "  P1: {is: dc-supply, output: {plus: P, minus: M, voltage: 24 V DC ± 5 %, limit: 10"
            + " A}}\n");
    parts.append("  S1: {is: switch, form: NO, poles: 1}\n");
    for (int i = 1; i <= relays; i++) {
      parts.append(
          "  K%d: {is: relay, coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 1150 Ω}, contacts: [{common: 11, NC: 12, NO: 14}]}\n"
              .formatted(i));
      wires.append("  - K%d.A2 to P1.M\n".formatted(i));
      if (i > 1) {
        wires.append("  - P1.P to K%d.11\n  - K%d.14 to K%d.A1\n".formatted(i - 1, i - 1, i));
      }
    }
    return Studies.study(parts.toString() + wires);
  }

  @Test
  void a_hundred_relays_in_a_chain_come_to_rest_in_both_positions() {
    Study study = chain(100);
    assertEquals(2, study.states().size());
    assertEquals(List.of(), study.troubles());
    assertFalse(study.coil("K100", study.states().get(0)).pulledIn());
    assertTrue(study.coil("K100", study.states().get(1)).pulledIn());
  }

  @Test
  void their_faults_are_said_not_to_be_computed() {
    List<FaultCase> cases = Faults.of(chain(100), WELDS).cases();
    assertEquals(100, cases.size());
    assertTrue(cases.stream().noneMatch(FaultCase::explored));
  }

  @Test
  void those_of_a_chain_that_is_not_too_long_are() {
    assertTrue(Faults.of(chain(10), WELDS).cases().stream().allMatch(FaultCase::explored));
  }
}
