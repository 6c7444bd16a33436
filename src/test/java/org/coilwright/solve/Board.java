package org.coilwright.solve;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.Reading;

/**
 * A distribution board of any size, as a file would have it: heating circuits, each with its
 * breaker, switch or controller output, relay, thermostat, cut-out, closed vessel and protective
 * conductor. Sound: no rule has anything to say against it.
 *
 * @param circuits how many
 * @param behindOne how many of them lie behind one residual-current device
 * @param lines 1 for elements of 230 V that the relay switches, 3 for elements in star that a
 *     contactor switches, whose coil the relay switches
 * @param outputs true where controllers drive the relays, one for every four; else switches do
 */
public record Board(int circuits, int behindOne, int lines, boolean outputs) {
  private static final int TO_A_SUPPLY = 50;
  private static final int TO_A_CONTROLLER = 4;

  private static final String SINGLE =
      """
      coilwright: 1
      circuit: {title: board}
      site:
        mains: {phases: 1, voltage: 230 V ± 10 %, frequency: 50 Hz, earthing: TN-S, fault-current: 3 kA, loop-impedance: 0.3 Ω}
        enclosure-air: 5..40 °C
        altitude: 200 m
        practice: iec
      types:
        residual: {is: rcd, kind: A, trip: 30 mA, rating: RATED, poles: 1+N}
        breaker: {is: breaker, curve: B, rating: 10 A, poles: 1+N}
        limit: {is: cut-out, opens-at: 80 °C ± 5 K, reset: manual, poles: 1, ratings: {AC-1: 16 A at 250 V}}
        vessel: {is: heater, power: 1 kW, voltage: 230 V, connection: single, kind: metal-sheathed, vessel: {litres: 100, closed: true, relief: 90..95 °C}}
      """;

  private static final String THREE =
      """
      coilwright: 1
      circuit: {title: board}
      site:
        mains: {phases: 3, voltage: 400 V ± 10 %, frequency: 50 Hz, earthing: TN-S, fault-current: 3 kA, loop-impedance: 0.3 Ω}
        enclosure-air: 5..40 °C
        altitude: 200 m
        practice: iec
      types:
        residual: {is: rcd, kind: A, trip: 30 mA, rating: RATED, poles: 3+N}
        breaker: {is: breaker, curve: B, rating: 16 A, poles: 3}
        control: {is: breaker, curve: B, rating: 6 A, poles: 1+N}
        contactor:
          is: contactor
          coil: {pins: [A1, A2], voltage: 230 V AC, range: 85..110 %, release: 20 %, pick-up: 30 VA, hold: 4.5 VA, hold-power: 1.5 W}
          poles: [[1, 2], [3, 4], [5, 6]]
          ratings: {AC-1: 25 A at 400 V}
          insulation: {coil-to-contacts: reinforced}
          mounting: spaced
          life: {AC-1: 150000 at 25 A, mechanical: 5000000}
          backup: {breaker: 25 A, fuse: 35 A}
        limit: {is: cut-out, opens-at: 80 °C ± 5 K, reset: manual, poles: 3, ratings: {AC-1: 20 A at 400 V}}
        vessel: {is: heater, power: 6 kW, voltage: 400 V, connection: star, kind: metal-sheathed, vessel: {litres: 300, closed: true, relief: 90..95 °C}}
      """;

  private static final String BOTH =
      """
        relay:
          is: relay
          coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 1150 Ω ± 10 %, range: 80..110 %, release: 10 %, polarity: A1 plus, suppression: diode, time-constant: 7 ms}
          contacts: [{common: 11, NC: 12, NO: 14, ratings: {AC-1: 16 A at 250 V, AC-15: 1.5 A at 250 V}, least-load: 10 mA at 12 V}]
          insulation: {coil-to-contacts: reinforced, test: 4 kV, clearance: 8 mm, creepage: 8 mm}
          life: {AC-1: 60000 at 16 A, mechanical: 10000000}
        stat: {is: thermostat, form: NC, opens-at: 60 °C ± 3 K, poles: 1, ratings: {AC-1: 10 A at 250 V, AC-15: 1.5 A at 250 V}, least-load: 10 mA at 12 V}
        control-contact: {is: switch, form: NO, poles: 1, ratings: {DC-13: 0.3 A at 30 V}, least-load: 1 mA at 5 V}
        brain:
          is: controller
          outputs:
            a: {pins: [31, 32], form: NO, ratings: {DC-13: 0.3 A at 30 V}, least-load: 1 mA at 5 V}
            b: {pins: [33, 34], form: NO, ratings: {DC-13: 0.3 A at 30 V}, least-load: 1 mA at 5 V}
            c: {pins: [35, 36], form: NO, ratings: {DC-13: 0.3 A at 30 V}, least-load: 1 mA at 5 V}
            d: {pins: [37, 38], form: NO, ratings: {DC-13: 0.3 A at 30 V}, least-load: 1 mA at 5 V}
        low: {is: dc-supply, output: {plus: P, minus: M, voltage: 24 V DC ± 5 %, isolation: SELV, limit: 3 A, ripple: 3 %}}
      """;

  /** The file. */
  public String text() {
    StringBuilder text = new StringBuilder();
    int residual = lines == 1 ? behindOne <= 4 ? 40 : 80 : behindOne <= 2 ? 40 : 125;
    text.append((lines == 1 ? SINGLE : THREE).replace("RATED", residual + " A")).append(BOTH);
    StringBuilder runs = new StringBuilder();
    StringBuilder wires = new StringBuilder();
    text.append("parts:\n");
    part(text, "G0", "is: mains");
    for (int i = 1; i <= circuits; i++) {
      circuit(i, text, runs, wires);
    }
    text.append("runs:\n").append(runs).append("wires:\n").append(wires).append("accepted:\n");
    for (int supply = 1; supply <= (circuits - 1) / TO_A_SUPPLY + 1; supply++) {
      for (String pin : List.of("P", "M")) {
        text.append(
            "  - {rule: wiring.crowded-terminal, at: P%d.%s, by: panel builder, because: it is a bar with a screw for each}\n"
                .formatted(supply, pin));
      }
    }
    return text.toString();
  }

  private void circuit(int i, StringBuilder parts, StringBuilder runs, StringBuilder wires) {
    boolean first = (i - 1) % behindOne == 0;
    int residual = (i - 1) / behindOne + 1;
    int supply = (i - 1) / TO_A_SUPPLY + 1;
    run(runs, "WB" + i, "length: 0.5 m, size: 2.5 mm², insulation: 750 V, installed: panel");
    run(runs, "WL" + i, "length: 8 m, size: 2.5 mm², insulation: 750 V, installed: B2");
    if (lines == 3) {
      run(runs, "WD" + i, "length: 1 m, size: 1.5 mm², insulation: 750 V, installed: panel");
    }
    run(runs, "WC" + i, "length: 12 m, size: 0.75 mm², insulation: 300 V, installed: B2");
    if ((i - 1) % TO_A_SUPPLY == 0) {
      part(parts, "P" + supply, "type: low");
    }
    if (first) {
      part(parts, "R" + residual, "type: residual");
      run(
          runs,
          "WI" + residual,
          "length: 1 m, size: %s, insulation: 750 V, installed: panel".formatted(size()));
      if (lines == 1) {
        wire(wires, "G0.L to R%1$d.1 in WI%1$d".formatted(residual));
      } else {
        wire(wires, "G0.L1 to R%1$d.1 in WI%1$d".formatted(residual));
        wire(wires, "G0.L2 to R%1$d.3 in WI%1$d".formatted(residual));
        wire(wires, "G0.L3 to R%1$d.5 in WI%1$d".formatted(residual));
      }
      wire(wires, "G0.N to R%1$d.N1 in WI%1$d".formatted(residual));
    }
    part(parts, "F" + i, "type: breaker");
    part(parts, "K" + i, "type: relay");
    part(parts, "B" + i, "type: stat");
    part(parts, "T" + i, "type: limit");
    part(parts, "E" + i, "type: vessel");
    drive(i, supply, parts, wires);
    wire(wires, "K%1$d.A2 to P%2$d.M in WC%1$d".formatted(i, supply));
    if (lines == 1) {
      comb(wires, i, residual, "2", "F", "1");
      comb(wires, i, residual, "N2", "F", "N1");
      wire(wires, "F%1$d.2 to K%1$d.11 in WB%1$d".formatted(i));
      wire(wires, "K%1$d.14 to B%1$d.1 in WB%1$d".formatted(i));
      wire(wires, "B%1$d.2 to T%1$d.1 in WL%1$d".formatted(i));
      wire(wires, "T%1$d.2 to E%1$d.1 in WL%1$d".formatted(i));
      wire(wires, "E%1$d.2 to F%1$d.N2 in WL%1$d".formatted(i));
    } else {
      threeLines(i, residual, parts, wires);
    }
    wire(wires, "G0.PE to E%1$d.PE in WL%1$d".formatted(i));
  }

  private String size() {
    return behindOne <= 2 ? "10 mm²" : lines == 1 ? "16 mm²" : "50 mm²";
  }

  /** From the residual-current device to the first circuit, and on from one to the next. */
  private void comb(
      StringBuilder wires, int i, int residual, String from, String device, String to) {
    boolean first = (i - 1) % behindOne == 0;
    String start =
        first ? "R%d.%s".formatted(residual, from) : "%s%d.%s".formatted(device, i - 1, to);
    wires.append(
        "  - {from: %s, to: %s%d.%s, length: 0.1 m, size: %s, insulation: 750 V}\n"
            .formatted(start, device, i, to, size()));
  }

  private void drive(int i, int supply, StringBuilder parts, StringBuilder wires) {
    if (!outputs) {
      part(parts, "S" + i, "type: control-contact");
      wire(wires, "P%2$d.P to S%1$d.1 in WC%1$d".formatted(i, supply));
      wire(wires, "S%1$d.2 to K%1$d.A1 in WC%1$d".formatted(i));
      return;
    }
    int controller = (i - 1) / TO_A_CONTROLLER + 1;
    int place = (i - 1) % TO_A_CONTROLLER;
    if (place == 0) {
      part(parts, "U" + controller, "type: brain");
    }
    wire(wires, "P%2$d.P to U%3$d.%4$d in WC%1$d".formatted(i, supply, controller, 31 + 2 * place));
    wire(wires, "U%2$d.%3$d to K%1$d.A1 in WC%1$d".formatted(i, controller, 32 + 2 * place));
  }

  private void threeLines(int i, int residual, StringBuilder parts, StringBuilder wires) {
    part(parts, "C" + i, "type: control");
    part(parts, "Q" + i, "type: contactor");
    for (int pole = 1; pole <= 5; pole += 2) {
      comb(wires, i, residual, Integer.toString(pole + 1), "F", Integer.toString(pole));
      wire(wires, "F%1$d.%2$d to Q%1$d.%3$d in WB%1$d".formatted(i, pole + 1, pole));
      wire(wires, "Q%1$d.%2$d to T%1$d.%3$d in WL%1$d".formatted(i, pole + 1, pole));
      wire(wires, "T%1$d.%2$d to E%1$d.%3$d in WL%1$d".formatted(i, pole + 1, (pole + 1) / 2));
    }
    comb(wires, i, residual, "2", "C", "1");
    comb(wires, i, residual, "N2", "C", "N1");
    wire(wires, "C%1$d.2 to K%1$d.11 in WD%1$d".formatted(i));
    wire(wires, "K%1$d.14 to B%1$d.1 in WD%1$d".formatted(i));
    wire(wires, "B%1$d.2 to Q%1$d.A1 in WD%1$d".formatted(i));
    wire(wires, "Q%1$d.A2 to C%1$d.N2 in WD%1$d".formatted(i));
  }

  private static void run(StringBuilder text, String name, String what) {
    part(text, name, what);
  }

  private static void part(StringBuilder text, String name, String what) {
    text.append("  ").append(name).append(": {").append(what).append("}\n");
  }

  private static void wire(StringBuilder text, String wire) {
    text.append("  - ").append(wire).append('\n');
  }

  /** The bytes of the file. */
  public byte[] bytes() {
    return text().getBytes(StandardCharsets.UTF_8);
  }

  /** What was read; a file that cannot be read fails the test with what is wrong. */
  public Netlist netlist() {
    if (NetlistReader.read("board.yaml", bytes()) instanceof Reading.Read read) {
      return read.netlist();
    }
    throw new AssertionError(NetlistReader.read("board.yaml", bytes()).toString());
  }
}
