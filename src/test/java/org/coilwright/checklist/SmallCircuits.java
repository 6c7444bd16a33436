package org.coilwright.checklist;

import java.util.Map;
import java.util.TreeMap;

/** Circuits small enough to be followed with a pencil. */
final class SmallCircuits {
  private static final String HEAD =
      """
      coilwright: 1
      circuit: {title: small}
      site:
        mains: {phases: 1, voltage: 230 V ± 10 %, frequency: 50 Hz, earthing: TN-S, fault-current: 1 kA, loop-impedance: 0.5 Ω}
        enclosure-air: 5..40 °C
        practice: iec
      """;

  /** A coil behind a switch, a diode across it. */
  private static final String COIL =
      HEAD
          + """
          parts:
            G1: {is: dc-supply, output: {plus: P, minus: M, voltage: 24 V DC ± 5 %, isolation: SELV}}
            S1: {is: switch, form: NO}
            K1: {is: relay, coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 600 Ω ± 10 %, range: 80..110 %}, contacts: [{common: 11, NC: 12, NO: 14}]}
            V1: {is: diode, reverse-voltage: 100 V, current: 1 A}
          wires:
            - {from: G1.P, to: S1.1, length: 1 m, size: 0.75 mm²}
            - {from: S1.2, to: K1.A1, length: 3 m, size: 0.75 mm²}
            - {from: K1.A2, to: G1.M, length: 3 m, size: 0.75 mm²}
            - {from: V1.K, to: K1.A1, length: 0.1 m, size: 0.75 mm²}
            - {from: V1.A, to: K1.A2, length: 0.1 m, size: 0.75 mm²}
          """;

  /** A heater behind a breaker, a thermostat and a cut-out. */
  private static final String HEATER =
      HEAD
          + """
          parts:
            G0: {is: mains}
            F1: {is: breaker, curve: B, rating: 10 A, poles: 1+N}
            B1: {is: thermostat, form: NC, opens-at: 60 °C, poles: 1}
            F2: {is: cut-out, opens-at: 90 °C, reset: manual, poles: 2}
            E1: {is: heater, power: 1 kW, voltage: 230 V, connection: single}
          wires:
            - {from: G0.L, to: F1.1, length: 1 m, size: 1.5 mm²}
            - {from: G0.N, to: F1.N1, length: 1 m, size: 1.5 mm²}
            - {from: F1.2, to: B1.1, length: 4 m, size: 1.5 mm²}
            - {from: B1.2, to: F2.1, length: 1 m, size: 1.5 mm²}
            - {from: F2.2, to: E1.1, length: 1 m, size: 1.5 mm²}
            - {from: F1.N2, to: F2.3, length: 4 m, size: 1.5 mm²}
            - {from: F2.4, to: E1.2, length: 1 m, size: 1.5 mm²}
            - {from: G0.PE, to: E1.PE, length: 5 m, size: 1.5 mm²}
          """;

  /** Two lamps and a resistor on a strip of clamps, in parallel and in series. */
  private static final String STRIP =
      HEAD
          + """
          parts:
            G1: {is: dc-supply, output: {plus: P, minus: M, voltage: 24 V DC ± 5 %, isolation: SELV}}
            X1: {is: terminals, count: 5, bridged: [[4, 5]]}
            R1: {is: resistor, resistance: 220 Ω ± 5 %}
            R2: {is: resistor, resistance: 100 Ω ± 5 %}
            R3: {is: resistor, resistance: 470 Ω ± 5 %}
          wires:
            - {from: G1.P, to: X1.1, length: 2 m, size: 0.5 mm²}
            - {from: X1.1, to: R1.1, length: 2 m, size: 0.5 mm²}
            - {from: R1.2, to: X1.2, length: 2 m, size: 0.5 mm²}
            - {from: X1.2, to: R2.1, length: 2 m, size: 0.5 mm²}
            - {from: R2.2, to: X1.4, length: 2 m, size: 0.5 mm²}
            - {from: R3.1, to: X1.1, length: 2 m, size: 0.5 mm²}
            - {from: R3.2, to: X1.5, length: 2 m, size: 0.5 mm²}
            - {from: X1.4, to: G1.M, length: 2 m, size: 0.5 mm²}
          """;

  /** By name. */
  static final Map<String, String> ALL =
      new TreeMap<>(Map.of("coil", COIL, "heater", HEATER, "strip", STRIP));

  private SmallCircuits() {}
}
