package org.coilwright.rules;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;

/**
 * What one contact device leaves on a load when it alone opens.
 *
 * @param actuator what opens
 * @param contacts its contacts
 * @param before what reaches the load with everything closed
 * @param after what still reaches it then
 */
record Breaks(Actuator actuator, List<Contact> contacts, PinFeeds before, PinFeeds after) {

  /** For each load, every device that alone turns it off, nearest to the load first. */
  static Map<Part, List<Breaks>> ofLoads(Study study) {
    Feeding whole = Feeding.whole(study.circuit());
    Map<Part, List<Breaks>> breaks = new LinkedHashMap<>();
    for (Part load : Loads.of(study.circuit())) {
      breaks.put(load, of(study, load.name(), whole));
    }
    return breaks;
  }

  private static List<Breaks> of(Study study, String load, Feeding whole) {
    Circuit circuit = study.circuit();
    Predicate<Branch> closed = branch -> true;
    PinFeeds before = whole.at(load);
    if (before.areAmbiguous()) {
      Optional<State> on =
          study.statesFor(load).stream()
              .filter(state -> !study.isShorted(state))
              .filter(state -> Feeding.in(study, state).at(load).areComplete())
              .findFirst();
      if (on.isEmpty()) {
        return List.of();
      }
      closed = Feeding.closed(study, on.get());
      before = Feeding.in(study, on.get()).at(load);
    }
    return before.areComplete() ? of(circuit, load, before, closed) : List.of();
  }

  private static List<Breaks> of(
      Circuit circuit, String load, PinFeeds before, Predicate<Branch> closed) {
    // whatever alone breaks every way to the load also stands in the shortest one
    Set<Actuator> candidates = new LinkedHashSet<>();
    for (Node pin : before.byPin().keySet()) {
      before.byPin().getOrDefault(pin, Set.of()).stream()
          .flatMap(side -> way(circuit, pin, side.node(), closed).stream())
          .flatMap(path -> path.branches().stream())
          .filter(Contact.class::isInstance)
          .forEach(contact -> candidates.add(((Contact) contact).actuator()));
    }
    return candidates.stream()
        .map(actuator -> of(circuit, load, before, closed, actuator))
        .filter(breaks -> !breaks.after().areComplete())
        .toList();
  }

  private static Optional<Path> way(
      Circuit circuit, Node pin, Node side, Predicate<Branch> closed) {
    return circuit.path(pin, side, branch -> Feeding.isWay(branch) && closed.test(branch));
  }

  private static Breaks of(
      Circuit circuit, String load, PinFeeds before, Predicate<Branch> closed, Actuator actuator) {
    List<Contact> contacts = circuit.contactsOf(actuator);
    Set<Contact> open = Set.copyOf(contacts);
    PinFeeds after =
        Feeding.of(
                circuit,
                b -> closed.test(b) && !(b instanceof Contact contact && open.contains(contact)))
            .at(load);
    return new Breaks(actuator, contacts, before, after);
  }

  /**
   * True for what switches in service; protective devices and what follows a temperature do not.
   */
  boolean isControl() {
    return switch (actuator.kind()) {
      case OUTPUT, SWITCH, COIL -> true;
      case THERMOSTAT, CUT_OUT, PROTECTIVE -> false;
    };
  }

  /** True if lines stay on the load. */
  boolean leavesLine() {
    return !after.all(Feeding.Kind.LINE).isEmpty();
  }

  /** True if it takes at least one line off. */
  boolean takesLine() {
    return !after.all(Feeding.Kind.LINE).equals(before.all(Feeding.Kind.LINE));
  }

  /** The device as it is marked: {@code U1} for the output {@code U1.heat}. */
  String part() {
    return contacts.get(0).part();
  }
}
