package org.coilwright.worked;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;

import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.Reading;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.Test;

/** Closed forms of textbooks as a second opinion on what the solver computes, seeded circuits. */
class SecondOpinionTest {
  private static final int CIRCUITS = 20;

  /** Wires and contacts of the netlists take up to this share of the currents. */
  private static final double WIRES = 1e-3;

  private final Tables tables = Tables.load();

  private static String head(String mains) {
    return """
        coilwright: 1
        circuit:
          title: Second opinion
        site:
          mains: {%s, frequency: 50 Hz, earthing: TN-S}
          enclosure-air: 0..40 °C
          altitude: 100 m
          practice: iec
        parts:
          G0: {is: mains}
        """
        .formatted(mains);
  }

  private static String heater(int number, double siemens) {
    return String.format(
        Locale.ROOT,
        "  E%d: {is: heater, power: %.6f W, voltage: 230 V, connection: single}%n",
        number,
        230 * 230 * siemens);
  }

  private Study study(String netlist) {
    Reading reading =
        NetlistReader.read("second-opinion.yaml", netlist.getBytes(StandardCharsets.UTF_8));
    return reading instanceof Reading.Read read
        ? Study.of(Circuit.of(read.netlist()), tables)
        : fail(reading.toString());
  }

  private static double amps(Study study, int element) {
    State only = study.states().get(0);
    return study.load("E" + element, only).amps().getOrDefault("1", 0.0);
  }

  private static void near(double expected, double actual) {
    assertEquals(expected, actual, WIRES * Math.max(1, Math.abs(expected)));
  }

  @Test
  void unequal_elements_in_star_with_and_without_neutral() {
    Random random = new Random(3);
    for (int i = 0; i < CIRCUITS; i++) {
      double[] g = random.doubles(3, 0.005, 0.08).toArray();
      double volts = 380 + 40 * random.nextDouble();
      boolean neutral = random.nextBoolean();
      String mains = String.format(Locale.ROOT, "phases: 3, voltage: %.9f V", volts);
      Study study =
          study(
              head(mains)
                  + heater(1, g[0])
                  + heater(2, g[1])
                  + heater(3, g[2])
                  + """
                    X1: {is: terminals, count: 4, bridged: [[1, 2, 3, 4]]}
                  wires:
                    - {from: G0.L1, to: E1.1, length: 0.01 m, size: 10 mm²}
                    - {from: G0.L2, to: E2.1, length: 0.01 m, size: 10 mm²}
                    - {from: G0.L3, to: E3.1, length: 0.01 m, size: 10 mm²}
                    - {from: E1.2, to: X1.1, length: 0.01 m, size: 10 mm²}
                    - {from: E2.2, to: X1.2, length: 0.01 m, size: 10 mm²}
                    - {from: E3.2, to: X1.3, length: 0.01 m, size: 10 mm²}
                  """
                  + (neutral ? "  - {from: X1.4, to: G0.N, length: 0.01 m, size: 10 mm²}\n" : ""));
      ThreePhase.Lines lines =
          neutral
              ? ThreePhase.starWithNeutral(volts, g[0], g[1], g[2])
              : ThreePhase.star(volts, g[0], g[1], g[2]);
      near(lines.first(), amps(study, 1));
      near(lines.second(), amps(study, 2));
      near(lines.third(), amps(study, 3));
    }
  }

  @Test
  void the_volts_of_elements_whose_neutral_is_lost() {
    // 3, 1.5 and 1 kW at 230 V: 157.9, 261.2 and 287.5 V.
    ThreePhase.Lines across =
        ThreePhase.starElementVolts(230 * Math.sqrt(3), 1 / 17.6333, 1 / 35.2667, 1 / 52.9);
    assertEquals(157.9, across.first(), 0.05);
    assertEquals(261.2, across.second(), 0.05);
    assertEquals(287.5, across.third(), 0.05);
  }

  @Test
  void unequal_elements_in_delta_draw_their_line_currents() {
    Random random = new Random(4);
    for (int i = 0; i < CIRCUITS; i++) {
      double[] g = random.doubles(3, 0.005, 0.08).toArray();
      double volts = 380 + 40 * random.nextDouble();
      String mains = String.format(Locale.ROOT, "phases: 3, voltage: %.9f V", volts);
      Study study =
          study(
              head(mains)
                  + heater(1, g[0])
                  + heater(2, g[1])
                  + heater(3, g[2])
                  + """
                    S1: {is: switch, poles: 3, form: NC}
                  wires:
                    - {from: G0.L1, to: S1.1, length: 0.01 m, size: 10 mm²}
                    - {from: G0.L2, to: S1.3, length: 0.01 m, size: 10 mm²}
                    - {from: G0.L3, to: S1.5, length: 0.01 m, size: 10 mm²}
                    - {from: S1.2, to: E1.1, length: 0.01 m, size: 10 mm²}
                    - {from: E1.2, to: S1.4, length: 0.01 m, size: 10 mm²}
                    - {from: S1.4, to: E2.1, length: 0.01 m, size: 10 mm²}
                    - {from: E2.2, to: S1.6, length: 0.01 m, size: 10 mm²}
                    - {from: S1.6, to: E3.1, length: 0.01 m, size: 10 mm²}
                    - {from: E3.2, to: S1.2, length: 0.01 m, size: 10 mm²}
                  """);
      ThreePhase.Lines lines = ThreePhase.delta(volts, g[0], g[1], g[2]);
      State resting = study.states().get(0);
      List<Double> drawn =
          study.circuit().branches(org.coilwright.circuit.Branch.Contact.class).stream()
              .map(c -> study.contact(c, resting).amps())
              .toList();
      near(lines.first(), drawn.get(0));
      near(lines.second(), drawn.get(1));
      near(lines.third(), drawn.get(2));
    }
  }

  @Test
  void what_a_snubber_leaves_on_a_coil_near_resonance_and_far_from_it() {
    Random random = new Random(5);
    double factor = tables.figure("coil.pick-up-power-factor").value();
    for (int i = 0; i < CIRCUITS; i++) {
      double pickUp = 3 + 60 * random.nextDouble();
      double ohms = 20 + 200 * random.nextDouble();
      double nanofarad = 20 + 300 * random.nextDouble();
      Study study =
          study(
              head("phases: 1, voltage: 230 V")
                  + String.format(
                      Locale.ROOT,
                      """
                        S1: {is: switch, poles: 1, form: NO}
                        R1: {is: snubber, resistance: %.6f Ω, capacitance: %.6f nF}
                        Q1:
                          is: contactor
                          coil: {pins: [A1, A2], voltage: 230 V AC, pick-up: %.6f VA, hold: 2 VA, range: 1..1000 %%, release: 1 %%, operate: 1000 %% at 20 °C}
                          poles: [[1, 2]]
                      wires:
                        - {from: G0.L, to: S1.1, length: 0.01 m, size: 10 mm²}
                        - {from: S1.1, to: R1.1, length: 0.01 m, size: 10 mm²}
                        - {from: R1.2, to: S1.2, length: 0.01 m, size: 10 mm²}
                        - {from: S1.2, to: Q1.A1, length: 0.01 m, size: 10 mm²}
                        - {from: Q1.A2, to: G0.N, length: 0.01 m, size: 10 mm²}
                      """,
                      ohms,
                      nanofarad,
                      pickUp));
      State out =
          study.states().stream()
              .filter(s -> s.pulledIn().values().stream().noneMatch(in -> in))
              .findFirst()
              .orElseThrow();
      double expected =
          new SnubberLeakage(ohms, nanofarad * 1e-9)
              .coilVolts(AcCoil.fromPowerFactor(230, pickUp, factor), 230, 50);
      near(expected, study.coil("Q1", out).volts());
    }
  }
}
