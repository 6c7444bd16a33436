package org.coilwright.solve;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.coilwright.ngspice.Deck;
import org.coilwright.ngspice.Simulator;
import org.junit.jupiter.api.Test;

/** Turn-off of direct-current coils: closed forms against a circuit simulator, seeded coils. */
class CoilDecayAgainstSimulatorTest {
  private static final int COILS = 8;
  private static final double RELEASE = 0.10;

  /** A coil and everything that may sit across it. */
  private record Case(
      CoilDecay coil, double supply, double zener, double resistor, double varistor) {}

  private static List<Case> cases() {
    Random random = new Random(20);
    List<Case> cases = new ArrayList<>();
    cases.add(new Case(new CoilDecay(0.5, 100, 0.12), 12, 24, 680, 40));
    while (cases.size() < COILS) {
      double supply = List.of(12.0, 24.0, 48.0).get(random.nextInt(3));
      double ohms = 80 + 1900 * random.nextDouble();
      double seconds = 0.003 + 0.03 * random.nextDouble();
      cases.add(
          new Case(
              CoilDecay.ofTimeConstant(seconds, ohms, supply),
              supply,
              supply * (0.8 + random.nextDouble()),
              ohms * (0.5 + 5 * random.nextDouble()),
              supply * (2 + random.nextDouble())));
    }
    return cases;
  }

  /** Coil current starts in L1; what closes the loop is given. */
  private static Deck decay(String name, Case c, double expected, List<String> across) {
    List<String> elements = new ArrayList<>();
    elements.add("L1 top mid " + Deck.number(c.coil.henry()) + " IC=" + Deck.number(c.coil.amps()));
    elements.add("R1 mid 0 " + Deck.number(c.coil.ohms()));
    elements.addAll(across);
    double stop = 1.5 * expected;
    Map<String, String> measures = new LinkedHashMap<>();
    measures.put("t", "when i(l1)=" + Deck.number(c.coil.amps() * RELEASE) + " fall=1");
    measures.put("low", "min v(top)");
    return Deck.transientFrom(name, elements, stop / 20000, stop, measures);
  }

  @Test
  void release_times_and_peaks_agree_for_diode_zener_resistor_and_varistor() {
    List<Deck> decks = new ArrayList<>();
    Map<String, Double> seconds = new LinkedHashMap<>();
    Map<String, Double> peaks = new LinkedHashMap<>();
    List<Case> cases = cases();
    for (int i = 0; i < cases.size(); i++) {
      Case c = cases.get(i);
      CoilDecay coil = c.coil;
      double to = coil.amps() * RELEASE;
      // A diode with its constant drop, and whatever stands in series, is a source in the loop.
      add(decks, seconds, peaks, c, i + " diode", coil.clampedSeconds(0.7, to), 0.7, clamp(0.7));
      double zener = c.zener + 0.7;
      add(
          decks,
          seconds,
          peaks,
          c,
          i + " zener",
          coil.clampedSeconds(zener, to),
          zener,
          clamp(zener));
      add(
          decks,
          seconds,
          peaks,
          c,
          i + " varistor",
          coil.clampedSeconds(c.varistor, to),
          c.varistor,
          clamp(c.varistor));
      add(
          decks,
          seconds,
          peaks,
          c,
          i + " resistor",
          coil.resistorSeconds(c.resistor, to),
          coil.resistorPeakVolts(c.resistor),
          List.of("R2 top 0 " + Deck.number(c.resistor)));
      add(
          decks,
          seconds,
          peaks,
          c,
          i + " diode and resistor",
          coil.diodeResistorSeconds(c.resistor, 0.7, to),
          coil.diodeResistorPeakVolts(c.resistor, 0.7),
          List.of("R2 top x " + Deck.number(c.resistor), "V2 0 x DC 0.7"));
    }
    buildUpAndSwitchClamp(decks, seconds, peaks);
    Map<String, Map<String, Double>> answers = Simulator.recordedIn("coil-decay").answers(decks);
    assertEquals(5 * COILS + 2, answers.size());
    seconds.forEach(
        (name, expected) ->
            assertEquals(expected, answer(answers, name, "t"), 0.001 * expected, name));
    peaks.forEach(
        (name, expected) ->
            assertEquals(expected, -answer(answers, name, "low"), 0.001 * expected, name));
  }

  /**
   * With nothing across it the ideal bound: all energy in the stray capacitance. The winding takes
   * some of it on the way, so the simulated peak is a little lower, never higher.
   */
  @Test
  void the_bound_of_a_bare_coil_is_met_by_a_coil_that_loses_little() {
    List<Deck> decks = new ArrayList<>();
    Map<String, Double> bounds = new LinkedHashMap<>();
    for (Case c : cases()) {
      String name = "bare " + decks.size();
      double stray = 50e-12;
      bounds.put(name, c.coil.barePeakBound(stray));
      double quarter = Math.PI / 2 * Math.sqrt(c.coil.henry() * stray);
      List<String> elements =
          List.of(
              "L1 top mid " + Deck.number(c.coil.henry()) + " IC=" + Deck.number(c.coil.amps()),
              "R1 mid 0 " + Deck.number(c.coil.ohms()),
              "C1 top 0 " + Deck.number(stray) + " IC=0");
      decks.add(
          Deck.transientFrom(
              name, elements, quarter / 2000, 2 * quarter, Map.of("low", "min v(top)")));
    }
    Map<String, Map<String, Double>> answers = Simulator.recordedIn("bare-coil").answers(decks);
    bounds.forEach(
        (name, bound) -> {
          double peak = -answer(answers, name, "low");
          assertEquals(bound, peak, 0.02 * bound, name);
          assertTrue(peak <= bound * 1.0001, name + " is above its bound");
        });
  }

  /** Building up to 70 %, and a clamp across the switch, where the supply stays in the loop. */
  private static void buildUpAndSwitchClamp(
      List<Deck> decks, Map<String, Double> seconds, Map<String, Double> peaks) {
    CoilDecay coil = new CoilDecay(1.2, 48, 0.5);
    seconds.put("build-up", coil.pickUpSeconds(0.7));
    decks.add(
        Deck.transientFrom(
            "build-up",
            List.of("V1 s 0 DC 24", "R1 s mid 48", "L1 mid 0 1.2 IC=0"),
            1e-6,
            0.05,
            Map.of("t", "when i(l1)=0.35 rise=1")));
    double end = coil.switchClampSeconds(24, 47);
    seconds.put("switch clamp", end);
    // The clamp's energy is its voltage times the charge; taken negative to stand among the peaks.
    peaks.put("switch clamp", coil.switchClampJoules(24, 47) / 47);
    Map<String, String> measures = new LinkedHashMap<>();
    measures.put("t", "when i(l1)=0 fall=1");
    measures.put("low", "integ i(v2) from=0 to=" + Deck.number(end));
    decks.add(
        Deck.transientFrom(
            "switch clamp",
            List.of("V1 s 0 DC 24", "R1 s mid 48", "L1 mid sw 1.2 IC=0.5", "V2 0 sw DC -47"),
            1e-6,
            1.2 * end,
            measures));
  }

  private static List<String> clamp(double volts) {
    return List.of("V2 0 top DC " + Deck.number(volts));
  }

  private static double answer(Map<String, Map<String, Double>> all, String deck, String name) {
    return all.getOrDefault(deck, Map.of()).getOrDefault(name, Double.NaN);
  }

  private static void add(
      List<Deck> decks,
      Map<String, Double> seconds,
      Map<String, Double> peaks,
      Case c,
      String name,
      double expected,
      double peak,
      List<String> across) {
    decks.add(decay(name, c, expected, across));
    seconds.put(name, expected);
    peaks.put(name, peak);
  }
}
