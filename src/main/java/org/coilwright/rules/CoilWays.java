package org.coilwright.rules;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Coil;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.DiodeBranch;
import org.coilwright.circuit.Branch.Passive;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.circuit.Routes;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.solve.Study;

/** Finds the ways of a {@link CoilFeed}; made once a circuit. */
final class CoilWays {
  private final Routes routes;

  CoilWays(Study study) {
    Circuit circuit = study.circuit();
    Nets wires = Nets.ofWires(study);
    Set<Nets.Pair> coils = new HashSet<>();
    circuit.branches(Coil.class).forEach(coil -> coils.add(wires.ends(coil)));
    // A diode across a coil takes that coil's current; no other is meant to be fed through it.
    routes =
        circuit.routes(
            branch ->
                leads(circuit, branch)
                    && !(branch instanceof DiodeBranch && coils.contains(wires.ends(branch))));
  }

  /** A way and the contacts on it. */
  private record Way(Path path, Set<Contact> contacts) {
    /**
     * True if this one does all that another does and moves more contacts for it: where both are
     * closed, the longer one is a short-circuit or a loop, and its further contacts switch no coil.
     * Past a coil that nothing switches, the contacts passed by are those that should.
     */
    boolean isDetourOf(Way other) {
      return contacts.size() > other.contacts.size()
          && contacts.containsAll(other.contacts)
          && other.contacts.stream().anyMatch(c -> c.actuator().kind() != Actuator.Kind.PROTECTIVE)
          && CoilFeed.sourcesOf(other.path).stream()
              .allMatch(s -> path.nodes().contains(s.from()) && path.nodes().contains(s.to()));
    }
  }

  /** Every way by which the coil is meant to get its current, shortest first. */
  List<Path> of(Coil coil) {
    List<Way> ways =
        routes.between(coil.from(), coil.to()).stream()
            .filter(way -> way.branches().stream().anyMatch(Source.class::isInstance))
            .map(way -> new Way(way, contactsOf(way)))
            .toList();
    return ways.stream()
        .filter(way -> ways.stream().noneMatch(way::isDetourOf))
        .map(Way::path)
        .toList();
  }

  private static Set<Contact> contactsOf(Path way) {
    return way.branches().stream()
        .filter(Contact.class::isInstance)
        .map(Contact.class::cast)
        .collect(Collectors.toSet());
  }

  /** True for what may lead a coil's current on its way, contacts in any position. */
  static boolean leads(Circuit circuit, Branch branch) {
    if (branch instanceof Passive passive) {
      return passive.spec() instanceof Part.Resistor && !bridgesContact(circuit, passive);
    }
    return branch instanceof Conductor
        || branch instanceof Contact
        || branch instanceof Source
        || branch instanceof DiodeBranch;
  }

  static boolean bridgesContact(Circuit circuit, Branch branch) {
    return circuit.branches(Contact.class).stream()
        .anyMatch(contact -> acrossTheSame(circuit, branch, contact));
  }

  /** Resistors that are wired straight across a coil. */
  static List<Passive> resistorsAcross(CoilFeed feed) {
    Circuit circuit = feed.study().circuit();
    return circuit.branches(Passive.class).stream()
        .filter(p -> p.spec() instanceof Part.Resistor)
        .filter(p -> acrossTheSame(circuit, p, feed.coil()))
        .toList();
  }

  /** True if both branches lie between the same two nets. */
  static boolean acrossTheSame(Circuit circuit, Branch one, Branch other) {
    Set<Node> from = circuit.net(one.from());
    Set<Node> to = circuit.net(one.to());
    return (from.contains(other.from()) && to.contains(other.to()))
        || (from.contains(other.to()) && to.contains(other.from()));
  }

  /** Pins that wires and contacts lead a coil to, those of supplies left out. */
  static List<String> deadEnds(Circuit circuit, Coil coil) {
    return Stream.of(coil.from(), coil.to())
        .flatMap(
            pin -> circuit.reach(pin, b -> leads(circuit, b) && !(b instanceof Source)).stream())
        .filter(node -> circuit.branchesAt(node).stream().noneMatch(Source.class::isInstance))
        .flatMap(node -> node.terminals().stream())
        .map(Terminal::toString)
        .distinct()
        .toList();
  }
}
