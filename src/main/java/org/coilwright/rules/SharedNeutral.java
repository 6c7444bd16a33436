package org.coilwright.rules;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;

/**
 * Two breakers whose neutral poles lie side by side, because the neutrals of their circuits are
 * joined behind them. What a residual-current device makes of that is for its own rule to say.
 */
record SharedNeutral(Study study, Contact one, Contact other, List<Branch> between) {
  /** Each pole with the first before it that lies beside it, in the order of the netlist. */
  static List<SharedNeutral> all(Study study) {
    Circuit circuit = study.circuit();
    List<Contact> poles =
        circuit.branches(Contact.class).stream()
            .filter(Contact::neutralPole)
            .filter(c -> circuit.netlist().parts().get(c.part()) instanceof Part.Protective)
            .toList();
    // what is joined without them, once for all: two poles side by side join the same two
    Map<Node, Integer> joined = new HashMap<>();
    Map<Set<Integer>, List<Contact>> between = new LinkedHashMap<>();
    for (Contact pole : poles) {
      int from = number(circuit, pole.from(), joined);
      int to = number(circuit, pole.to(), joined);
      if (from != to && !isResidual(circuit, pole)) {
        between.computeIfAbsent(Set.of(from, to), k -> new ArrayList<>()).add(pole);
      }
    }
    List<SharedNeutral> found = new ArrayList<>();
    for (List<Contact> side : between.values()) {
      for (Contact other : side) {
        side.subList(0, side.indexOf(other)).stream()
            .flatMap(
                one ->
                    between(study, one, other)
                        .map(way -> new SharedNeutral(study, one, other, way))
                        .stream())
            .findFirst()
            .ifPresent(found::add);
      }
    }
    return found;
  }

  private static int number(Circuit circuit, Node node, Map<Node, Integer> joined) {
    if (!joined.containsKey(node)) {
      int next = joined.size();
      circuit.reach(node, b -> leads(circuit, b)).forEach(n -> joined.put(n, next));
    }
    return joined.getOrDefault(node, 0);
  }

  private static boolean isResidual(Circuit circuit, Contact pole) {
    return circuit.netlist().parts().get(pole.part()) instanceof Part.Protective device
        && device.isRcd();
  }

  /** What can be reached from the two ends of a pole without any other neutral pole. */
  private record Parallel(Set<Node> from, Set<Node> to) {
    Parallel(Circuit circuit, Contact pole, Predicate<? super Branch> admitted) {
      this(
          circuit.reach(pole.from(), b -> leads(circuit, b) && admitted.test(b)),
          circuit.reach(pole.to(), b -> leads(circuit, b) && admitted.test(b)));
    }

    /** True if another pole joins the same two, and this one is not bridged. */
    boolean holds(Contact other) {
      boolean along = from.contains(other.from()) && to.contains(other.to());
      boolean against = from.contains(other.to()) && to.contains(other.from());
      boolean apart = from.stream().noneMatch(to::contains);
      return apart && (along || against);
    }
  }

  private static boolean leads(Circuit circuit, Branch branch) {
    return branch instanceof Conductor
        || (branch instanceof Contact contact
            && !(contact.neutralPole()
                && circuit.netlist().parts().get(contact.part()) instanceof Part.Protective));
  }

  /** The way that joins them behind, in the first position of the contacts that has one. */
  private static Optional<List<Branch>> between(Study study, Contact one, Contact other) {
    Circuit circuit = study.circuit();
    for (State state : study.states()) {
      Predicate<Branch> closed = Feeding.closed(study, state);
      Parallel then = new Parallel(circuit, one, closed);
      if (then.holds(other)) {
        Feeding open = Feeding.of(study, b -> !b.equals(one) && !b.equals(other) && closed.test(b));
        boolean fromMains = MainsConsumer.isOnMains(open, one.from());
        Node behind = fromMains ? one.to() : one.from();
        Node far = then.to().contains(other.to()) == fromMains ? other.to() : other.from();
        return circuit
            .path(behind, far, b -> leads(circuit, b) && closed.test(b))
            .map(Path::branches);
      }
    }
    return Optional.empty();
  }

  /** What there is to say of the pair. */
  Outcome outcome(RuleFacts facts, Basis basis) {
    Circuit circuit = study.circuit();
    Subject.Finding finding =
        new Subject(facts, Where.part(circuit, one.part()), List.of(one.part(), other.part()))
            .violated(
                "the neutrals of %s and %s are joined behind them"
                    .formatted(one.part(), other.part()),
                "%s and %s lie side by side: what comes through one device returns in part through the other, whose neutral may then carry more than it is made for."
                    .formatted(one.id(), other.id()),
                "not the only way of its neutral")
            .alsoAt(Where.part(circuit, other.part()), "nor of its own")
            .lighter(Weight.FIX);
    between.forEach(b -> finding.alsoAt(b.mark(), "joins the two"));
    return finding.todo(
        "Take them apart: each circuit returns through the device that its line comes from.",
        basis);
  }
}
