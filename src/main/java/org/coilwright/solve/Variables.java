package org.coilwright.solve;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;

/**
 * Everything that can be one way or the other, numbered: first the independent contacts' actuators,
 * then the armatures, then the sources that need a mains input to be live.
 */
final class Variables {
  private final List<String> columns = new ArrayList<>();
  private final List<Actuator> actuators = new ArrayList<>();
  private final List<String> relays = new ArrayList<>();
  private final List<Boolean> rest = new ArrayList<>();
  private final Map<String, Integer> numbers = new HashMap<>();
  private final Map<Branch, List<Integer>> fedBy = new HashMap<>();
  private final List<Branch.Source> sources = new ArrayList<>();
  private final Map<Branch.Source, Integer> fed = new HashMap<>();
  private final Map<Branch.Source, Branch.Input> inputs = new LinkedHashMap<>();

  Variables(Circuit circuit) {
    Set<String> intended = new HashSet<>();
    circuit.netlist().intent().values().forEach(i -> intended.addAll(i.value().names()));
    for (Actuator actuator : circuit.independentActuators()) {
      List<Contact> contacts = circuit.contactsOf(actuator);
      if (intended.contains(actuator.name())
          || contacts.stream().anyMatch(c -> wired(circuit, c))) {
        numbers.put(actuator.name(), numbers.size());
        columns.add(actuator.name());
        actuators.add(actuator);
        rest.add(
            actuator.atRest(contacts.get(0).form() == org.coilwright.netlist.Part.ContactForm.NC));
      }
    }
    for (Branch.Coil coil : circuit.branches(Branch.Coil.class)) {
      numbers.put(coil.part(), numbers.size());
      relays.add(coil.part());
    }
    for (Branch.Input input : circuit.branches(Branch.Input.class)) {
      if (touched(circuit, input)) {
        circuit.branchesOf(input.part()).stream()
            .filter(Branch.Source.class::isInstance)
            .map(Branch.Source.class::cast)
            .forEach(
                source -> {
                  fed.put(source, numbers.size() + fed.size());
                  sources.add(source);
                  fedBy.computeIfAbsent(input, i -> new ArrayList<>()).add(ofSource(source));
                  inputs.put(source, input);
                });
      }
    }
  }

  private static boolean wired(Circuit circuit, Branch branch) {
    return circuit.branchesAt(branch.from()).size() > 1
        && circuit.branchesAt(branch.to()).size() > 1;
  }

  private static boolean touched(Circuit circuit, Branch branch) {
    return circuit.branchesAt(branch.from()).size() > 1
        || circuit.branchesAt(branch.to()).size() > 1;
  }

  int size() {
    return numbers.size() + fed.size();
  }

  List<String> columns() {
    return columns;
  }

  /** What moves the contacts of a column. */
  Actuator actuator(int column) {
    return actuators.get(column);
  }

  List<String> relays() {
    return relays;
  }

  /** The first number that stands for an armature. */
  int firstRelay() {
    return columns.size();
  }

  /** The first number that stands for a source. */
  int firstSource() {
    return numbers.size();
  }

  /** -1 for what never moves: protective devices, contacts that are not wired. */
  int of(Actuator actuator) {
    return numbers.getOrDefault(actuator.name(), -1);
  }

  int ofRelay(String relay) {
    return numbers.getOrDefault(relay, -1);
  }

  /** -1 for a source that needs no input, or whose input is not wired at all. */
  int ofSource(Branch.Source source) {
    return fed.getOrDefault(source, -1);
  }

  /** Numbers of the sources that an input keeps alive. */
  List<Integer> fedBy(Branch input) {
    return fedBy.getOrDefault(input, List.of());
  }

  /** The input that keeps a source alive; empty for one that needs none. */
  Optional<Branch.Input> inputOf(Branch.Source source) {
    return Optional.ofNullable(inputs.get(source));
  }

  /** The source that a variable stands for. */
  Branch.Source source(int variable) {
    return sources.get(variable - numbers.size());
  }

  /** Position of an independent contact when nothing moves it. */
  boolean atRest(int column) {
    return rest.get(column);
  }
}
