package org.coilwright.rules;

import java.util.List;
import java.util.Set;
import java.util.function.Predicate;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Terminal;

/** Where the ways from a pin back towards the mains end in nothing: there a wire is missing. */
final class DeadEnds {
  /** More names than this no one walks to. */
  private static final int MOST = 2;

  private DeadEnds() {}

  /**
   * Their names, all contacts taken as closed; empty if every way goes on. Where none ends in
   * nothing and no source is met, those at which a coil, a load or electronics begin instead.
   */
  static List<String> of(Circuit circuit, Node pin) {
    return of(circuit, pin, Feeding::isWay);
  }

  /** The same through whatever {@code leads} admits. */
  static List<String> of(Circuit circuit, Node pin, Predicate<? super Branch> leads) {
    Set<Node> reached = circuit.reach(pin, leads);
    List<String> bare = named(reached, n -> !n.equals(pin) && circuit.branchesAt(n).size() == 1);
    boolean fed =
        reached.stream()
            .flatMap(n -> circuit.branchesAt(n).stream())
            .anyMatch(Source.class::isInstance);
    return fed || !bare.isEmpty()
        ? bare
        : named(
            reached,
            n -> !n.equals(pin) && circuit.branchesAt(n).stream().filter(leads).count() == 1);
  }

  /** Where a line stops at one of some devices, so that it does not get to what they feed. */
  static List<String> of(Circuit circuit, Feeding.Side line, Set<String> devices) {
    return named(
        circuit.reach(line.node(), Feeding::isWay),
        n ->
            circuit.branchesAt(n).size() == 1
                && n.terminals().stream().map(Terminal::part).anyMatch(devices::contains));
  }

  private static List<String> named(Set<Node> nodes, Predicate<Node> which) {
    return nodes.stream().filter(which).map(Node::name).sorted().toList();
  }

  /** {@code F1.1 and F1.2}; of many the first few. */
  static String listed(List<String> ends) {
    return ends.size() > MOST
        ? String.join(", ", ends.subList(0, MOST)) + " and elsewhere"
        : String.join(" and ", ends);
  }
}
