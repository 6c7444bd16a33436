package org.coilwright.solve;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Node;

/**
 * The nodes of an island whose potential is known: those that ideal sources join to one another.
 * The way from the first of them to each other is a list of sources, each with a sign.
 */
final class Reference {
  /** A source on the way, +1 if it is passed from minus to plus. */
  record Leg(Source source, int sign) {}

  private final Map<Node, List<Leg>> ways = new HashMap<>();
  private final List<Source> held;

  Reference(Map<Node, List<Leg>> ways, List<Source> held) {
    this.ways.putAll(ways);
    this.held = List.copyOf(held);
  }

  boolean isKnown(Node node) {
    return ways.containsKey(node);
  }

  /** The sources that lead to a node; none for the first node, or for one that is not known. */
  List<Leg> way(Node node) {
    return ways.getOrDefault(node, List.of());
  }

  boolean holds(Source source) {
    return held.contains(source);
  }

  List<Source> held() {
    return held;
  }
}
