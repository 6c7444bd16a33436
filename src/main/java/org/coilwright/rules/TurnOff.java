package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Coil;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Passive;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part;

/** What a coil's current meets when its contact opens. */
final class TurnOff {
  private TurnOff() {}

  /**
   * A part that takes the coil's current when its contact opens: on a way from one coil end to the
   * other that needs no switching contact. A varistor or snubber across the contact counts, with
   * the supply in the loop; a diode there would bypass the contact instead.
   */
  static Optional<Branch> suppressor(CoilWiring wiring, Coil coil) {
    AcrossCoil across = wiring.across(coil);
    Optional<Branch> beside =
        Stream.<Branch>concat(across.diodes().stream(), across.others().stream())
            .filter(b -> !(b instanceof Passive p && p.spec() instanceof Part.Resistor))
            .findFirst();
    if (beside.isPresent()) {
      return beside;
    }
    Circuit circuit = wiring.circuit();
    Predicate<Branch> resistor = b -> b instanceof Passive p && p.spec() instanceof Part.Resistor;
    Predicate<Branch> clamping =
        b ->
            b instanceof Passive p
                && (p.spec() instanceof Part.Varistor || p.spec() instanceof Part.Snubber);
    Predicate<Branch> wire = b -> b instanceof Branch.Conductor;
    Predicate<Branch> direct = wire.or(clamping).or(b -> b instanceof Branch.DiodeBranch);
    Predicate<Branch> aroundContact = wire.or(clamping).or(b -> b instanceof Branch.Source);
    return first(circuit, coil, direct, wire.negate())
        .or(() -> first(circuit, coil, direct.or(resistor), resistor))
        .or(() -> first(circuit, coil, aroundContact, clamping));
  }

  private static Optional<Branch> first(
      Circuit circuit, Coil coil, Predicate<Branch> through, Predicate<Branch> sought) {
    return circuit
        .path(coil.from(), coil.to(), through)
        .flatMap(path -> path.branches().stream().filter(sought).findFirst());
  }

  /** The contacts next to the coil on its way to the supply. */
  static List<Contact> opensAgainst(FedCoil feed) {
    Nets wires = feed.wiring().wires();
    List<Integer> ends = List.of(wires.number(feed.coil().from()), wires.number(feed.coil().to()));
    return feed.wiring().circuit().branches(Contact.class).stream()
        .filter(c -> c.spec().isPresent() && !c.part().equals(feed.coil().part()))
        .filter(c -> ends.contains(wires.number(c.from())) || ends.contains(wires.number(c.to())))
        .filter(c -> !wires.joined(c.from(), c.to()))
        .limit(2)
        .toList();
  }

  /** The highest direct voltage a contact is rated for, if any. */
  static OptionalDouble ratedVolts(Contact contact) {
    return contact.spec().stream()
        .flatMap(s -> s.ratings().byCategory().entrySet().stream())
        .filter(e -> e.getKey().startsWith("DC"))
        .flatMap(e -> e.getValue().value().at().stream())
        .mapToDouble(at -> at.nominal())
        .max();
  }
}
