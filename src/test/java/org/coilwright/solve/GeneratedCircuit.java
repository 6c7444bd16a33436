package org.coilwright.solve;

import java.util.List;
import java.util.Locale;
import java.util.Random;

/**
 * Circuits that no one would build: parts thrown between the clamps of a strip. They meet every
 * kind of element in every company.
 */
final class GeneratedCircuit {
  private final Random random;
  private final StringBuilder parts = new StringBuilder();
  private final StringBuilder wires = new StringBuilder();
  private final int clamps;

  private GeneratedCircuit(Random random, int clamps) {
    this.random = random;
    this.clamps = clamps;
    parts.append("  X1: {is: terminals, count: ").append(clamps).append("}\n");
  }

  static String direct(Random random) {
    return direct(random, 0);
  }

  /** With varistors that may conduct all the time. */
  static String clamped(Random random) {
    return direct(random, 1 + random.nextInt(3));
  }

  private static String direct(Random random, int varistors) {
    GeneratedCircuit circuit = new GeneratedCircuit(random, 4 + random.nextInt(7));
    circuit.supply("G1", random.nextInt(3) == 0 ? ", limit: 80 mA" : "");
    if (random.nextInt(3) == 0) {
      circuit.supply("G2", "");
    }
    for (int i = 0; i < 4 + random.nextInt(6); i++) {
      circuit.two("R" + i, "resistor", "resistance: " + circuit.ohms());
    }
    for (int i = 0; i < 1 + random.nextInt(3); i++) {
      circuit.relay(
          "K" + i, circuit.pick("polarity: none", "suppression: diode, polarity: A1 plus"));
    }
    for (int i = 0; i < random.nextInt(4); i++) {
      circuit.parts("V" + i, "diode", "reverse-voltage: 400 V", "A", "K");
    }
    for (int i = 0; i < 1 + random.nextInt(3); i++) {
      circuit.two("S" + i, "switch", "poles: 1, form: " + circuit.pick("NO", "NC"));
    }
    circuit.two("H1", "lamp", "voltage: 24 V, current: 20 mA");
    for (int i = 0; i < varistors; i++) {
      // behind a resistor of its own: across a supply it is a short-circuit and tells nothing
      circuit.behindResistor(
          "U" + i, "varistor, clamping-voltage: " + circuit.pick("3", "6", "10") + " V");
    }
    return circuit.text();
  }

  static String alternating(Random random) {
    GeneratedCircuit circuit = new GeneratedCircuit(random, 4 + random.nextInt(6));
    circuit.parts("G0", "mains", "label: board", "L", "N");
    circuit.loads(2 + random.nextInt(4));
    circuit.others();
    return circuit.text();
  }

  static String threePhase(Random random) {
    GeneratedCircuit circuit = new GeneratedCircuit(random, 5 + random.nextInt(7));
    circuit.parts("G0", "mains", "label: board", "L1", "L2", "L3", "N");
    for (int i = 0; i < 1 + random.nextInt(2); i++) {
      String connection = circuit.pick("star", "delta", "star-with-neutral");
      String body = "power: 6 kW, voltage: 400 V, connection: " + connection;
      if (connection.equals("star-with-neutral")) {
        circuit.parts("E9" + i, "heater", body, "1", "2", "3", "N");
      } else {
        circuit.parts("E9" + i, "heater", body, "1", "2", "3");
      }
    }
    circuit.loads(1 + random.nextInt(3));
    circuit.others();
    return circuit.text();
  }

  private void loads(int count) {
    for (int i = 0; i < count; i++) {
      two(
          "E" + i,
          "heater",
          "power: " + (100 + random.nextInt(3000)) + " W, voltage: 230 V, connection: single");
    }
    two("M1", "motor", "power: 550 W, voltage: 230 V, power-factor: 0.7");
  }

  private void others() {
    for (int i = 0; i < 1 + random.nextInt(2); i++) {
      contactor("Q" + i);
    }
    for (int i = 0; i < random.nextInt(3); i++) {
      two("Z" + i, "snubber", "resistance: 100 Ω, capacitance: " + pick("0.1 µF", "0.47 µF"));
    }
    for (int i = 0; i < 1 + random.nextInt(3); i++) {
      two("S" + i, "switch", "poles: 1, form: " + pick("NO", "NC"));
    }
    two("R1", "resistor", "resistance: " + ohms());
  }

  private void supply(String name, String limit) {
    parts(
        name,
        "dc-supply",
        "output: {plus: P, minus: M, voltage: "
            + pick("12", "24", "48")
            + " V DC ± 5 %"
            + limit
            + "}",
        "P",
        "M");
  }

  private void relay(String name, String more) {
    String coil =
        "coil: {pins: [A1, A2], voltage: %s V DC, resistance: %s ± 10 %%, %s}"
            .formatted(pick("12", "24"), pick("150 Ω", "600 Ω", "1150 Ω"), more);
    parts(
        name,
        "relay",
        coil + ", contacts: [{common: 11, NC: 12, NO: 14}]",
        "A1",
        "A2",
        "11",
        "12",
        "14");
  }

  private void contactor(String name) {
    String coil =
        "coil: {pins: [A1, A2], voltage: 230 V AC, pick-up: 30 VA, hold: 4.5 VA, hold-power: 1.5 W}";
    parts(name, "contactor", coil + ", poles: [[1, 2]]", "A1", "A2", "1", "2");
  }

  private void behindResistor(String name, String is) {
    parts.append("  %s: {is: %s}\n".formatted(name, is));
    parts.append("  R%s: {is: resistor, resistance: %s}\n".formatted(name, pick("22 Ω", "680 Ω")));
    wires.append(
        "  - {from: %s.1, to: R%s.1, length: 1 m, size: 0.75 mm²}\n".formatted(name, name));
    for (String pin : List.of(name + ".2", "R" + name + ".2")) {
      wires.append(
          "  - {from: %s, to: X1.%d, length: 2 m, size: 0.75 mm²}\n"
              .formatted(pin, 1 + random.nextInt(clamps)));
    }
  }

  private void two(String name, String is, String body) {
    parts(name, is, body, "1", "2");
  }

  private void parts(String name, String is, String body, String... pins) {
    parts.append("  %s: {is: %s, %s}\n".formatted(name, is, body));
    for (String pin : pins) {
      wires.append(
          String.format(
              Locale.ROOT,
              "  - {from: %s.%s, to: X1.%d, length: %.2f m, size: %s mm²}\n",
              name,
              pin,
              1 + random.nextInt(clamps),
              0.1 + 30 * random.nextDouble() * random.nextDouble(),
              pick("0.5", "0.75", "1.5", "2.5", "6")));
    }
  }

  private String ohms() {
    return pick("1 Ω", "22 Ω", "100 Ω", "680 Ω", "4.7 kΩ", "100 kΩ");
  }

  private String pick(String... choices) {
    return List.of(choices).get(random.nextInt(choices.length));
  }

  private String text() {
    return "parts:\n" + parts + "wires:\n" + wires;
  }
}
