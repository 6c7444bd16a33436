package org.coilwright.solve;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.LoadElement;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Quantity;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** What every branch is worth to the solver. */
final class Elements {
  /**
   * A wire of which length or size is missing: a milliohm, so that a short-circuit stays finite.
   */
  private static final double UNKNOWN_WIRE = 1e-3;

  /** A contact at its best: a microohm, for the same reason. */
  private static final double BEST_CONTACT = 1e-6;

  private final Variables variables;
  private final Sources sources;
  private final Map<String, CoilModel> coils;
  private final Copper copper;
  private final Air air;
  private final double hertz;
  private final double poleOhms;
  private final double contactOhms;
  private final Map<Branch, Optional<Cited<Double>>> hotOhms = new HashMap<>();

  Elements(
      Variables variables,
      Sources sources,
      Map<String, CoilModel> coils,
      Tables tables,
      Air air,
      double hertz) {
    this.variables = variables;
    this.sources = sources;
    this.coils = coils;
    this.copper = new Copper(tables);
    this.air = air;
    this.hertz = hertz;
    this.poleOhms = tables.figure("coil.pole-resistance").value();
    this.contactOhms = tables.figure("coil.contact-resistance").value();
  }

  Optional<Cited<Double>> hotOhms(Branch.Conductor wire) {
    return hotOhms.computeIfAbsent(wire, w -> copper.ohms(wire, air.hottest().value()));
  }

  Element of(Branch branch, int number, int from, int to, Reference reference) {
    if (branch instanceof Contact contact) {
      boolean power = contact.pole() || contact.actuator().kind() == Actuator.Kind.PROTECTIVE;
      Values closed = Values.resistor(poleOhms, BEST_CONTACT, power ? poleOhms : contactOhms);
      return new Element(
          number,
          Element.Kind.CONTACT,
          branch,
          from,
          to,
          variables.of(contact.actuator()),
          leakage(contact, reference),
          closed,
          contact.conductsWhen(true));
    }
    if (branch instanceof Branch.Coil coil) {
      CoilModel model = coils.get(coil.part());
      if (model == null) {
        throw new IllegalStateException("no model of the coil of " + coil.part());
      }
      return new Element(
          number,
          Element.Kind.COIL,
          branch,
          from,
          to,
          variables.ofRelay(coil.part()),
          model.out,
          model.in,
          true);
    }
    if (branch instanceof Branch.Conductor wire) {
      return plain(number, Element.Kind.WIRE, branch, from, to, wire(wire));
    }
    if (branch instanceof LoadElement load) {
      return plain(number, Element.Kind.LOAD, branch, from, to, load(load));
    }
    if (branch instanceof Branch.Source source) {
      return new Element(
          number,
          Element.Kind.SOURCE,
          branch,
          from,
          to,
          variables.ofSource(source),
          Values.open(),
          Values.resistor(BEST_CONTACT),
          true);
    }
    if (branch instanceof Branch.DiodeBranch) {
      return plain(number, Element.Kind.DIODE, branch, from, to, Values.resistor(BEST_CONTACT));
    }
    if (branch instanceof Branch.Passive passive) {
      return plain(number, Element.Kind.PASSIVE, branch, from, to, passive(passive.spec()));
    }
    return plain(number, Element.Kind.INPUT, branch, from, to, Values.resistor(Values.METER));
  }

  /** The diode that a coil has built in, from its minus to its plus pin. */
  Optional<Element> builtInDiode(Element coil, int number) {
    return coil.coil()
        .map(c -> coils.get(c.part()))
        .filter(model -> model.builtInDiode)
        .map(
            model -> {
              boolean firstIsPlus = model.polarity >= 0;
              return plain(
                  number,
                  Element.Kind.DIODE,
                  coil.branch(),
                  firstIsPlus ? coil.to() : coil.from(),
                  firstIsPlus ? coil.from() : coil.to(),
                  Values.resistor(BEST_CONTACT));
            });
  }

  private static Element plain(
      int number, Element.Kind kind, Branch branch, int from, int to, Values values) {
    return new Element(number, kind, branch, from, to, -1, values, values, true);
  }

  private Values wire(Branch.Conductor wire) {
    Optional<Cited<Double>> hot = hotOhms(wire);
    if (hot.isEmpty()) {
      return Values.resistor(UNKNOWN_WIRE);
    }
    double most = Math.max(hot.get().value(), BEST_CONTACT);
    double at20 = most / copper.factor(air.hottest().value());
    return Values.resistor(at20, at20 * copper.factor(air.coldest().value()), most);
  }

  /** An open contact that leaks is taken as the resistance that lets that much through. */
  private Values leakage(Contact contact, Reference reference) {
    Optional<Double> amps =
        contact
            .spec()
            .flatMap(Part.ContactSpec::leakage)
            .map(Written::value)
            .filter(q -> q.dimension() == Dimension.CURRENT && q.high() > 0)
            .map(Quantity::high);
    double volts =
        reference.held().stream().mapToDouble(s -> sources.volts(s, Level.NOMINAL)).max().orElse(0);
    return amps.filter(a -> volts > 0).map(a -> Values.resistor(volts / a)).orElseGet(Values::open);
  }

  private static Values load(LoadElement load) {
    if (load.ratedVolts().isEmpty()
        || load.ratedWatts().isEmpty()
        || load.ratedWatts().getAsDouble() <= 0
        || load.ratedVolts().getAsDouble() <= 0) {
      return Values.resistor(Values.METER);
    }
    double volts = load.ratedVolts().getAsDouble();
    double watts = load.ratedWatts().getAsDouble();
    double factor = load.powerFactor() > 0 ? Math.min(1, load.powerFactor()) : 1;
    Optional<Spread> z =
        Optional.of(Spread.exact(Impedance.inductive(volts * volts * factor / watts, factor)));
    Optional<Spread> r = Optional.of(Spread.exact(Impedance.ohms(volts * volts / watts)));
    return Values.of(r, z);
  }

  private Values passive(Part part) {
    if (part instanceof Part.Resistor resistor) {
      return resistor
          .resistance()
          .map(Written::value)
          .filter(q -> q.low() > 0)
          .map(q -> Values.resistor(q.nominal(), q.low(), q.high()))
          .orElseGet(() -> Values.resistor(Values.METER));
    }
    if (part instanceof Part.Lamp lamp) {
      double volts = lamp.voltage().map(v -> v.value().nominal()).orElse(0.0);
      double amps = lamp.current().map(c -> c.value().nominal()).orElse(0.0);
      return Values.resistor(volts > 0 && amps > 0 ? volts / amps : Values.METER);
    }
    if (part instanceof Part.Snubber snubber) {
      double ohms = snubber.resistance().map(r -> r.value().nominal()).orElse(0.0);
      double farads = snubber.capacitance().map(c -> c.value().nominal()).orElse(0.0);
      Optional<Spread> z =
          farads > 0
              ? Optional.of(Spread.exact(new Impedance(ohms, -1 / (2 * Math.PI * hertz * farads))))
              : Optional.empty();
      return Values.of(Optional.empty(), z);
    }
    return Values.open();
  }
}
