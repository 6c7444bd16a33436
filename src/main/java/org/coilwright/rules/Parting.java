package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Node;

/** Where two ways that begin alike part: up to there neither can be told from the other. */
final class Parting {
  private Parting() {}

  /** The last point that two ways have in common; empty unless there are two that have one. */
  static Optional<Node> of(List<Path> ways) {
    if (ways.size() != 2) {
      return Optional.empty();
    }
    List<Node> other = ways.get(1).nodes();
    return ways.get(0).nodes().stream().filter(other::contains).reduce((earlier, late) -> late);
  }

  /** What is left of a way behind a point of it. */
  static Path from(Node node, Path way) {
    int at = way.nodes().indexOf(node);
    return new Path(
        way.nodes().subList(at, way.nodes().size()),
        way.branches().subList(at, way.branches().size()));
  }

  /** What each way takes next. */
  static List<Branch> after(Node node, List<Path> ways) {
    return ways.stream()
        .filter(way -> way.nodes().indexOf(node) < way.branches().size())
        .map(way -> way.branches().get(way.nodes().indexOf(node)))
        .distinct()
        .toList();
  }
}
