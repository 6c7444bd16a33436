package org.coilwright.circuit;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Branch.Path;

/** The shortest way from one place to every node there is a way to, all found in one pass. */
public final class ShortestWays {
  private final Map<Node, Optional<Branch>> cameBy;

  /**
   * Ways that were found breadth first.
   *
   * @param cameBy the last branch on the way to each node; none at the start
   */
  ShortestWays(Map<Node, Optional<Branch>> cameBy) {
    this.cameBy = cameBy;
  }

  /** The way to a node; empty if there is none. */
  public Optional<Path> to(Node to) {
    if (!cameBy.containsKey(to)) {
      return Optional.empty();
    }
    List<Node> way = new ArrayList<>(List.of(to));
    List<Branch> by = new ArrayList<>();
    Node node = to;
    Optional<Branch> step = cameBy.getOrDefault(node, Optional.empty());
    while (step.isPresent()) {
      Branch branch = step.get();
      by.add(branch);
      node = branch.other(node);
      way.add(node);
      step = cameBy.getOrDefault(node, Optional.empty());
    }
    Collections.reverse(way);
    Collections.reverse(by);
    return Optional.of(new Path(List.copyOf(way), List.copyOf(by)));
  }
}
