package org.coilwright.solve;

import java.util.Random;

/**
 * Circuits behind one residual-current device, as boards have them: each with its breaker, switch
 * and load, some with a relay on a common supply or a contactor on their own line, some that hold
 * themselves, some that act on another one.
 */
final class SharedFeed {
  private final Random random;
  private final boolean three;
  private final StringBuilder parts = new StringBuilder();
  private final StringBuilder wires = new StringBuilder();
  private final int circuits;
  private boolean supplied;

  private SharedFeed(Random random, boolean three, int circuits) {
    this.random = random;
    this.three = three;
    this.circuits = circuits;
  }

  /** A body for the bench; on three lines the circuits hang on any of them. */
  static String of(Random random, boolean three, int circuits) {
    SharedFeed feed = new SharedFeed(random, three, circuits);
    feed.write();
    return "parts:\n" + feed.parts + "wires:\n" + feed.wires;
  }

  private void write() {
    part("G0", "mains");
    part("R1", "rcd, kind: A, trip: 30 mA, rating: 40 A, poles: " + (three ? "3+N" : "1+N"));
    double length = random.nextInt(4) == 0 ? 4 + random.nextInt(20) : 1 + random.nextInt(3);
    String size = pick("2.5", "4", "6");
    for (int line = 1; line <= (three ? 3 : 1); line++) {
      wire("G0.L" + (three ? line : ""), "R1." + (2 * line - 1), length, size);
    }
    wire("G0.N", "R1.N1", length, size);
    for (int i = 1; i <= circuits; i++) {
      circuit(i);
    }
  }

  private void circuit(int i) {
    int line = three ? random.nextInt(3) : 0;
    part("F" + i, "breaker, curve: B, rating: 16 A, poles: 1+N");
    wire("R1." + (2 * line + 2), "F" + i + ".1", 0.5 + random.nextInt(3), "4");
    wire("R1.N2", "F" + i + ".N1", 0.5 + random.nextInt(3), "4");
    part("S" + i, "switch, poles: 1, form: " + pick("NO", "NC"));
    part(
        "E" + i,
        "heater, power: %d W, voltage: 230 V, connection: single"
            .formatted(200 + random.nextInt(2800)));
    wire("E" + i + ".2", "F" + i + ".N2", 4, "1.5");
    String first = "F" + i + ".2";
    if (random.nextInt(2) == 0) {
      part("T" + i, "thermostat, opens-at: 60 °C, poles: 1");
      wire(first, "T" + i + ".1", 3, "1.5");
      first = "T" + i + ".2";
    }
    switch (random.nextInt(3)) {
      case 0 -> {
        wire(first, "S" + i + ".1", 3, "1.5");
        wire("S" + i + ".2", "E" + i + ".1", 3, "1.5");
      }
      case 1 -> relay(i, first);
      default -> contactor(i, first);
    }
  }

  private void relay(int i, String fed) {
    if (!supplied) {
      supplied = true;
      part(
          "G1",
          "dc-supply, output: {plus: P, minus: M, voltage: 24 V DC ± 5 %, isolation: SELV"
              + pick("", ", limit: 2 A", ", limit: 90 mA")
              + "}");
    }
    part(
        "K" + i,
        "relay, coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 650 Ω ± 10 %, range: 80..110"
            + " %}, contacts: [{common: 11, NC: 12, NO: 14}]");
    wire("G1.P", "S" + i + ".1", 5 + random.nextInt(40), "0.5");
    wire("S" + i + ".2", "K" + i + ".A1", 5, "0.5");
    wire("K" + i + ".A2", "G1.M", 5, "0.5");
    wire(fed, "K" + i + ".11", 2, "1.5");
    wire("K" + i + pick(".14", ".14", ".12"), "E" + i + ".1", 5, "1.5");
  }

  private void contactor(int i, String fed) {
    part(
        "K" + i,
        "contactor, coil: {pins: [A1, A2], voltage: 230 V AC, pick-up: %d VA, hold: 5 VA, hold-power: 2 W, range: %s}, poles: [[1, 2], [3, 4]]"
            .formatted(10 + random.nextInt(60), pick("80..110 %", "85..110 %", "80..115 %")));
    wire(fed, "S" + i + ".1", 2, "1.5");
    wire("S" + i + ".2", "K" + i + ".A1", 2, "1.5");
    if (random.nextInt(3) == 0) {
      wire(fed, "K" + i + ".3", 1, "1.5");
      wire("K" + i + ".4", "K" + i + ".A1", 1, "1.5");
    } else if (i > 1 && random.nextInt(3) == 0) {
      // switches the one before as well
      wire("F" + (i - 1) + ".2", "K" + i + ".3", 3, "1.5");
      wire("K" + i + ".4", "E" + (i - 1) + ".1", 3, "1.5");
    }
    wire("K" + i + ".A2", "F" + i + ".N2", 2, "1.5");
    wire(fed, "K" + i + ".1", 2, "1.5");
    wire("K" + i + ".2", "E" + i + ".1", 6, "1.5");
  }

  private String pick(String... some) {
    return some[random.nextInt(some.length)];
  }

  private void part(String name, String is) {
    parts.append("  %s: {is: %s}\n".formatted(name, is));
  }

  private void wire(String from, String to, double metres, String size) {
    wires.append(
        "  - {from: %s, to: %s, length: %s m, size: %s mm²}\n".formatted(from, to, metres, size));
  }
}
