package org.coilwright.solve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class TurnOffTest {
  /** 0.5 H and 100 Ω on 12 V, released at a tenth of the current: the textbook's coil. */
  private static Study coil(String keys, String more, String wires) {
    return Studies.study(
        """
        parts:
          G1: {is: dc-supply, output: {plus: P, minus: M, voltage: 12 V DC}}
          S1: {is: switch, form: NO, poles: 1}
          K1:
            is: relay
            coil: {pins: [A1, A2], voltage: 12 V DC, resistance: 100 Ω, release: 10 %%%s}
            contacts: [{pins: [11, 14], form: NO}]
        %s
        wires:
          - {from: G1.P, to: S1.1, length: 0.01 m, size: 10 mm²}
          - {from: S1.2, to: K1.A1, length: 0.01 m, size: 10 mm²}
          - {from: K1.A2, to: G1.M, length: 0.01 m, size: 10 mm²}
        %s\
        """
            .formatted(keys, more, wires));
  }

  private static final String TAU = ", time-constant: 5 ms";

  @Test
  void a_plain_diode_takes_nine_and_a_half_milliseconds() {
    TurnOff off =
        coil(TAU, "  V1: {is: diode}", "  - V1.K to K1.A1\n  - V1.A to K1.A2\n")
            .turnOff("K1")
            .orElseThrow();
    assertEquals(9.499e-3, off.seconds(), 0.01e-3);
    assertEquals(0.12, off.amps(), 1e-5);
    assertEquals(0.012, off.releaseAmps(), 1e-9);
    assertEquals(0.7, off.coilVolts().orElseThrow(), 0.01);
    assertEquals(12.7, off.contactVolts().orElseThrow(), 0.01);
    assertEquals(List.of("S1.1-2"), off.openedBy());
    assertEquals(TurnOff.Method.CLOSED_FORM, off.method());
  }

  @Test
  void a_diode_that_is_built_in_does_the_same() {
    TurnOff off = coil(TAU + ", suppression: diode", "", "").turnOff("K1").orElseThrow();
    assertEquals(9.499e-3, off.seconds(), 0.01e-3);
  }

  @Test
  void a_zener_of_24_volts_that_is_built_in_takes_less_than_two_milliseconds() {
    TurnOff off =
        coil(TAU + ", suppression: diode-with-zener, clamping-voltage: 24 V", "", "")
            .turnOff("K1")
            .orElseThrow();
    assertEquals(1.743e-3, off.seconds(), 0.005e-3);
    assertEquals(24.7, off.coilVolts().orElseThrow(), 0.01);
    assertEquals(36.7, off.contactVolts().orElseThrow(), 0.01);
  }

  @Test
  void a_zener_of_which_no_voltage_is_written_tells_nothing() {
    assertTrue(coil(TAU + ", suppression: diode-with-zener", "", "").turnOff("K1").isEmpty());
  }

  @Test
  void a_resistor_of_680_ohms_takes_one_and_a_half_milliseconds_and_82_volts() {
    TurnOff off =
        coil(
                TAU,
                "  R1: {is: resistor, resistance: 680 Ω}",
                "  - R1.1 to K1.A1\n  - R1.2 to K1.A2\n")
            .turnOff("K1")
            .orElseThrow();
    assertEquals(1.476e-3, off.seconds(), 0.002e-3);
    assertEquals(81.6, off.coilVolts().orElseThrow(), 0.1);
  }

  @Test
  void with_nothing_across_it_the_spark_decides_and_no_peak_is_told() {
    TurnOff off = coil(TAU, "", "").turnOff("K1").orElseThrow();
    assertEquals(TurnOff.Method.NOTHING_ACROSS, off.method());
    assertTrue(off.coilVolts().isEmpty());
    assertTrue(off.contactVolts().isEmpty());
  }

  @Test
  void a_coil_without_a_time_constant_has_no_answer() {
    assertEquals(Optional.empty(), coil("", "", "").turnOff("K1"));
  }

  @Test
  void what_is_built_in_without_a_value_has_no_answer() {
    for (String builtIn : List.of("varistor", "rc", "resistor", "diode-with-zener")) {
      String keys = TAU + ", suppression: " + builtIn;
      assertEquals(Optional.empty(), coil(keys, "", "").turnOff("K1"), builtIn);
    }
  }

  @Test
  void poles_that_open_on_both_sides_leave_it_untold_what_each_gets() {
    TurnOff off =
        holding(
            """
            - G1.P to S1.1
            - S1.2 to K1.A1
            - K1.A2 to S1.4
            - S1.3 to G1.M
            """);
    assertEquals(List.of("S1.1-2", "S1.3-4"), off.openedBy());
    assertEquals(0.7, off.coilVolts().orElseThrow(), 0.01);
    assertTrue(off.contactVolts().isEmpty(), "24.7 V over both gaps, parted in no known way");
  }

  @Test
  void a_holding_contact_opens_only_once_its_own_relay_has_let_go() {
    TurnOff off =
        holding(
            """
            - G1.P to S2.1
            - S2.2 to S1.1
            - S2.2 to K1.21
            - S1.2 to K1.A1
            - K1.24 to K1.A1
            - K1.A2 to G1.M
            """);
    assertEquals(List.of("S2.1-2"), off.openedBy());
    assertEquals(24.7, off.contactVolts().orElseThrow(), 0.01);
  }

  private static TurnOff holding(String wires) {
    return Studies.study(
            """
            parts:
              G1: {is: dc-supply, output: {plus: P, minus: M, voltage: 24 V DC}}
              S1: {is: switch, form: NO, poles: 2}
              S2: {is: switch, form: NC, poles: 1}
              K1:
                is: relay
                coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 300 Ω, time-constant: 8 ms, suppression: diode}
                contacts: [{pins: [21, 24], form: NO}]
            wires:
            """
                + wires)
        .turnOff("K1")
        .orElseThrow();
  }

  @Test
  void the_contact_of_the_relay_before_counts_as_what_opens() {
    Study study =
        Studies.study(
            "parts:\n"
                + Studies.SUPPLY
                + """
                  S1: {is: switch, form: NO, poles: 1}
                  K1: {is: relay, coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 600 Ω}, contacts: [{pins: [11, 14], form: NO}]}
                  K2: {is: relay, coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 600 Ω, time-constant: 9 ms, suppression: diode}, contacts: [{pins: [11, 14], form: NO}]}
                wires:
                  - G1.P to S1.1
                  - S1.2 to K1.A1
                  - K1.A2 to G1.M
                  - G1.P to K1.11
                  - K1.14 to K2.A1
                  - K2.A2 to G1.M
                """);
    assertEquals(List.of("K1.11-14"), study.turnOff("K2").orElseThrow().openedBy());
  }
}
