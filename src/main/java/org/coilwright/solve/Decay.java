package org.coilwright.solve;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.coilwright.circuit.Branch;
import org.coilwright.netlist.Part;

/**
 * A zone after a contact has opened, with its coils as inductances and its snubbers as capacitors.
 * What flows in the inductances and lies on the capacitors is given; what everything else does
 * follows, and with it how the former change.
 */
final class Decay {
  /**
   * A current that keeps going is a voltage behind an impedance that nothing in a circuit matches.
   */
  private static final double FORCED = 1e10;

  /** Snubbers without a resistor: a milliohm, so that a capacitor is never a short-circuit. */
  private static final double LEAST_SERIES = 1e-3;

  private final Zone zone;
  private final Settings settings;
  private final Predicate<Element> closed;
  private final List<Gates.Gate> gates = new ArrayList<>();
  final List<Element> coils = new ArrayList<>();
  final List<Double> henries = new ArrayList<>();
  final List<Double> ohms = new ArrayList<>();
  final List<Element> capacitors = new ArrayList<>();
  final List<Double> farads = new ArrayList<>();
  private BitSet guess = new BitSet();

  /**
   * A zone whose contacts stand as {@code closed} says.
   *
   * @param coilsOf models by relay
   */
  Decay(Zone zone, Settings settings, Predicate<Element> closed, Map<String, CoilModel> coilsOf) {
    this.zone = zone;
    this.settings = settings;
    this.closed = closed;
    for (Element element : zone.elements) {
      if (element.kind() == Element.Kind.DIODE) {
        gate(element.number(), element.from(), element.to(), ZoneSolver.FORWARD);
      } else if (element.kind() == Element.Kind.COIL) {
        inductance(element, coilsOf);
      } else if (element.branch() instanceof Branch.Passive passive) {
        passive(element, passive.spec());
      }
    }
  }

  private void gate(int mark, int from, int to, double forward) {
    gates.add(new Gates.Gate(mark, from, to, forward));
  }

  private void inductance(Element element, Map<String, CoilModel> coilsOf) {
    CoilModel model = coilsOf.get(element.branch().part());
    double resistance =
        element.on().at(Level.NOMINAL, true, false).map(Impedance::re).orElse(Values.METER);
    double tau =
        model == null ? 0 : model.spec.timeConstant().map(t -> t.value().nominal()).orElse(0.0);
    if (model != null && model.zenerVolts() > 0) {
      // conducts for the current that the coil keeps going, whichever way it was fed
      double clamp = model.zenerVolts() + ZoneSolver.FORWARD;
      int mark = zone.elements.size() + 2 * element.number();
      if (model.polarity >= 0) {
        gate(mark, element.to(), element.from(), clamp);
      }
      if (model.polarity <= 0) {
        gate(mark + 1, element.from(), element.to(), clamp);
      }
    }
    if (tau > 0 && resistance < Values.METER) {
      coils.add(element);
      henries.add(tau * resistance);
      ohms.add(resistance);
    }
  }

  /** A varistor is two one-way elements, one for each direction; marks beyond the zone's own. */
  private void passive(Element element, Part part) {
    if (part instanceof Part.Varistor varistor && varistor.clampingVoltage().isPresent()) {
      double clamp = varistor.clampingVoltage().get().value().nominal();
      gate(zone.elements.size() + 2 * element.number(), element.from(), element.to(), clamp);
      gate(zone.elements.size() + 2 * element.number() + 1, element.to(), element.from(), clamp);
    } else if (part instanceof Part.Snubber snubber && snubber.capacitance().isPresent()) {
      double capacitance = snubber.capacitance().get().value().nominal();
      if (capacitance > 0) {
        capacitors.add(element);
        farads.add(capacitance);
      }
    }
  }

  /** The whole zone for the state given: coil currents first, then capacitor voltages. */
  Network.Flow flow(double[] state) {
    Gates.Found found =
        Gates.find(gates, guess, open -> network(state, open).solve(3 * zone.elements.size()));
    guess = found.open();
    return found.flow();
  }

  /** Which gates conducted when last asked: between two changes of this all is exponential. */
  BitSet gatesOpen() {
    return (BitSet) guess.clone();
  }

  /** How fast the state changes. */
  double[] slope(double[] state) {
    Network.Flow flow = flow(state);
    double[] slope = new double[state.length];
    for (int c = 0; c < coils.size(); c++) {
      slope[c] = (volts(flow, coils.get(c)) - ohms.get(c) * state[c]) / henries.get(c);
    }
    for (int c = 0; c < capacitors.size(); c++) {
      slope[coils.size() + c] = flow.iRe[capacitors.get(c).number()] / farads.get(c);
    }
    return slope;
  }

  /** Volts across an element, its first node positive. */
  static double volts(Network.Flow flow, Element element) {
    return flow.vRe[element.from()] - flow.vRe[element.to()];
  }

  /** True if the coil's current finds a way in the rest of the zone. */
  boolean isTaken(double[] state, int coil) {
    double flows = flow(state).iRe[coils.get(coil).number()];
    return Math.abs(flows - state[coil]) <= 1e-3 * Math.abs(state[coil]);
  }

  private Network network(double[] state, BitSet open) {
    Network network = new Network(zone.nodes.size(), zone.elements.size() + gates.size());
    for (int n = 0; n < zone.nodes.size(); n++) {
      ZoneSolver.fix(network, zone, settings, Corner.NOMINAL, n, true);
    }
    for (Element element : zone.elements) {
      int coil = coils.indexOf(element);
      int capacitor = capacitors.indexOf(element);
      int number = element.number();
      if (coil >= 0) {
        Impedance forced = Impedance.ohms(FORCED);
        network.add(number, element.from(), element.to(), forced, state[coil] * FORCED, 0);
      } else if (capacitor >= 0) {
        double volts = state[coils.size() + capacitor];
        network.add(number, element.from(), element.to(), series(element), -volts, 0);
      } else {
        plain(network, element);
      }
    }
    for (int g = 0; g < gates.size(); g++) {
      if (open.get(g)) {
        Gates.Gate gate = gates.get(g);
        Impedance none = Impedance.ohms(LEAST_SERIES);
        network.add(gate.mark(), gate.from(), gate.to(), none, -gate.forward(), 0);
      }
    }
    return network;
  }

  private static Impedance series(Element snubber) {
    double resistance =
        snubber.branch() instanceof Branch.Passive passive
                && passive.spec() instanceof Part.Snubber part
            ? part.resistance().map(r -> r.value().nominal()).orElse(0.0)
            : 0;
    return Impedance.ohms(Math.max(resistance, LEAST_SERIES));
  }

  private void plain(Network network, Element element) {
    boolean on =
        switch (element.kind()) {
          case CONTACT -> closed.test(element);
          case SOURCE -> element.branch() instanceof Branch.Source s && settings.isLive(s);
          default -> element.variable() >= 0 && settings.is(element.variable());
        };
    double volts =
        element.branch() instanceof Branch.Source source ? settings.re(source, Corner.NOMINAL) : 0;
    if (element.kind() != Element.Kind.DIODE) {
      element
          .values(on)
          .at(Level.NOMINAL, true, false)
          .ifPresent(z -> network.add(element.number(), element.from(), element.to(), z, volts, 0));
    }
  }
}
