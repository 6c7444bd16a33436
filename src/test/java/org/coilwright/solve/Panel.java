package org.coilwright.solve;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Bench;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;
import org.coilwright.netlist.Written;

/**
 * A panel of any number of relays, each with its switch and its heater, fifty to a supply, every
 * one wired to the supply's own terminals. Made from the records of one small netlist, because a
 * file of ten thousand relays is larger than the reader takes.
 */
public final class Panel {
  private static final int TO_A_SUPPLY = 50;

  private static final String UNIT =
      """
      parts:
        G0: {is: mains}
        G1: {is: dc-supply, output: {plus: P, minus: M, voltage: 24 V DC ± 5 %, isolation: SELV}}
        S1: {is: switch, form: NO, poles: 1}
        K1:
          is: relay
          coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 1150 Ω ± 10 %, range: 80..110 %}
          contacts: [{common: 11, NC: 12, NO: 14}]
        V1: {is: diode, reverse-voltage: 400 V}
        E1: {is: heater, power: 1 kW, voltage: 230 V, connection: single}
      runs:
        W1: {length: 12 m, size: 0.75 mm²}
        W2: {length: 9 m, size: 1.5 mm²}
      wires:
        - G1.P to S1.1 in W1
        - S1.2 to K1.A1 in W1
        - K1.A2 to G1.M in W1
        - V1.K to K1.A1
        - V1.A to K1.A2
        - G0.L to K1.11 in W2
        - K1.14 to E1.1 in W2
        - E1.2 to G0.N in W2
      """;

  private Panel() {}

  public static Netlist of(int relays) {
    Netlist unit = Bench.netlist("{phases: 1, voltage: 230 V ± 10 %, frequency: 50 Hz}", UNIT);
    Map<String, Part> parts = new LinkedHashMap<>();
    List<Wire> wires = new ArrayList<>();
    for (int i = 1; i <= relays; i++) {
      int relay = i;
      int supply = 1 + (i - 1) / TO_A_SUPPLY;
      unit.parts().values().forEach(p -> add(parts, p, name(p.name(), relay, supply)));
      unit.wires().forEach(w -> wires.add(renamed(w, relay, supply)));
    }
    return new Netlist(
        unit.text(),
        unit.about(),
        unit.site(),
        parts,
        unit.runs(),
        wires,
        Map.of(),
        Optional.empty(),
        List.of());
  }

  private static String name(String name, int relay, int supply) {
    return switch (name) {
      case "G0" -> name;
      case "G1" -> "G" + supply;
      default -> name.charAt(0) + Integer.toString(relay);
    };
  }

  private static Wire renamed(Wire wire, int relay, int supply) {
    return new Wire(
        wire.mark(),
        renamed(wire.from(), relay, supply),
        renamed(wire.to(), relay, supply),
        wire.run(),
        wire.size(),
        wire.length(),
        wire.insulation(),
        wire.colour(),
        wire.number(),
        wire.insulationMaterial(),
        wire.clampTemperature());
  }

  private static Written<Terminal> renamed(Written<Terminal> end, int relay, int supply) {
    Terminal terminal = new Terminal(name(end.value().part(), relay, supply), end.value().pin());
    return new Written<>(terminal, terminal.toString(), end.mark());
  }

  private static void add(Map<String, Part> parts, Part part, String name) {
    Part.Head head =
        new Part.Head(
            name,
            part.head().is(),
            part.head().mark(),
            part.head().label(),
            part.head().note(),
            part.head().asksRcd(),
            part.head().additional(),
            part.head().ratedAir());
    parts.put(name, copy(part, head));
  }

  /** A part is a record; its head is replaced and everything else kept, whatever it has. */
  private static Part copy(Part part, Part.Head head) {
    RecordComponent[] components = part.getClass().getRecordComponents();
    Class<?>[] types = new Class<?>[components.length];
    Object[] values = new Object[components.length];
    try {
      for (int i = 0; i < components.length; i++) {
        types[i] = components[i].getType();
        boolean isHead = components[i].getName().equals("head");
        values[i] = isHead ? head : components[i].getAccessor().invoke(part);
      }
      return (Part) part.getClass().getDeclaredConstructor(types).newInstance(values);
    } catch (ReflectiveOperationException e) {
      throw new IllegalStateException(e);
    }
  }
}
