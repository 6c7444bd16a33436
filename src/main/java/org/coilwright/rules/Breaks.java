package org.coilwright.rules;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;

/**
 * What one contact device leaves on a load when it alone opens.
 *
 * @param actuator what opens
 * @param contacts its contacts
 * @param before what reaches the load with everything closed
 * @param after what still reaches it then
 */
record Breaks(Actuator actuator, List<Contact> contacts, PinFeeds before, PinFeeds after) {

  /** Every device that alone turns the load off, nearest to the load first. */
  static List<Breaks> of(Circuit circuit, String load) {
    PinFeeds before = PinFeeds.of(circuit, load, branch -> true);
    if (!before.areComplete()) {
      return List.of();
    }
    // whatever alone breaks every way to the load also stands in the shortest one
    Set<Actuator> candidates = new LinkedHashSet<>();
    for (Node pin : before.byPin().keySet()) {
      before.byPin().getOrDefault(pin, Set.of()).stream()
          .flatMap(side -> circuit.path(pin, side.node(), Circuit::isWay).stream())
          .flatMap(path -> path.branches().stream())
          .filter(Contact.class::isInstance)
          .forEach(contact -> candidates.add(((Contact) contact).actuator()));
    }
    return candidates.stream()
        .map(actuator -> of(circuit, load, before, actuator))
        .filter(breaks -> !breaks.after().areComplete())
        .toList();
  }

  private static Breaks of(Circuit circuit, String load, PinFeeds before, Actuator actuator) {
    List<Contact> contacts = circuit.contactsOf(actuator);
    Set<Contact> open = Set.copyOf(contacts);
    PinFeeds after =
        PinFeeds.of(circuit, load, b -> !(b instanceof Contact contact && open.contains(contact)));
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
    return !after.all(PinFeeds.Kind.LINE).isEmpty();
  }

  /** True if it takes at least one line off. */
  boolean takesLine() {
    return !after.all(PinFeeds.Kind.LINE).equals(before.all(PinFeeds.Kind.LINE));
  }

  /** The device as it is marked: {@code U1} for the output {@code U1.heat}. */
  String part() {
    return contacts.get(0).part();
  }
}
