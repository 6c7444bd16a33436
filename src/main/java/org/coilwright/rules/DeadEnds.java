package org.coilwright.rules;

import java.util.List;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;

/** Where the ways from a pin back towards the mains end in nothing: there a wire is missing. */
final class DeadEnds {
  private DeadEnds() {}

  /** Their names, all contacts taken as closed; empty if every way goes on. */
  static List<String> of(Circuit circuit, Node pin) {
    return circuit.reach(pin, Feeding::isWay).stream()
        .filter(node -> !node.equals(pin))
        .filter(node -> circuit.branchesAt(node).size() == 1)
        .map(Node::name)
        .sorted()
        .toList();
  }

  /** {@code : its way back ends at F1.1}, or nothing. */
  static String inWords(List<String> ends) {
    return ends.isEmpty() ? "" : ": its way back ends at " + String.join(" and ", ends);
  }
}
