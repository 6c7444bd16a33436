package org.coilwright.solve;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.LoadElement;
import org.coilwright.circuit.Circuit;
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

  private static final Values BEST = Values.resistor(BEST_CONTACT);
  private static final Values IDEAL = Values.resistor(0);

  private final Variables variables;
  private final Sources sources;
  private final Map<String, CoilModel> coils;
  private final Copper copper;
  private final Air air;
  private final double hertz;
  private final Values pole;
  private final Values control;
  private final Circuit circuit;
  private final Map<Branch, Optional<Cited<Double>>> hotOhms = new HashMap<>();
  private final Map<Branch, Values> values = new HashMap<>();

  Elements(
      Variables variables,
      Sources sources,
      Map<String, CoilModel> coils,
      Circuit circuit,
      Tables tables,
      Air air,
      double hertz) {
    this.variables = variables;
    this.sources = sources;
    this.coils = coils;
    this.circuit = circuit;
    this.copper = new Copper(tables);
    this.air = air;
    this.hertz = hertz;
    double poleOhms = tables.figure("coil.pole-resistance").value();
    double contactOhms = tables.figure("coil.contact-resistance").value();
    this.pole = Values.resistor(poleOhms, BEST_CONTACT, poleOhms);
    this.control = Values.resistor(poleOhms, BEST_CONTACT, contactOhms);
  }

  Optional<Cited<Double>> hotOhms(Branch.Conductor wire) {
    return hotOhms.computeIfAbsent(wire, w -> copper.ohms(wire, air.hottest().value()));
  }

  Element of(Branch branch, int number, int from, int to) {
    if (branch instanceof Contact contact) {
      int variable = variables.of(contact.actuator());
      boolean atRest = contact.actuator().atRest(contact.form() == Part.ContactForm.NC);
      return new Element(
          number,
          Element.Kind.CONTACT,
          branch,
          from,
          to,
          variable,
          values.computeIfAbsent(branch, b -> leakage(contact)),
          closed(contact),
          variable < 0 ? contact.conductsWhen(atRest) : contact.conductsWhen(true));
    }
    if (branch instanceof Branch.Coil coil) {
      CoilModel model = coils.get(coil.part());
      if (model == null) {
        throw new IllegalStateException("no model of the coil of " + coil.part());
      }
      int variable = variables.ofRelay(coil.part());
      return new Element(
          number, Element.Kind.COIL, branch, from, to, variable, model.out, model.in, true);
    }
    if (branch instanceof Branch.Source source) {
      int variable = variables.ofSource(source);
      return new Element(
          number, Element.Kind.SOURCE, branch, from, to, variable, Values.open(), IDEAL, true);
    }
    Values worth = values.computeIfAbsent(branch, this::plain);
    return new Element(number, kind(branch), branch, from, to, -1, worth, worth, true);
  }

  /** An element that is short-circuited whatever happens. */
  static Element bridged(Element element) {
    return new Element(
        element.number(),
        Element.Kind.CONTACT,
        element.branch(),
        element.from(),
        element.to(),
        -1,
        Values.open(),
        BEST,
        true);
  }

  private Values closed(Contact contact) {
    boolean power = contact.pole() || contact.actuator().kind() == Actuator.Kind.PROTECTIVE;
    return power ? pole : control;
  }

  private static Element.Kind kind(Branch branch) {
    if (branch instanceof Branch.Conductor || branch instanceof Branch.Joint) {
      return Element.Kind.WIRE;
    }
    if (branch instanceof LoadElement) {
      return Element.Kind.LOAD;
    }
    if (branch instanceof Branch.DiodeBranch) {
      return Element.Kind.DIODE;
    }
    return branch instanceof Branch.Passive ? Element.Kind.PASSIVE : Element.Kind.INPUT;
  }

  private Values plain(Branch branch) {
    if (branch instanceof Branch.Conductor wire) {
      return wire(wire);
    }
    if (branch instanceof Branch.Joint joint) {
      return Values.resistor(Math.max(joint.ohms(), BEST_CONTACT));
    }
    if (branch instanceof LoadElement load) {
      return load(load);
    }
    if (branch instanceof Branch.DiodeBranch) {
      return BEST;
    }
    return branch instanceof Branch.Passive passive
        ? passive(passive.spec())
        : Values.resistor(Values.METER);
  }

  /** The diode that a coil has built in, from its minus to its plus pin. */
  Optional<Element> builtInDiode(Element coil, int number) {
    return coil.coil()
        .map(c -> coils.get(c.part()))
        .filter(model -> model.builtInDiode)
        .map(
            model -> {
              boolean firstIsPlus = model.polarity >= 0;
              return new Element(
                  number,
                  Element.Kind.DIODE,
                  coil.branch(),
                  firstIsPlus ? coil.to() : coil.from(),
                  firstIsPlus ? coil.from() : coil.to(),
                  -1,
                  BEST,
                  BEST,
                  true);
            });
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
  private Values leakage(Contact contact) {
    Optional<Double> amps =
        contact
            .spec()
            .flatMap(Part.ContactSpec::leakage)
            .map(Written::value)
            .filter(q -> q.dimension() == Dimension.CURRENT && q.high() > 0)
            .map(Quantity::high);
    return amps.map(
            a -> {
              double volts =
                  circuit.islandOf(contact.from()).sources().stream()
                      .mapToDouble(s -> sources.volts(s, Level.NOMINAL))
                      .max()
                      .orElse(0);
              return volts > 0 ? Values.resistor(volts / a) : Values.open();
            })
        .orElseGet(Values::open);
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
