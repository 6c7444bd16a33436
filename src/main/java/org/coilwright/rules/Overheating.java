package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Coil;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.ContactForm;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;

/**
 * What can still feed a load when thermostats or cut-outs have opened and everything else is at its
 * worst: outputs and switches closed, and some contactor welded. Decided on the graph: a contactor
 * whose coil no way can feed any more lets go, and with it whatever hangs on its contacts.
 *
 * @param open thermostats and cut-outs that have opened
 * @param welded relays whose contacts stay as they were
 */
record Overheating(Circuit circuit, Set<String> open, Set<String> welded) {

  /** What still reaches the load. */
  PinFeeds at(Part load) {
    return Feeding.of(circuit, closed()).at(load.name());
  }

  /** Contacts that can be closed; the largest set that upholds itself. */
  private Predicate<Branch> closed() {
    Set<String> dropped = new LinkedHashSet<>();
    while (true) {
      Predicate<Branch> now = b -> !(b instanceof Contact c) || canClose(c, dropped);
      Feeding feeding = Feeding.of(circuit, now);
      Set<String> next = new LinkedHashSet<>(dropped);
      for (Coil coil : circuit.branches(Coil.class)) {
        if (!canBeFed(feeding, coil)) {
          next.add(coil.part());
        }
      }
      if (next.equals(dropped)) {
        return now;
      }
      dropped.addAll(next);
    }
  }

  private boolean canClose(Contact contact, Set<String> dropped) {
    Actuator actuator = contact.actuator();
    return switch (actuator.kind()) {
      // one that closes as it warms is closed when it is hot
      case THERMOSTAT, CUT_OUT ->
          contact.form() == ContactForm.NO || !open.contains(actuator.name());
      case COIL ->
          welded.contains(actuator.name())
              || contact.form() == ContactForm.NC
              || !dropped.contains(actuator.name());
      case OUTPUT, SWITCH, PROTECTIVE -> true;
    };
  }

  /**
   * True if its two pins can hang on two different sides; a coil in series with another may too.
   */
  private static boolean canBeFed(Feeding feeding, Coil coil) {
    Set<Feeding.Side> first = feeding.at(coil.from());
    Set<Feeding.Side> second = feeding.at(coil.to());
    if (first.isEmpty() || second.isEmpty()) {
      return false;
    }
    Set<Feeding.Side> both = new LinkedHashSet<>(first);
    both.addAll(second);
    return both.size() > 1;
  }

  /** Relays and contactors by name. */
  static List<String> relays(Circuit circuit) {
    return circuit.branches(Coil.class).stream().map(Coil::part).distinct().toList();
  }

  /** Cut-outs, or thermostats. */
  static List<Part.Thermal> thermals(Circuit circuit, boolean cutOut) {
    return circuit.netlist().parts().values().stream()
        .filter(p -> p instanceof Part.Thermal t && t.isCutOut() == cutOut)
        .map(Part.Thermal.class::cast)
        .toList();
  }

  /** The fault, in words, with which a vessel is heated though thermostats and cut-outs opened. */
  static Optional<String> heatingFault(
      Circuit circuit, Part load, List<Part.Thermal> cutOuts, List<Part.Thermal> thermostats) {
    Set<String> out = names(cutOuts);
    Set<String> both = names(cutOuts);
    both.addAll(names(thermostats));
    if (new Overheating(circuit, out, Set.of()).at(load).areComplete()) {
      return Optional.of("with the thermostat stuck closed");
    }
    for (String relay : relays(circuit)) {
      if (new Overheating(circuit, both, Set.of(relay)).at(load).areComplete()) {
        return Optional.of("with %s welded".formatted(relay));
      }
    }
    return Optional.empty();
  }

  /**
   * Those of the thermostats, or cut-outs, each of which alone keeps a heater off when it opens.
   */
  static List<Part.Thermal> stopping(Circuit circuit, Part heater, boolean cutOut) {
    return thermals(circuit, cutOut).stream()
        .filter(t -> !new Overheating(circuit, Set.of(t.name()), Set.of()).at(heater).areComplete())
        .toList();
  }

  /** What is said of a heater's vessel, and of the devices that should guard it. */
  static Subject subject(RuleFacts facts, Part.Heater heater, List<Part.Thermal> guards) {
    List<String> at = new ArrayList<>(List.of(heater.name()));
    at.addAll(names(guards));
    return new Subject(
        facts, heater.vessel().map(Part.Vessel::mark).orElse(heater.head().mark()), at);
  }

  static Set<String> names(List<Part.Thermal> parts) {
    Set<String> names = new LinkedHashSet<>();
    parts.forEach(p -> names.add(p.name()));
    return names;
  }
}
