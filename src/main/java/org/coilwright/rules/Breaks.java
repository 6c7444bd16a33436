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
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.circuit.Routes;
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

  /** The breaks of a study, worked out once for the rules that ask. */
  private record All(Map<Part, List<Breaks>> ofLoads) {}

  /** For each load, every device that alone turns it off, nearest to the load first. */
  static Map<Part, List<Breaks>> ofLoads(Study study) {
    return study.derived(All.class, s -> new All(workedOut(s))).ofLoads();
  }

  private static Map<Part, List<Breaks>> workedOut(Study study) {
    Feeding whole = Feeding.whole(study);
    Routes routes = study.circuit().routes(Feeding::isWay);
    Map<Part, List<Breaks>> breaks = new LinkedHashMap<>();
    for (Part load : Loads.of(study.circuit())) {
      breaks.put(load, of(study, load.name(), whole, routes));
    }
    return breaks;
  }

  private static List<Breaks> of(Study study, String load, Feeding whole, Routes routes) {
    PinFeeds before = whole.at(load);
    if (!before.areAmbiguous()) {
      return before.areComplete() ? of(study.circuit(), before, routes) : List.of();
    }
    Optional<State> on =
        study.statesFor(load).stream()
            .filter(state -> !study.isShorted(state))
            .filter(state -> Feeding.in(study, state).at(load).areComplete())
            .findFirst();
    if (on.isEmpty()) {
      return List.of();
    }
    Predicate<Branch> closed = Feeding.closed(study, on.get());
    return of(
        study.circuit(),
        Feeding.in(study, on.get()).at(load),
        study.circuit().routes(b -> Feeding.isWay(b) && closed.test(b)));
  }

  private static List<Breaks> of(Circuit circuit, PinFeeds before, Routes closed) {
    // whatever alone breaks every way to the load also stands in the shortest one
    Set<Actuator> candidates = new LinkedHashSet<>();
    for (Node pin : before.byPin().keySet()) {
      before.byPin().getOrDefault(pin, Set.of()).stream()
          .flatMap(side -> closed.shortest(pin, side.node()).stream())
          .flatMap(path -> path.branches().stream())
          .filter(Contact.class::isInstance)
          .forEach(contact -> candidates.add(((Contact) contact).actuator()));
    }
    return candidates.stream()
        .map(actuator -> of(circuit, before, closed, actuator))
        .filter(breaks -> !breaks.after().areComplete())
        .toList();
  }

  private static Breaks of(Circuit circuit, PinFeeds before, Routes closed, Actuator actuator) {
    List<Contact> contacts = circuit.contactsOf(actuator);
    return new Breaks(actuator, contacts, before, before.without(contacts, closed));
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
