package org.coilwright.solve;

import java.util.HashSet;
import java.util.Set;
import java.util.function.ToDoubleFunction;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Passive;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.quantity.CurrentKind;

/** Reads off a state what a contact or a source does. */
final class Readings {
  private final Lookup lookup;

  Readings(Lookup lookup) {
    this.lookup = lookup;
  }

  ContactReading contact(Contact contact, State state) {
    ZoneInState here = lookup.at(contact, state);
    Zone zone = here.zone;
    Element element = lookup.elementOf(zone, contact);
    ZoneFlow nominal = here.flow(Corner.NOMINAL);
    boolean closed = nominal.conducts().get(element.number());
    ZoneFlow shown = closed ? nominal : here.flow(Corner.HIGHEST);
    return new ContactReading(
        closed,
        amps(contact, state, Corner.NOMINAL),
        amps(contact, state, Corner.PICK_UP),
        closed ? 0 : CoilReadings.clean(openVolts(shown, element)),
        kind(zone, shown, element));
  }

  /** V across a part at the highest supply: beside coils that draw least, and that draw most. */
  double volts(Passive part, State state) {
    ZoneInState here = lookup.at(part, state);
    Element element = lookup.elementOf(here.zone, part);
    return CoilReadings.clean(
        Math.max(
            openVolts(here.flow(Corner.HIGHEST), element),
            openVolts(here.flow(Corner.HEAVIEST.held()), element)));
  }

  /** Where circuits share it, and other groups are at rest in the states: with the most of them. */
  private double amps(Contact contact, State state, Corner corner) {
    ToDoubleFunction<ZoneInState> carried =
        z -> z.flow(corner).amps(lookup.elementOf(z.zone, contact));
    boolean shared = lookup.model().grid.isShared(contact);
    return floor(
        carried.applyAsDouble(
            shared ? lookup.atWorst(contact, state, carried) : lookup.at(contact, state)));
  }

  private static CurrentKind kind(Zone zone, ZoneFlow flow, Element element) {
    if (zone.reference.hasMains() && zone.reference.hasDirect()) {
      return Math.abs(flow.directVolts(element)) > flow.alternatingVolts(element)
          ? CurrentKind.DC
          : CurrentKind.AC;
    }
    if (zone.reference.hasMains()) {
      return CurrentKind.AC;
    }
    return zone.reference.hasDirect() ? CurrentKind.DC : CurrentKind.UNSTATED;
  }

  private static double floor(double amps) {
    return amps < CoilReadings.NOTHING_AMPS ? 0 : amps;
  }

  /** A side that hangs on nothing counts as joined to the reference. */
  private static double openVolts(ZoneFlow flow, Element e) {
    double direct = side(flow.direct(), e.from(), true) - side(flow.direct(), e.to(), true);
    double re = side(flow.alternating(), e.from(), true) - side(flow.alternating(), e.to(), true);
    double im = side(flow.alternating(), e.from(), false) - side(flow.alternating(), e.to(), false);
    return Math.hypot(direct, Math.hypot(re, im));
  }

  private static double side(Network.Flow flow, int node, boolean real) {
    return flow.grounded[node] ? (real ? flow.vRe[node] : flow.vIm[node]) : 0;
  }

  boolean isLive(Source source, State state) {
    return lookup.model().setup.variables.ofSource(source) < 0
        || lookup.model().fedBy(source).stream()
            .allMatch(g -> lookup.situation(g, state).settings(Corner.NOMINAL).isLive(source));
  }

  SupplyReading supply(Source source, State state) {
    double[] steady = new double[3];
    double[] pickUp = new double[3];
    double watts = 0;
    Set<ZoneInState> told = new HashSet<>();
    for (Group group : lookup.model().fedBy(source)) {
      Situation situation = lookup.situation(group, state);
      double[] amps = new double[3];
      for (Zone zone : group.zones) {
        if (zone.sources().contains(source)) {
          ZoneInState here = lookup.at(zone, state);
          if (told.add(here)) {
            here.flow(Corner.NOMINAL).addDelivered(source, amps);
            here.flow(Corner.PICK_UP).addDelivered(source, pickUp);
          }
        }
      }
      Settings settings = situation.settings(Corner.NOMINAL);
      add(steady, amps);
      double re = settings.re(source, Corner.NOMINAL);
      watts += watts(source, amps, re, settings.im(source, Corner.NOMINAL));
    }
    return new SupplyReading(size(steady), size(pickUp), watts);
  }

  /** What one group asks of a source, as if that had no limit. */
  SupplyReading asked(Source source, Situation situation) {
    Sources sources = lookup.model().setup.sources;
    double[] amps = situation.asked(source, Corner.NOMINAL);
    return new SupplyReading(
        size(amps),
        size(situation.asked(source, Corner.PICK_UP)),
        watts(source, amps, sources.re(source, Level.NOMINAL), sources.im(source, Level.NOMINAL)));
  }

  private static double watts(Source source, double[] amps, double re, double im) {
    return source.isDirect() ? re * amps[0] : re * amps[1] + im * amps[2];
  }

  private static void add(double[] sum, double[] more) {
    for (int i = 0; i < sum.length; i++) {
      sum[i] += more[i];
    }
  }

  private static double size(double[] amps) {
    return floor(Math.hypot(amps[0], Math.hypot(amps[1], amps[2])));
  }
}
