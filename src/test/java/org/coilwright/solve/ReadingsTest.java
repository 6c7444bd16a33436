// Over 250 lines: one kind of reading after the other.
package org.coilwright.solve;

import static org.coilwright.solve.Studies.contact;
import static org.coilwright.solve.Studies.state;
import static org.coilwright.solve.Studies.study;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.quantity.CurrentKind;
import org.junit.jupiter.api.Test;

class ReadingsTest {
  private static final String LINE =
      """
      parts:
        U1:
          is: controller
          aux-supply: {plus: 3, minus: 4, voltage: 24 V DC ± 10 %}
          outputs:
            heat: {pins: [1, 2], form: NO}
        K1: {is: relay, coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 240 Ω ± 10 %, %s}, contacts: [{pins: [11, 14], form: NO}]}
      runs:
        W1: {length: 100 m, size: 0.75 mm², flexible: true}
      wires:
        - U1.3 to U1.1
        - U1.2 to K1.A1 in W1
        - K1.A2 to U1.4 in W1
      """;

  private static final double PER_METRE = 0.026;

  /** A bridge is no cord: solid copper, class 2. */
  private static final double BRIDGE = 0.2 * 0.0245;

  private static double factor(double celsius) {
    return (234.5 + celsius) / 254.5;
  }

  @Test
  void the_coil_gets_what_line_and_contact_leave_of_the_supply_at_each_corner() {
    Study study = study(LINE.replace("%s", "release: 10 %"));
    CoilReading on = study.coil("K1", state(study, "U1.heat"));
    // Class 5 copper of 0.75 mm²: 26.0 Ω/km at 20 °C, 200 m there and back.
    double line = 200 * PER_METRE + BRIDGE;
    assertEquals(24 * 240 / (240 + line + 0.003), on.volts(), 1e-6);
    double coldCoil = 216 * factor(0);
    assertEquals(21.6 * coldCoil / (coldCoil + line * factor(45) + 0.1), on.lowest(), 1e-6);
    double hotCoil = 264 * factor(45);
    assertEquals(26.4 * hotCoil / (hotCoil + line * factor(0) + 1e-6), on.highest(), 1e-6);
    assertEquals(
        "supply at 21.6 V, line at 45 °C, coil cold, when it draws most", on.lowestCorner());
    assertEquals("supply at 26.4 V, line at 0 °C, no other load", on.highestCorner());
    assertEquals(CurrentKind.DC, on.kind());
    assertEquals(Optional.of("U1"), on.source());
    assertEquals(21.6, on.sourceVolts(), 1e-9);
    assertEquals(on.volts() / 240, on.amps(), 1e-9);
    assertEquals(on.amps(), on.pickUpAmps(), 1e-12);
    CoilReading off = study.coil("K1", state(study));
    assertEquals(0, off.volts());
    assertEquals(CurrentKind.UNSTATED, off.kind());
  }

  @Test
  void the_line_is_given_at_the_hottest_the_site_names() {
    Study study = study(LINE.replace("%s", "release: 10 %"));
    Conductor wire = study.circuit().branches(Conductor.class).get(1);
    assertEquals(100 * PER_METRE * factor(45), study.hotOhms(wire).orElseThrow().value(), 1e-9);
  }

  @Test
  void a_wire_without_size_has_no_resistance_to_give() {
    Study study = study(LINE.replace("%s", "release: 10 %").replace(", size: 0.75 mm²", ""));
    Conductor wire = study.circuit().branches(Conductor.class).get(1);
    assertTrue(study.hotOhms(wire).isEmpty());
    assertEquals(24, study.coil("K1", state(study, "U1.heat")).volts(), 0.01);
  }

  @Test
  void the_range_of_the_data_sheet_counts_as_it_stands_and_the_cold_pull_in_is_scaled() {
    CoilLimits range = limits("range: 80..110 %, release: 10 %");
    assertEquals(19.2, range.operate().value(), 1e-9);
    assertEquals(26.4, range.highest().value(), 1e-9);
    assertEquals(2.4, range.release().value(), 1e-9);
    CoilLimits both = limits("range: 75..110 %, operate: 70 % at 20 °C");
    assertEquals(24 * 0.7 * factor(45), both.operate().value(), 1e-9);
    assertTrue(both.operateReason().contains("45 °C"), both.operateReason());
    CoilLimits looser = limits("range: 80..110 %, operate: 70 % at 20 °C");
    assertEquals(19.2, looser.operate().value(), 1e-9);
    CoilLimits alone = limits("operate: 70 % at 20 °C");
    assertEquals(24 * 0.7 * factor(45), alone.operate().value(), 1e-9);
  }

  @Test
  void what_the_part_does_not_give_comes_from_the_cited_defaults_and_says_so() {
    CoilLimits limits = limits("polarity: none");
    assertEquals(20.4, limits.operate().value(), 1e-9);
    assertEquals(26.4, limits.highest().value(), 1e-9);
    assertEquals(1.2, limits.release().value(), 1e-9);
    assertTrue(limits.operateReason().contains("gives none"), limits.operateReason());
    assertEquals("iec-61810-1", limits.operate().source().key());
  }

  private static CoilLimits limits(String keys) {
    return study(LINE.replace("%s", keys)).limits("K1").orElseThrow();
  }

  private static String folding(String limit) {
    return "parts:\n"
        + "  G1: {is: dc-supply, output: {plus: P, minus: M, voltage: 24 V DC, limit: "
        + limit
        + "}}\n"
        + """
          K1: {is: relay, coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 600 Ω}, contacts: [{pins: [11, 14], form: NO}]}
          K2: {is: relay, coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 600 Ω}, contacts: [{pins: [11, 14], form: NO}]}
          S1: {is: switch, form: NO, poles: 1}
          S2: {is: switch, form: NO, poles: 1}
        wires:
          - G1.P to S1.1
          - S1.2 to K1.A1
          - K1.A2 to G1.M
          - G1.P to S2.1
          - S2.2 to K2.A1
          - K2.A2 to G1.M
        """;
  }

  @Test
  void a_limited_supply_folds_back_to_its_limit() {
    Study study = study(folding("50 mA"));
    // At 15 V each coil keeps what it did before; after the power comes back both are out.
    State both = Studies.states(study, "S1", "S2").get(0);
    assertEquals(0.05, study.supply("G1.output", both).amps(), 1e-9);
    assertEquals(15, study.coil("K1", both).volts(), 0.01);
    assertFalse(both.isIn("K1"));
    State one = state(study, "S1");
    assertEquals(24, study.coil("K1", one).volts(), 0.01);
    assertEquals(0.04, study.supply("G1.output", one).amps(), 1e-4);
  }

  @Test
  void a_supply_that_can_give_enough_does_not_fold_and_its_heaviest_state_is_told() {
    Study study = study(folding("100 mA"));
    State both = state(study, "S1", "S2");
    assertEquals(0.08, study.supply("G1.output", both).amps(), 1e-4);
    assertEquals(0.08, study.heaviest("G1.output").amps(), 1e-4);
    assertEquals(24 * 0.08, study.heaviest("G1.output").watts(), 1e-2);
  }

  private static final String CONTACTOR =
      """
      parts:
        G0: {is: mains}
        S1: {is: switch, form: NO, poles: 1}
        Q1:
          is: contactor
          coil: {pins: [A1, A2], voltage: 230 V AC, pick-up: 46 VA, hold: 4.6 VA, hold-power: 2.3 W}
          poles: [[1, 2]]
        E1: {is: heater, power: 2.3 kW, voltage: 230 V, connection: single}
      wires:
        - G0.L to S1.1
        - S1.2 to Q1.A1
        - Q1.A2 to G0.N
        - G0.L to Q1.1
        - Q1.2 to E1.1
        - E1.2 to G0.N
      """;

  @Test
  void an_alternating_coil_draws_its_pick_up_then_its_hold_current() {
    Study study = study(CONTACTOR);
    State on = state(study, "S1");
    CoilReading coil = study.coil("Q1", on);
    assertTrue(on.isIn("Q1"));
    assertEquals(CurrentKind.AC, coil.kind());
    assertEquals(0.020, coil.amps(), 1e-5);
    assertEquals(0.200, coil.pickUpAmps(), 1e-4);
    ContactReading drive = study.contact(contact(study.circuit(), "S1.1-2"), on);
    assertEquals(0.020, drive.amps(), 1e-5);
    assertEquals(0.200, drive.makeAmps(), 1e-4);
    assertEquals(0, drive.volts());
    ContactReading open = study.contact(contact(study.circuit(), "S1.1-2"), state(study));
    assertEquals(253, open.volts(), 1e-3);
    assertEquals(CurrentKind.AC, open.kind());
  }

  @Test
  void a_load_tells_power_current_by_pin_and_the_lines_that_feed_it() {
    Study study = study(CONTACTOR);
    LoadReading on = study.load("E1", state(study, "S1"));
    assertTrue(on.on());
    assertEquals(2300, on.watts(), 2);
    assertEquals(10, on.amps().getOrDefault("1", 0.0), 0.01);
    assertEquals(10, on.amps().getOrDefault("2", 0.0), 0.01);
    assertEquals(List.of("L"), on.lines());
    LoadReading off = study.load("E1", state(study));
    assertFalse(off.on());
    assertEquals(0, off.watts());
    assertEquals(Map.of(), off.amps());
  }

  @Test
  void a_coil_of_which_nothing_is_known_tells_its_voltage_and_no_current() {
    Study study = study(LINE.replace("resistance: 240 Ω ± 10 %, %s", "release: 10 %"));
    CoilReading on = study.coil("K1", state(study, "U1.heat"));
    assertEquals(24, on.volts(), 1e-6);
    assertEquals(0, on.amps());
    assertTrue(study.coilCurrentRestsOn("K1").isEmpty());
  }

  @Test
  void a_supply_without_voltage_is_named() {
    Study study =
        study(LINE.replace("%s", "release: 10 %").replace(", voltage: 24 V DC ± 10 %}", "}"));
    assertEquals(List.of("U1.aux-supply"), study.sourcesOfUnknownVoltage());
    assertTrue(state(study, "U1.heat").isIn("K1"));
  }

  /** Leakage through 100 Ω and 0.1 µF across the contact holds a 4.5 VA coil in (cos φ 0.3). */
  @Test
  void a_snubber_across_the_contact_leaves_voltage_on_an_alternating_coil() {
    Study study =
        study(
            """
            parts:
              G0: {is: mains}
              S1: {is: switch, form: NO, poles: 1}
              Z1: {is: snubber, resistance: 100 Ω, capacitance: 0.1 µF}
              Q1: {is: contactor, coil: {pins: [A1, A2], voltage: 230 V AC, hold: 4.5 VA, hold-power: 1.35 W}, contacts: [{pins: [11, 14], form: NO}]}
            wires:
              - G0.L to S1.1
              - S1.2 to Q1.A1
              - Q1.A2 to G0.N
              - Z1.1 to S1.1
              - Z1.2 to S1.2
            """);
    State held = Studies.states(study).stream().filter(s -> s.isIn("Q1")).findFirst().orElseThrow();
    assertEquals(129.2, study.coil("Q1", held).volts(), 0.1);
  }
}
