package org.coilwright.solve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.BitSet;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** One-way elements of which no choice agrees with itself: said, not passed over. */
class UnsettledTest {
  private static final String DIODES =
      """
      parts:
        G0: {is: mains}
        G1: {is: dc-supply, output: {plus: P, minus: M, voltage: 24 V DC}}
        S1: {is: switch, form: NO, poles: 1}
        V1: {is: diode}
        K1: {is: relay, coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 300 Ω}, contacts: [{pins: [11, 14], form: NO}]}
        E1: {is: heater, power: 1 kW, voltage: 230 V, connection: single}
      wires:
        - G1.P to S1.1
        - S1.2 to K1.A1
        - K1.A2 to G1.M
        - V1.K to K1.A1
        - V1.A to K1.A2
        - G0.L to K1.11
        - K1.14 to E1.1
        - E1.2 to G0.N
      """;

  private static Zone ofDiode(Study study) {
    return study.model().grid.zones.stream()
        .filter(z -> z.oneWays().contains("V1"))
        .findFirst()
        .orElseThrow();
  }

  private static List<Trouble.NotSolved> unsolved(Study study) {
    return study.model().explorations.values().stream()
        .flatMap(e -> Unsettled.in(e).stream())
        .toList();
  }

  /** As a solver whose diodes never agree would leave it. */
  private static void unsettle(Study study) {
    Zone zone = ofDiode(study);
    ZoneFlow any =
        Objects.requireNonNull(study.model().groupOf.get(zone))
            .situation(new BitSet())
            .flow(zone, Corner.NOMINAL);
    zone.noted(new ZoneFlow(zone, any.direct(), any.alternating(), any.conducts(), false));
  }

  @Test
  void a_network_that_always_disagrees_is_given_up_soon_and_said_to_disagree() {
    // A gate that has too much voltage while open, and carries current backwards while it conducts.
    List<Gates.Gate> gates =
        IntStream.range(0, 20).mapToObj(g -> new Gates.Gate(g, 0, 1, 0.7)).toList();
    AtomicInteger solved = new AtomicInteger();
    Gates.Found found =
        Gates.find(
            gates,
            open -> {
              solved.incrementAndGet();
              Network.Flow flow = new Network.Flow(2, 20);
              flow.vRe[0] = 10;
              open.stream().forEach(g -> flow.iRe[g] = -1);
              return flow;
            });
    assertFalse(found.consistent());
    assertTrue(solved.get() <= Gates.MOST_CHOICES + 1, solved + " choices");
  }

  @Test
  void it_is_named_with_the_diodes_it_is_about() {
    Study study = Studies.study(DIODES);
    assertEquals(List.of(), unsolved(study));
    assertTrue(study.troubles().stream().noneMatch(Trouble.Gap.class::isInstance));
    unsettle(study);
    assertEquals(List.of("V1"), unsolved(study).get(0).names());
  }

  @Test
  void a_fault_in_what_is_not_solved_has_no_known_effect() {
    assertTrue(welds(Studies.study(DIODES)).explored());
    Study study = Studies.study(DIODES);
    unsettle(study);
    assertFalse(welds(study).explored());
    assertEquals(FaultCase.Harm.UNKNOWN, welds(study).harm());
  }

  private static FaultCase welds(Study study) {
    return Faults.of(study).cases().stream()
        .filter(c -> c.fault().inWords().equals("S1.1-2 welds"))
        .findFirst()
        .orElseThrow();
  }
}
