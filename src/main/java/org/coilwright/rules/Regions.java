package org.coilwright.rules;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Coil;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.solve.Study;

/**
 * The circuit cut where the sides of the sources lie: what wires and contacts join without passing
 * a side is one region. A contact makes a difference to what reaches a node only if it lies in the
 * node's region or between sides, so a rule that opens a device need look at few nodes.
 */
final class Regions {
  private final Circuit circuit;
  private final Borders borders;
  private final Map<Node, Integer> numbers = new HashMap<>();
  private final List<MainsConsumer> consumers;
  private final List<Contact> contacts;
  private final Map<Integer, List<Integer>> consumersIn = new HashMap<>();
  private final Map<Integer, List<Integer>> contactsIn = new HashMap<>();
  private final Set<Integer> meetBetween = new HashSet<>();
  private final Map<String, Set<Actuator>> actuators = new HashMap<>();

  private Regions(Study study) {
    this.circuit = study.circuit();
    this.borders = Borders.of(study);
    this.consumers = MainsConsumer.all(circuit);
    this.contacts = circuit.branches(Contact.class);
    number();
    for (int i = 0; i < consumers.size(); i++) {
      put(consumersIn, i, consumers.get(i).pins());
    }
    for (int i = 0; i < contacts.size(); i++) {
      put(contactsIn, i, List.of(contacts.get(i).from(), contacts.get(i).to()));
    }
  }

  /** Of a study; worked out once. */
  static Regions of(Study study) {
    return study.derived(Regions.class, Regions::new);
  }

  private void number() {
    Set<Node> linked = new HashSet<>();
    borders.between().forEach(b -> linked.addAll(List.of(b.from(), b.to())));
    int next = 0;
    for (Node node : circuit.nodes()) {
      if (!borders.sides().containsKey(node) && !numbers.containsKey(node)) {
        for (Node member : borders.inside(circuit, node, b -> true)) {
          if (!borders.sides().containsKey(member)) {
            numbers.put(member, next);
          } else if (linked.contains(member)) {
            meetBetween.add(next);
          }
        }
        next++;
      }
    }
  }

  private void put(Map<Integer, List<Integer>> in, int index, Collection<Node> nodes) {
    for (int number : numbersOf(nodes)) {
      in.computeIfAbsent(number, n -> new ArrayList<>()).add(index);
    }
  }

  private Set<Integer> numbersOf(Collection<Node> nodes) {
    Set<Integer> of = new LinkedHashSet<>();
    for (Node node : nodes) {
      Integer number = numbers.get(node);
      if (number != null) {
        of.add(number);
      }
    }
    return of;
  }

  /** Every consumer, in the order of {@link MainsConsumer#all}. */
  List<MainsConsumer> consumers() {
    return consumers;
  }

  /** The consumers that can feel whether the contacts of a device are open, in their order. */
  List<MainsConsumer> consumersThatFeel(Part device) {
    List<Contact> own = contactsOf(device);
    if (own.stream().anyMatch(borders.between()::contains)) {
      return consumers;
    }
    return gathered(consumersIn, own).stream().map(consumers::get).toList();
  }

  /** The contacts with an end that can feel whether those of a device are open, in their order. */
  List<Contact> contactsThatFeel(Part device) {
    List<Contact> own = contactsOf(device);
    if (own.stream().anyMatch(borders.between()::contains)) {
      return contacts;
    }
    return gathered(contactsIn, own).stream().map(contacts::get).toList();
  }

  private List<Contact> contactsOf(Part device) {
    return circuit.branchesOf(device.name()).stream()
        .filter(Contact.class::isInstance)
        .map(Contact.class::cast)
        .toList();
  }

  private Set<Integer> gathered(Map<Integer, List<Integer>> in, List<Contact> own) {
    Set<Integer> indices = new TreeSet<>();
    for (Contact contact : own) {
      for (int number : numbersOf(List.of(contact.from(), contact.to()))) {
        indices.addAll(in.getOrDefault(number, List.of()));
      }
    }
    return indices;
  }

  /**
   * Whatever can have a say in whether a load is fed: what moves the contacts of its regions, and
   * for a relay among them what moves those before its coil, and so on.
   */
  synchronized Set<Actuator> actuatorsOf(String load) {
    Set<Actuator> known = actuators.get(load);
    if (known == null) {
      known = look(load);
      actuators.put(load, known);
    }
    return known;
  }

  private Set<Actuator> look(String load) {
    Closure closure = new Closure();
    closure.enter(circuit.outerNodesOf(load));
    closure.followAll();
    return closure.found;
  }

  /** Grows from the pins of a load until nothing is added. */
  private final class Closure {
    private final Set<Actuator> found = new LinkedHashSet<>();
    private final Set<Integer> seen = new HashSet<>();
    private final Deque<Integer> open = new ArrayDeque<>();
    private boolean between;

    void enter(Collection<Node> nodes) {
      Set<Integer> of = numbersOf(nodes);
      of.stream().filter(seen::add).forEach(open::add);
      boolean meets =
          of.stream().anyMatch(meetBetween::contains)
              || nodes.stream().anyMatch(borders.sides()::containsKey);
      if (meets && !between) {
        between = true;
        borders.between().stream()
            .filter(Contact.class::isInstance)
            .forEach(b -> move(((Contact) b).actuator()));
      }
    }

    void followAll() {
      while (!open.isEmpty()) {
        for (int index : contactsIn.getOrDefault(open.remove(), List.of())) {
          move(contacts.get(index).actuator());
        }
      }
    }

    private void move(Actuator actuator) {
      if (found.add(actuator) && actuator.kind() == Actuator.Kind.COIL) {
        for (Branch branch : circuit.branchesOf(actuator.name())) {
          if (branch instanceof Coil) {
            enter(List.of(branch.from(), branch.to()));
          }
        }
      }
    }
  }
}
