package org.coilwright.solve;

import static org.coilwright.solve.Studies.study;
import static org.coilwright.solve.Studies.troubles;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class TroublesTest {
  private static final String RELAY =
      "  %s: {is: relay, coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 600 Ω}, contacts: [{pins: [11, 14], form: NO}]}\n";

  private static String relays(String... names) {
    StringBuilder parts = new StringBuilder();
    for (String name : names) {
      parts.append(RELAY.formatted(name));
    }
    return parts.toString();
  }

  private static final String SWITCHES =
      """
        S1: {is: switch, form: NO, poles: 1}
        S2: {is: switch, form: NO, poles: 1}
      """;

  @Test
  void a_contact_across_the_supply_is_a_short_circuit_in_the_state_that_closes_it() {
    Study study =
        study(
            "parts:\n"
                + Studies.SUPPLY
                + relays("K1")
                + SWITCHES
                + """
                wires:
                  - G1.P to S1.1
                  - S1.2 to K1.A1
                  - K1.A2 to G1.M
                  - S1.2 to S2.1
                  - S2.2 to G1.M
                """);
    List<Trouble.ShortCircuit> shorts = troubles(study, Trouble.ShortCircuit.class);
    assertEquals(1, shorts.size());
    assertEquals("G1.output", shorts.get(0).source());
    assertEquals(Map.of("S1", true, "S2", true), Map.copyOf(shorts.get(0).positions()));
    assertEquals("G1.M → S2.2 → S2.1 → S1.2 → S1.1 → G1.P", shorts.get(0).path().inWords());
    assertTrue(shorts.get(0).amps() > 100, "amps " + shorts.get(0).amps());
    assertTrue(study.isShorted(study.states().get(3)));
    assertFalse(study.isShorted(study.states().get(2)));
  }

  private static String diode(String anode, String cathode) {
    return "parts:\n"
        + Studies.SUPPLY
        + relays("K1")
        + SWITCHES
        + "  V1: {is: diode, reverse-voltage: 400 V, current: 1 A}\n"
        + """
        wires:
          - G1.P to S1.1
          - S1.2 to K1.A1
          - K1.A2 to G1.M
          - V1.A to %s
          - V1.K to %s
        """
            .formatted(anode, cathode);
  }

  @Test
  void a_suppression_diode_the_wrong_way_round_is_a_short_circuit_and_the_right_way_is_none() {
    assertTrue(study(diode("K1.A2", "K1.A1")).troubles().isEmpty());
    Study wrong = study(diode("K1.A1", "K1.A2"));
    assertEquals(1, troubles(wrong, Trouble.ShortCircuit.class).size());
  }

  @Test
  void a_diode_in_series_costs_its_forward_voltage() {
    Study study =
        study(
            "parts:\n"
                + Studies.SUPPLY
                + relays("K1")
                + "  V1: {is: diode}\n"
                + """
                wires:
                  - G1.P to V1.A
                  - V1.K to K1.A1
                  - K1.A2 to G1.M
                """);
    assertEquals(23.3, study.coil("K1", study.states().get(0)).volts(), 0.01);
  }

  @Test
  void a_diode_across_an_alternating_coil_is_a_short_circuit_every_other_half_wave() {
    Study study =
        study(
            """
            parts:
              G0: {is: mains}
              Q1: {is: contactor, coil: {pins: [A1, A2], voltage: 230 V AC, hold: 5 VA}, contacts: [{pins: [11, 14], form: NO}]}
              V1: {is: diode}
            wires:
              - G0.L to Q1.A1
              - G0.N to Q1.A2
              - V1.A to Q1.A1
              - V1.K to Q1.A2
            """);
    assertEquals(1, troubles(study, Trouble.ShortCircuit.class).size());
  }

  @Test
  void two_lines_joined_are_a_short_circuit() {
    Study study =
        study(
            Studies.THREE,
            """
            parts:
              G0: {is: mains}
              S1: {is: switch, form: NO, poles: 1}
            wires:
              - G0.L1 to S1.1
              - S1.2 to G0.L2
            """);
    List<Trouble.ShortCircuit> shorts = troubles(study, Trouble.ShortCircuit.class);
    assertEquals(1, shorts.size());
    assertEquals("G0.L1 → S1.1 → S1.2 → G0.L2", shorts.get(0).path().inWords());
  }

  @Test
  void a_line_on_the_protective_conductor_is_a_short_circuit_and_the_neutral_is_not() {
    String body =
        "parts:\n  G0: {is: mains}\n  F1: {is: fuse}\nwires:\n  - G0.%s to F1.1\n  - F1.2 to G0.PE\n";
    assertEquals(1, troubles(study(body.formatted("L")), Trouble.ShortCircuit.class).size());
    assertEquals(0, troubles(study(body.formatted("N")), Trouble.ShortCircuit.class).size());
  }

  @Test
  void a_coil_that_is_fed_through_another_is_a_sneak_path() {
    // K2's minus hangs on K1's plus side: with S1 open, K2 and K1 share the voltage.
    Study study =
        study(
            "parts:\n"
                + Studies.SUPPLY
                + relays("K1", "K2")
                + SWITCHES
                + """
                wires:
                  - G1.P to S1.1
                  - S1.2 to K1.A1
                  - K1.A2 to G1.M
                  - G1.P to S2.1
                  - S2.2 to K2.A1
                  - K2.A2 to K1.A1
                """);
    List<Trouble.SneakPath> sneaks = troubles(study, Trouble.SneakPath.class);
    assertEquals(1, sneaks.size());
    assertEquals(Map.of("S1", false, "S2", true), Map.copyOf(sneaks.get(0).positions()));
    assertEquals("K1", sneaks.get(0).victim());
    assertEquals("K2", sneaks.get(0).through());
    assertEquals(12, sneaks.get(0).volts(), 0.01);
    assertTrue(sneaks.get(0).path().inWords().contains("K2.A2"), sneaks.get(0).path().inWords());
  }

  @Test
  void coils_side_by_side_are_no_sneak_path() {
    Study study =
        study(
            "parts:\n"
                + Studies.SUPPLY
                + relays("K1", "K2")
                + SWITCHES
                + """
                wires:
                  - G1.P to S1.1
                  - S1.2 to K1.A1
                  - K1.A2 to G1.M
                  - G1.P to S2.1
                  - S2.2 to K2.A1
                  - K2.A2 to K1.A2
                """);
    assertTrue(study.troubles().isEmpty());
  }

  @Test
  void a_coil_that_hangs_on_no_source_floats() {
    Study study = study("parts:\n" + relays("K1", "K2") + "wires:\n  - K1.A1 to K2.A1\n");
    List<Trouble.Floating> floating = troubles(study, Trouble.Floating.class);
    assertEquals(1, floating.size());
    assertEquals(List.of("K1.A1", "K1.A2", "K2.A1", "K2.A2"), floating.get(0).pins());
    assertEquals(0, study.coil("K1", study.states().get(0)).volts());
  }
}
