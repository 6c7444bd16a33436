package org.coilwright.solve;

import static org.coilwright.solve.Studies.study;
import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import org.junit.jupiter.api.Test;

/**
 * Three-phase elements whole, with one line lost and with one element lost, against the factors
 * that heater failure detectors are set by: a delta with one line lost keeps half its power, with
 * one element lost two thirds and line currents of 1/√3, 1/√3 and 1; a star without neutral keeps
 * half either way, one with neutral two thirds and the element's current in the neutral.
 */
class ThreePhaseStudyTest {
  private static final double RATED = 9000 / (Math.sqrt(3) * 400);

  private static Study nine(String connection, String lines) {
    return study(
        Studies.THREE,
        """
        parts:
          G0: {is: mains}
          E1: {is: heater, power: 9 kW, voltage: 400 V, connection: %s}
        wires:
        %s"""
            .formatted(connection, lines));
  }

  private static final String L1 = "  - {from: G0.L1, to: E1.1, length: 0.01 m, size: 10 mm²}\n";
  private static final String L2 = "  - {from: G0.L2, to: E1.2, length: 0.01 m, size: 10 mm²}\n";
  private static final String L3 = "  - {from: G0.L3, to: E1.3, length: 0.01 m, size: 10 mm²}\n";
  private static final String N = "  - {from: G0.N, to: E1.N, length: 0.01 m, size: 10 mm²}\n";

  private static void expect(
      Study study, double watts, double one, double two, double three, String... lines) {
    LoadReading reading = study.load("E1", study.states().get(0));
    assertEquals(watts, reading.watts(), 1e-4 * watts);
    assertEquals(one, reading.amps().getOrDefault("1", 0.0), 1e-4 * RATED);
    assertEquals(two, reading.amps().getOrDefault("2", 0.0), 1e-4 * RATED);
    assertEquals(three, reading.amps().getOrDefault("3", 0.0), 1e-4 * RATED);
    assertEquals(List.of(lines), reading.lines());
  }

  @Test
  void whole_elements_draw_twelve_point_nine_nine_amperes_a_line() {
    for (String connection : List.of("star", "delta")) {
      expect(nine(connection, L1 + L2 + L3), 9000, RATED, RATED, RATED, "L1", "L2", "L3");
    }
    assertEquals(12.990, RATED, 1e-3);
  }

  @Test
  void a_delta_that_lost_a_line_keeps_half() {
    double lost = RATED * Math.sqrt(3) / 2;
    expect(nine("delta", L2 + L3), 4500, 0, lost, lost, "L2", "L3");
    assertEquals(11.250, lost, 1e-3);
  }

  @Test
  void a_star_that_lost_a_line_keeps_half() {
    double lost = RATED * Math.sqrt(3) / 2;
    expect(nine("star", L2 + L3), 4500, 0, lost, lost, "L2", "L3");
  }

  @Test
  void a_star_with_neutral_that_lost_a_line_keeps_two_thirds_and_loads_the_neutral() {
    Study study = nine("star-with-neutral", L2 + L3 + N);
    expect(study, 6000, 0, RATED, RATED, "L2", "L3");
    LoadReading reading = study.load("E1", study.states().get(0));
    assertEquals(RATED, reading.amps().getOrDefault("N", 0.0), 1e-4 * RATED);
  }

  @Test
  void a_whole_star_leaves_its_neutral_without_current() {
    Study study = nine("star-with-neutral", L1 + L2 + L3 + N);
    LoadReading reading = study.load("E1", study.states().get(0));
    assertEquals(0, reading.amps().getOrDefault("N", 0.0), 1e-6);
  }

  /** Three single-phase elements of 3, 1.5 and 1 kW whose common neutral is not joined. */
  @Test
  void a_lost_neutral_gives_each_element_its_wrong_voltage() {
    Study study =
        study(
            "{phases: 3, voltage: 398.3717 V, frequency: 50 Hz}",
            """
            parts:
              G0: {is: mains}
              E1: {is: heater, power: 3 kW, voltage: 230 V, connection: single}
              E2: {is: heater, power: 1.5 kW, voltage: 230 V, connection: single}
              E3: {is: heater, power: 1 kW, voltage: 230 V, connection: single}
            wires:
              - {from: G0.L1, to: E1.1, length: 0.01 m, size: 10 mm²}
              - {from: G0.L2, to: E2.1, length: 0.01 m, size: 10 mm²}
              - {from: G0.L3, to: E3.1, length: 0.01 m, size: 10 mm²}
              - {from: E1.2, to: E2.2, length: 0.01 m, size: 10 mm²}
              - {from: E2.2, to: E3.2, length: 0.01 m, size: 10 mm²}
            """);
    State only = study.states().get(0);
    assertEquals(1413, study.load("E1", only).watts(), 1);
    assertEquals(1934, study.load("E2", only).watts(), 1);
    assertEquals(1562, study.load("E3", only).watts(), 1);
  }
}
