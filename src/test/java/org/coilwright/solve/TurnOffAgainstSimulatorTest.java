package org.coilwright.solve;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import org.coilwright.ngspice.Deck;
import org.coilwright.ngspice.Simulator;
import org.junit.jupiter.api.Test;

/**
 * Whole circuits switched off, from the netlist on: release time and peak across the coil against
 * decks written by hand from the same figures.
 */
class TurnOffAgainstSimulatorTest {
  /** Supplies, volts; a round for each. */
  private static final List<Integer> SUPPLIES = List.of(12, 24, 24, 48, 60, 110);

  private static final double DIODE = 0.7;

  private final List<Deck> decks = new ArrayList<>();
  private final Map<String, TurnOff> found = new LinkedHashMap<>();
  private final Random random = new Random(404);

  private double ohms;
  private double tau;
  private int volts;
  private String coilKeys = "";

  @Test
  void release_times_and_peaks_agree_for_forty_eight_circuits() {
    for (int i = 0; i < SUPPLIES.size(); i++) {
      volts = SUPPLIES.get(i);
      ohms = 150 + random.nextInt(1500);
      tau = (4 + random.nextInt(20)) / 1000.0;
      diode(i);
      builtInDiode(i);
      resistor(i);
      varistor(i);
      diodeAndVaristorInSeries(i);
      snubberAcrossTheCoil(i);
      snubberAcrossTheContact(i);
      twoCoilsOnOneDiodeAndResistor(i);
    }
    Map<String, Map<String, Double>> answers = Simulator.recordedIn("turn-off").answers(decks);
    assertEquals(8 * SUPPLIES.size(), answers.size());
    found.forEach(
        (name, turnOff) -> {
          double seconds = answer(answers, name, "t");
          double low = answer(answers, name, "low");
          double high = answer(answers, name, "high");
          double peak = Math.max(Math.abs(low), Math.abs(high));
          assertEquals(seconds, turnOff.seconds(), 0.02 * seconds, name + " release");
          assertEquals(peak, turnOff.coilVolts().orElseThrow(), 0.02 * peak, name + " peak");
        });
  }

  private static double answer(Map<String, Map<String, Double>> answers, String deck, String what) {
    return answers.getOrDefault(deck, Map.of()).getOrDefault(what, Double.NaN);
  }

  private void diode(int i) {
    TurnOff off = study("  V1: {is: diode}\n", "V1.K to K1.A1", "V1.A to K1.A2");
    assertEquals(TurnOff.Method.CLOSED_FORM, off.method());
    add("diode " + i, off, clamp("0", "a", DIODE));
  }

  private void builtInDiode(int i) {
    coilKeys = ", suppression: diode, polarity: A1 plus";
    TurnOff off = study("");
    coilKeys = "";
    assertEquals(TurnOff.Method.CLOSED_FORM, off.method());
    add("built in " + i, off, clamp("0", "a", DIODE));
  }

  private void resistor(int i) {
    int across = (int) (ohms * (0.5 + 4 * random.nextDouble()));
    TurnOff off =
        study(
            "  R1: {is: resistor, resistance: %d Ω}\n".formatted(across),
            "R1.1 to K1.A1",
            "R1.2 to K1.A2");
    add("resistor " + i, off, List.of("R2 a 0 " + across));
  }

  private void varistor(int i) {
    TurnOff off =
        study(
            "  V1: {is: varistor, clamping-voltage: %d V}\n".formatted(3 * volts),
            "V1.1 to K1.A1",
            "V1.2 to K1.A2");
    add("varistor " + i, off, clamp("0", "a", 3 * volts));
  }

  /** A varistor behind a diode is what a zener behind a diode is. */
  private void diodeAndVaristorInSeries(int i) {
    TurnOff off =
        study(
            "  V1: {is: diode}\n  V2: {is: varistor, clamping-voltage: %d V}\n".formatted(volts),
            "V1.K to K1.A1",
            "V1.A to V2.1",
            "V2.2 to K1.A2");
    add("zener " + i, off, clamp("0", "a", volts + DIODE));
  }

  private void snubberAcrossTheCoil(int i) {
    double farads = (1 + random.nextInt(10)) * 1e-7;
    TurnOff off = study(snubber(farads), "Z1.1 to K1.A1", "Z1.2 to K1.A2");
    assertEquals(TurnOff.Method.INTEGRATED, off.method());
    add(
        "snubber at coil " + i,
        off,
        List.of("R2 a x 100", "C2 x 0 " + Deck.number(farads) + " IC=" + volts));
  }

  private void snubberAcrossTheContact(int i) {
    double farads = (1 + random.nextInt(10)) * 1e-7;
    TurnOff off = study(snubber(farads), "Z1.1 to G1.P", "Z1.2 to K1.A1");
    add(
        "snubber at contact " + i,
        off,
        List.of("V1 s 0 DC " + volts, "R2 s x 100", "C2 x a " + Deck.number(farads) + " IC=0"));
  }

  /** The second coil keeps the resistor busy, so that the first one's current takes longer. */
  private void twoCoilsOnOneDiodeAndResistor(int i) {
    int second = 300 + random.nextInt(900);
    double slower = (15 + random.nextInt(20)) / 1000.0;
    TurnOff off =
        study(
            relay("K2", second, slower)
                + "  V1: {is: diode}\n  R1: {is: resistor, resistance: 200 Ω}\n",
            "K2.A1 to K1.A1",
            "K2.A2 to K1.A2",
            "V1.K to K1.A1",
            "V1.A to R1.1",
            "R1.2 to K1.A2");
    assertEquals(TurnOff.Method.INTEGRATED, off.method());
    List<String> across = new ArrayList<>(clamp("y", "a", DIODE));
    across.add("R3 y 0 200");
    across.add(
        "L2 a m2 " + Deck.number(slower * second) + " IC=" + Deck.number((double) volts / second));
    across.add("R4 m2 0 " + second);
    add("two coils " + i, off, across);
  }

  /** While the current still flows, a diode and whatever stands behind it is a fixed voltage. */
  private static List<String> clamp(String from, String to, double volts) {
    return List.of("Vk " + from + " " + to + " DC " + Deck.number(volts));
  }

  private static String snubber(double farads) {
    return String.format(
        Locale.ROOT,
        "  Z1: {is: snubber, resistance: 100 Ω, capacitance: %.1f µF}\n",
        farads * 1e6);
  }

  private String relay(String name, double ohms, double tau) {
    return String.format(
        Locale.ROOT,
        "  %s: {is: relay, coil: {pins: [A1, A2], voltage: %d V DC, resistance: %.0f Ω,"
            + " time-constant: %.0f ms, release: 10 %%%s}, contacts: [{pins: [11, 14], form: NO}]}\n",
        name,
        volts,
        ohms,
        tau * 1000,
        coilKeys);
  }

  private TurnOff study(String more, String... wires) {
    StringBuilder body =
        new StringBuilder(
            "parts:\n" + Studies.SUPPLY.replace("24 V", volts + " V") + relay("K1", ohms, tau));
    body.append("  S1: {is: switch, form: NO, poles: 1}\n").append(more).append("wires:\n");
    List<String> all = new ArrayList<>(List.of("G1.P to S1.1", "S1.2 to K1.A1", "K1.A2 to G1.M"));
    all.addAll(List.of(wires));
    for (String wire : all) {
      String ends = "from: " + wire.replace(" to ", ", to: ");
      body.append("  - {%s, length: 0.01 m, size: 10 mm²}\n".formatted(ends));
    }
    return Studies.study(body.toString()).turnOff("K1").orElseThrow();
  }

  private void add(String name, TurnOff off, List<String> across) {
    List<String> elements = new ArrayList<>();
    double amps = volts / ohms;
    elements.add("L1 a mid " + Deck.number(tau * ohms) + " IC=" + Deck.number(amps));
    elements.add("R1 mid 0 " + Deck.number(ohms));
    elements.addAll(across);
    double stop = Math.max(1.5 * off.seconds(), tau / 20);
    Map<String, String> measures = new LinkedHashMap<>();
    measures.put("t", "when i(l1)=" + Deck.number(0.1 * amps) + " fall=1");
    measures.put("low", "min v(a)");
    measures.put("high", "max v(a)");
    decks.add(Deck.transientFrom(name, elements, stop / 20000, stop, measures));
    found.put(name, off);
  }
}
