package org.coilwright.rules;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.rules.Feeding.Side;
import org.coilwright.solve.Study;

/**
 * Where the sides of the sources lie, and what can join one side to another. Whoever walks from a
 * load towards the sources may stop at a side and go on from there by what joins it to others
 * alone: the many circuits that hang on the same side need not be entered.
 *
 * @param sides the sides at a node, in the order of the netlist
 * @param places where each side stands in that order
 * @param between wires and contacts by which a way may lead from side to side; often none
 */
record Borders(Map<Node, List<Side>> sides, Map<Side, Integer> places, Set<Branch> between) {

  /** Of a study; worked out once. */
  static Borders of(Study study) {
    return study.derived(Borders.class, s -> workedOut(s.circuit()));
  }

  private static Borders workedOut(Circuit circuit) {
    Map<Node, Set<Side>> at = new LinkedHashMap<>();
    Map<Side, Integer> places = new HashMap<>();
    for (Side side : Feeding.sides(circuit)) {
      places.put(side, places.size());
      at.computeIfAbsent(side.node(), n -> new LinkedHashSet<>(2)).add(side);
    }
    Map<Node, List<Side>> sides = new LinkedHashMap<>();
    at.forEach((node, those) -> sides.put(node, List.copyOf(those)));
    return new Borders(sides, places, between(circuit, sides.keySet()));
  }

  /** What is left where dead ends are cut back to the sides, as far as they hang together. */
  private static Set<Branch> between(Circuit circuit, Set<Node> sides) {
    Set<Node> shared = new HashSet<>();
    Set<Node> seen = new HashSet<>();
    for (Node side : sides) {
      if (!seen.contains(side)) {
        Set<Node> joined = circuit.reach(side, Feeding::isWay);
        seen.addAll(joined);
        if (joined.stream().filter(sides::contains).limit(2).count() > 1) {
          shared.addAll(joined);
        }
      }
    }
    Map<Node, Integer> ends = new HashMap<>();
    Set<Branch> left = new HashSet<>();
    for (Branch branch : circuit.branches()) {
      if (shared.contains(branch.from())
          && Feeding.isWay(branch)
          && !branch.from().equals(branch.to())) {
        left.add(branch);
        ends.merge(branch.from(), 1, Integer::sum);
        ends.merge(branch.to(), 1, Integer::sum);
      }
    }
    Deque<Node> open = new ArrayDeque<>(ends.keySet());
    while (!open.isEmpty()) {
      Node node = open.remove();
      if (ends.getOrDefault(node, 0) == 1 && !sides.contains(node)) {
        for (Branch branch : circuit.branchesAt(node)) {
          if (left.remove(branch)) {
            ends.computeIfPresent(node, (n, count) -> count - 1);
            ends.computeIfPresent(branch.other(node), (n, count) -> count - 1);
            open.add(branch.other(node));
          }
        }
      }
    }
    return left;
  }

  /** Where a side stands in the order of the netlist. */
  int place(Side side) {
    return places.getOrDefault(side, places.size());
  }

  /** What lies on this side of all borders: a node and what admitted branches join to it. */
  Set<Node> inside(Circuit circuit, Node start, Predicate<? super Branch> admitted) {
    Set<Node> seen = new LinkedHashSet<>(List.of(start));
    Deque<Node> open = new ArrayDeque<>(seen);
    while (!open.isEmpty()) {
      Node node = open.remove();
      if (sides.containsKey(node)) {
        continue;
      }
      for (Branch branch : circuit.branchesAt(node)) {
        if (Feeding.isWay(branch) && !seen.contains(branch.other(node)) && admitted.test(branch)) {
          seen.add(branch.other(node));
          open.add(branch.other(node));
        }
      }
    }
    return seen;
  }

  /** Every node that has a side and that admitted branches join to one of these. */
  Set<Node> joined(Circuit circuit, Set<Node> start, Predicate<? super Branch> admitted) {
    Set<Node> seen = new LinkedHashSet<>(start);
    if (!between.isEmpty()) {
      Deque<Node> open = new ArrayDeque<>(seen);
      while (!open.isEmpty()) {
        Node node = open.remove();
        for (Branch branch : circuit.branchesAt(node)) {
          Node next = branch.other(node);
          if (!seen.contains(next) && between.contains(branch) && admitted.test(branch)) {
            seen.add(next);
            open.add(next);
          }
        }
      }
      seen.retainAll(sides.keySet());
    }
    return seen;
  }
}
