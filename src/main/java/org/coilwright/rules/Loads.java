package org.coilwright.rules;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.LoadElement;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part;
import org.coilwright.solve.Study;

/** The loads of a circuit. */
final class Loads {
  private Loads() {}

  /** Heaters and other loads, in the order of the netlist. */
  static List<Part> of(Circuit circuit) {
    return circuit.netlist().parts().values().stream().filter(Loads::isLoad).toList();
  }

  /** Their designations. */
  static List<String> names(Circuit circuit) {
    return of(circuit).stream().map(Part::name).toList();
  }

  private static boolean isLoad(Part part) {
    return part instanceof Part.Heater || part instanceof Part.OtherLoad;
  }

  /**
   * The key without which it cannot be told when a load is on, as what it draws does not follow
   * without it; empty if all is written.
   */
  static Optional<String> unknown(Circuit circuit, Part load) {
    List<LoadElement> elements =
        circuit.branchesOf(load.name()).stream()
            .filter(LoadElement.class::isInstance)
            .map(LoadElement.class::cast)
            .toList();
    if (elements.stream().anyMatch(e -> e.ratedVolts().isEmpty())) {
      return Optional.of("voltage of " + load.name());
    }
    return elements.stream().anyMatch(e -> e.ratedWatts().isEmpty())
        ? Optional.of("power of " + load.name())
        : Optional.empty();
  }

  /** Relays whose contacts a load hangs on, and the relays that switch those, nearest first. */
  static List<String> relaysBefore(Study study, String load) {
    return study.derived(Relays.class, Relays::of).before().getOrDefault(load, List.of());
  }

  /** The loads that have a relay before them, in the order of the netlist. */
  static List<Part> behind(Study study, String relay) {
    return study.derived(Relays.class, Relays::of).behind().getOrDefault(relay, List.of());
  }

  /** Kept with the study. */
  private record Relays(Map<String, List<String>> before, Map<String, List<Part>> behind) {
    static Relays of(Study study) {
      Map<String, List<String>> before = new HashMap<>();
      Map<String, List<Part>> behind = new HashMap<>();
      for (Part load : Loads.of(study.circuit())) {
        List<String> relays = lookBefore(study, load.name());
        before.put(load.name(), relays);
        relays.forEach(r -> behind.computeIfAbsent(r, k -> new ArrayList<>()).add(load));
      }
      return new Relays(before, behind);
    }
  }

  private static List<String> lookBefore(Study study, String load) {
    Set<String> relays = new LinkedHashSet<>();
    Deque<Branch> open = new ArrayDeque<>();
    study.circuit().pathsAround(List.of(), load).forEach(path -> open.addAll(path.branches()));
    while (!open.isEmpty()) {
      if (open.remove() instanceof Branch.Contact contact
          && contact.actuator().kind() == Actuator.Kind.COIL
          && relays.add(contact.part())) {
        study.circuit().branchesOf(contact.part()).stream()
            .filter(Branch.Coil.class::isInstance)
            .map(Branch.Coil.class::cast)
            .forEach(coil -> open.addAll(CoilFeed.of(study, coil).switches()));
      }
    }
    return List.copyOf(relays);
  }
}
