package org.coilwright.sweep;

import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.coilwright.netlist.Terminal;
import org.coilwright.sweep.Element.Link;
import org.coilwright.sweep.Element.Output;
import org.coilwright.sweep.Element.Valve;

/** Volts and amperes of a circuit with its contacts in one position. */
final class Solver {
  private static final double VALVE_OHMS = 0.05;
  private static final double VALVE_VOLTS = 0.7;
  private static final double BLOCKED_OHMS = 1e6;
  private static final int MOST_ROUNDS = 12;

  private final Wiring wiring;
  private final int nodes;

  Solver(Wiring wiring, int nodes) {
    this.wiring = wiring;
    this.nodes = nodes;
  }

  /** The circuit with its contacts in one position, whether it is at rest or not. */
  Moment solved(
      Map<String, Boolean> closed,
      Set<String> in,
      Set<String> fed,
      boolean open,
      boolean restless) {
    Set<Valve> conducting = new HashSet<>();
    double[] dc = direct(closed, in, fed, conducting);
    for (int i = 0; i < MOST_ROUNDS && !wiring.valves.isEmpty(); i++) {
      Set<Valve> next = new HashSet<>();
      for (Valve valve : wiring.valves) {
        double volts = dc[valve.a()] - dc[valve.b()];
        if (conducting.contains(valve) ? volts > VALVE_VOLTS : volts > VALVE_VOLTS + 0.1) {
          next.add(valve);
        }
      }
      if (next.equals(conducting)) {
        break;
      }
      conducting = next;
      dc = direct(closed, in, fed, conducting);
    }
    Nodal ac = new Nodal(nodes);
    links(ac, closed, in, fed);
    wiring.uses.forEach(u -> ac.resistor(u.a(), u.b(), u.ohms()));
    wiring.valves.forEach(v -> ac.resistor(v.a(), v.b(), BLOCKED_OHMS));
    wiring.outputs.forEach(o -> ac.resistor(o.a(), o.b(), Moment.OUTPUT_OHMS));
    mains(ac, wiring.lineVolts);
    return new Moment(
        wiring,
        closed,
        in,
        fed,
        new Moment.Volts(ac.voltages(), dc),
        Set.copyOf(conducting),
        open,
        restless);
  }

  private void links(Nodal network, Map<String, Boolean> closed, Set<String> in, Set<String> fed) {
    for (Link link : wiring.links) {
      if (Positions.isClosed(link, closed, in, fed)) {
        network.resistor(link.a(), link.b(), Moment.LINK_OHMS);
      }
    }
  }

  private void mains(Nodal network, double volts) {
    for (Map.Entry<Terminal, Double> line : wiring.lines.entrySet()) {
      double angle = Math.toRadians(line.getValue());
      network.source(
          wiring.nets.of(line.getKey()),
          -1,
          Moment.SOURCE_OHMS,
          volts * Math.cos(angle),
          volts * Math.sin(angle));
    }
    wiring.mains.ifPresent(
        m -> {
          network.resistor(wiring.net(m, "N"), -1, Moment.SOURCE_OHMS);
          network.resistor(wiring.net(m, "PE"), -1, Moment.SOURCE_OHMS);
        });
  }

  private double[] direct(
      Map<String, Boolean> closed, Set<String> in, Set<String> fed, Set<Valve> conducting) {
    Nodal dc = new Nodal(nodes);
    links(dc, closed, in, fed);
    wiring.uses.forEach(u -> dc.resistor(u.a(), u.b(), u.directOhms()));
    conducting.forEach(v -> dc.source(v.a(), v.b(), VALVE_OHMS, VALVE_VOLTS, 0));
    for (Output output : wiring.outputs) {
      boolean gives = !output.fed() || fed.contains(output.part());
      dc.source(output.a(), output.b(), Moment.OUTPUT_OHMS, gives ? output.volts() : 0, 0);
    }
    mains(dc, 0);
    return dc.voltages()[0];
  }
}
