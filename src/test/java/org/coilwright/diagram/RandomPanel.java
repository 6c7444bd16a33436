package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** Netlists that somebody could have typed, with every kind of part and some wires anywhere. */
final class RandomPanel {
  private final Random random;
  private final StringBuilder parts = new StringBuilder();
  private final List<String> wires = new ArrayList<>();
  private final List<String> pins = new ArrayList<>();

  private RandomPanel(long number) {
    this.random = new Random(number);
  }

  static String of(long number) {
    RandomPanel panel = new RandomPanel(number);
    panel.build();
    StringBuilder text = new StringBuilder();
    text.append("coilwright: 1\ncircuit: {title: Generated ≤ Ω, reference: R-").append(number);
    text.append("}\nsite: {mains: {phases: 3, voltage: 400 V}, practice: iec}\nparts:\n");
    text.append(panel.parts).append("runs:\n  W1: {length: 5 m, size: 1.5 mm²}\nwires:\n");
    panel.wires.forEach(w -> text.append("  - ").append(w).append('\n'));
    return text.toString();
  }

  private void part(String name, String body, String... itsPins) {
    parts.append("  ").append(name).append(": {").append(body).append("}\n");
    for (String pin : itsPins) {
      pins.add(name + "." + pin);
    }
  }

  private void wire(String from, String to) {
    switch (random.nextInt(4)) {
      case 0 -> wires.add(from + " to " + to + " in W1");
      case 1 ->
          wires.add(
              "{from: "
                  + from
                  + ", to: "
                  + to
                  + ", size: 2.5 mm², length: 1 m, colour: green-yellow}");
      case 2 ->
          wires.add(
              "{from: "
                  + from
                  + ", to: "
                  + to
                  + ", run: W1, colour: brown, number: 10"
                  + wires.size()
                  + "}");
      default -> wires.add(from + " to " + to);
    }
  }

  private void build() {
    part("G0", "is: mains", "L1", "L2", "L3", "N", "PE");
    part(
        "F0",
        "is: rcd, kind: A, trip: 30 mA, rating: 40 A, poles: 3+N",
        "1",
        "3",
        "5",
        "N1",
        "2",
        "4",
        "6",
        "N2");
    wire("G0.L1", "F0.1");
    wire("G0.L2", "F0.3");
    wire("G0.L3", "F0.5");
    wire("G0.N", "F0.N1");
    part("F1", "is: breaker, curve: C, rating: 6 A, poles: 1+N", "1", "2", "N1", "N2");
    wire("F0.2", "F1.1");
    wire("F0.N2", "F1.N1");
    part(
        "U1",
        "is: controller, aux-supply: {plus: 22, minus: 21, voltage: 24 V DC, limit: 1 A, isolation: SELV}, "
            + "outputs: {heat: {pins: [11, 12], form: NO}, fan: {pins: [13, 14], form: NC}}, "
            + "reserved: {A: data bus A, B: data bus B}, mains: {pins: [1, 2]}",
        "22",
        "21",
        "11",
        "12",
        "13",
        "14",
        "1",
        "2");
    wire("F1.2", "U1.1");
    wire("F1.N2", "U1.2");
    wire("U1.22", "U1.11");
    int relays = 1 + random.nextInt(6);
    for (int i = 1; i <= relays; i++) {
      relay(i);
    }
    int contactors = random.nextInt(3);
    for (int i = 1; i <= contactors; i++) {
      contactor(i, relays);
    }
    odds();
    int anywhere = random.nextInt(8);
    for (int i = 0; i < anywhere; i++) {
      String from = pins.get(random.nextInt(pins.size()));
      String to = pins.get(random.nextInt(pins.size()));
      if (!from.equals(to)) {
        wire(from, to);
      }
    }
  }

  private void relay(int i) {
    String name = "K" + i;
    boolean change = random.nextBoolean();
    part(
        name,
        "is: relay, coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 900 Ω}, contacts: ["
            + (change ? "{common: 11, NC: 12, NO: 14}" : "{pins: [11, 14], form: NO}")
            + ", {pins: [21, 22], form: NC}]",
        "A1",
        "A2",
        "11",
        "14",
        "21",
        "22");
    wire(random.nextBoolean() ? "U1.12" : "U1.14", name + ".A1");
    wire(name + ".A2", i > 1 && random.nextBoolean() ? "K" + (i - 1) + ".A2" : "U1.21");
    if (random.nextBoolean()) {
      part("V" + i, "is: diode", "A", "K");
      wire("V" + i + ".K", name + ".A1");
      wire("V" + i + ".A", name + ".A2");
    }
  }

  private void contactor(int i, int relays) {
    String name = "Q" + i;
    part(
        name,
        "is: contactor, coil: {pins: [A1, A2], voltage: 230 V AC}, poles: [[1, 2], [3, 4], [5, 6]], "
            + "contacts: [{pins: [13, 14], form: NO}]",
        "A1",
        "A2",
        "1",
        "2",
        "3",
        "4",
        "5",
        "6",
        "13",
        "14");
    String driver = "K" + (1 + random.nextInt(relays));
    wire("F1.2", driver + ".11");
    if (random.nextBoolean()) {
      part("B" + i, "is: thermostat, form: NC, opens-at: 60 °C", "1", "2");
      wire(driver + ".14", "B" + i + ".1");
      wire("B" + i + ".2", name + ".A1");
    } else {
      wire(driver + ".14", name + ".A1");
    }
    wire(name + ".A2", "F1.N2");
    part(
        "E" + i,
        random.nextBoolean()
            ? "is: heater, power: 6 kW, voltage: 400 V, connection: "
                + (random.nextBoolean() ? "star" : "delta")
            : "is: motor, power: 2 kW, voltage: 400 V",
        "1",
        "2",
        "3",
        "PE");
    for (int pole = 0; pole < 3; pole++) {
      wire("F0." + (2 + 2 * pole), name + "." + (1 + 2 * pole));
      wire(name + "." + (2 + 2 * pole), "E" + i + "." + (1 + pole));
    }
    wire("G0.PE", "E" + i + ".PE");
  }

  private void odds() {
    if (random.nextBoolean()) {
      part("X1", "is: terminals, count: 4, bridged: [[1, 2]]", "1", "2", "3", "4");
      wire("U1.21", "X1.1");
      wire("X1.2", "K1.A2");
      wire("F1.N2", "X1.3");
    }
    if (random.nextBoolean()) {
      part("H1", "is: lamp, voltage: 24 V", "1", "2");
      wire("U1.12", "H1.1");
      wire("H1.2", "U1.21");
    }
    if (random.nextBoolean()) {
      part("F5", "is: fuse, rating: 2 A", "1", "2");
      part("R1", "is: snubber, resistance: 100 Ω, capacitance: 100 nF", "1", "2");
      wire("F1.2", "F5.1");
      wire("F5.2", "R1.1");
      wire("R1.2", "F1.N2");
    }
    if (random.nextBoolean()) {
      part("S1", "is: switch, poles: 2, form: NO", "1", "2", "3", "4");
      part("R2", "is: varistor, clamping-voltage: 60 V", "1", "2");
      wire("F0.2", "S1.1");
      wire("R2.1", "K1.A1");
      wire("R2.2", "K1.A2");
    }
    if (random.nextBoolean()) {
      part(
          "G2",
          "is: dc-supply, input: {pins: [L, N], voltage: 230 V}, output: {plus: P, minus: M, voltage: 12 V DC}",
          "L",
          "N",
          "P",
          "M");
      wire("F1.2", "G2.L");
      wire("F1.N2", "G2.N");
    }
  }
}
