package org.coilwright.solve;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.solve.Reference.Leg;

/**
 * Solves a zone at one corner: once for direct and once for alternating current, as its island has
 * sources. Which diodes conduct is found by {@link Gates}. On alternating current a diode counts as
 * open; that it short-circuits every other half wave is found by its path.
 */
final class ZoneSolver {
  /** Forward voltage of a silicon diode, volts. */
  static final double FORWARD = 0.7;

  /** What is left of a varistor above its clamping voltage, as of a diode: a microohm. */
  private static final Impedance BEST = Impedance.ohms(1e-6);

  private final Zone zone;
  private final Corner corner;
  private final Settings settings;
  private final Predicate<Element> present;
  private final List<Element> diodes = new ArrayList<>();
  private final List<Varistor> varistors = new ArrayList<>();
  private final BitSet conducts = new BitSet();

  ZoneSolver(Zone zone, Corner corner, Settings settings, Predicate<Element> present) {
    this.zone = zone;
    this.corner = corner;
    this.settings = settings;
    this.present = present;
    for (Element element : zone.elements) {
      if (element.kind() == Element.Kind.DIODE && present.test(element)) {
        diodes.add(element);
      } else if (isClamp(element) && present.test(element)) {
        varistors.add(new Varistor(element, clamp(element)));
      } else {
        conducts.set(element.number(), element.kind() != Element.Kind.CONTACT || isClosed(element));
      }
    }
  }

  /** On direct current two one-way elements, one for each direction. */
  private record Varistor(Element element, double clamp) {}

  static boolean isClamp(Element element) {
    return element.kind() == Element.Kind.PASSIVE && clamp(element) > 0;
  }

  private static double clamp(Element element) {
    return element.branch() instanceof Branch.Passive passive
            && passive.spec() instanceof Part.Varistor varistor
        ? varistor.clampingVoltage().map(v -> v.value().nominal()).orElse(0.0)
        : 0;
  }

  private boolean isClosed(Element contact) {
    return contact.variable() < 0
        ? contact.conductsWhen()
        : settings.is(contact.variable()) == contact.conductsWhen();
  }

  ZoneFlow solve() {
    Network.Flow alternating =
        zone.reference.hasMains()
            ? network(false, new BitSet()).solve(zone.elements.size())
            : new Network.Flow(zone.nodes.size(), zone.elements.size());
    if (!zone.reference.hasDirect()) {
      Network.Flow none = new Network.Flow(zone.nodes.size(), zone.elements.size());
      return new ZoneFlow(zone, none, alternating, conducts, true);
    }
    List<Gates.Gate> gates = new ArrayList<>();
    diodes.forEach(d -> gates.add(new Gates.Gate(d.number(), d.from(), d.to(), FORWARD)));
    int mark = zone.elements.size();
    for (Varistor v : varistors) {
      gates.add(new Gates.Gate(mark++, v.element.from(), v.element.to(), v.clamp));
      gates.add(new Gates.Gate(mark++, v.element.to(), v.element.from(), v.clamp));
    }
    int marks = mark;
    Gates.Found found = Gates.find(gates, open -> network(true, open).solve(marks));
    for (int d = 0; d < diodes.size(); d++) {
      conducts.set(diodes.get(d).number(), found.open().get(d));
    }
    for (int v = 0; v < varistors.size(); v++) {
      int forward = zone.elements.size() + 2 * v;
      double[] amps = found.flow().iRe;
      amps[varistors.get(v).element.number()] = amps[forward] - amps[forward + 1];
    }
    return new ZoneFlow(zone, found.flow(), alternating, conducts, found.consistent());
  }

  private Network network(boolean direct, BitSet on) {
    Network network = new Network(zone.nodes.size(), zone.elements.size());
    for (int n = 0; n < zone.nodes.size(); n++) {
      fix(network, zone, settings, corner, n, direct);
    }
    int diode = 0;
    for (Element element : zone.elements) {
      if (!present.test(element)) {
        continue;
      }
      double re = 0;
      double im = 0;
      if (element.kind() == Element.Kind.DIODE) {
        if (!direct || !on.get(diode++)) {
          continue;
        }
        re = -FORWARD;
      }
      if (element.branch() instanceof Source source && source.isDirect() == direct) {
        re = settings.re(source, corner);
        im = settings.im(source, corner);
      }
      Optional<Impedance> z =
          valuesOf(element).at(corner.of(element.kind()), direct, corner.pulling());
      if (z.isPresent()) {
        network.add(element.number(), element.from(), element.to(), z.get(), re, im);
      }
    }
    for (int v = 0; direct && v < varistors.size(); v++) {
      Varistor varistor = varistors.get(v);
      Element element = varistor.element;
      int gate = diodes.size() + 2 * v;
      int mark = zone.elements.size() + 2 * v;
      if (on.get(gate)) {
        network.add(mark, element.from(), element.to(), BEST, -varistor.clamp, 0);
      }
      if (on.get(gate + 1)) {
        network.add(mark + 1, element.to(), element.from(), BEST, -varistor.clamp, 0);
      }
    }
    return network;
  }

  /** Gives a node its potential if it is known. */
  static void fix(
      Network network, Zone zone, Settings settings, Corner corner, int number, boolean direct) {
    Node node = zone.nodes.get(number);
    if (zone.reference.isKnown(node)) {
      double re = 0;
      double im = 0;
      for (Leg leg : zone.reference.way(node)) {
        if (leg.source().isDirect() == direct && settings.isLive(leg.source())) {
          re += leg.sign() * settings.re(leg.source(), corner);
          im += leg.sign() * settings.im(leg.source(), corner);
        }
      }
      network.fix(number, re, im);
    }
  }

  private Values valuesOf(Element element) {
    return switch (element.kind()) {
      case CONTACT -> element.values(conducts.get(element.number()));
      case SOURCE ->
          element.values(element.branch() instanceof Source source && settings.isLive(source));
      default -> element.values(element.variable() >= 0 && settings.is(element.variable()));
    };
  }
}
