package org.coilwright.rules;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;

/**
 * Where wires and contacts lead from a pin, all contacts taken as closed, in words that somebody
 * can follow from clamp to clamp: a wire in the wrong place is one of those named.
 */
final class WayBack {
  /** So many of the points that a way without a source leads to are named, and its ends. */
  private static final int NEAREST = 2 * 2 * 2;

  private WayBack() {}

  /**
   * {@code E1.1 hangs on G0.N: G0.N → F0.N1 → E1.1.}, or the points that it leads to if none is a
   * source's; begins with a blank, and is empty for a source's own pin.
   */
  static String of(Circuit circuit, Node pin) {
    return of(circuit, pin, Feeding::isWay);
  }

  /** The same through whatever {@code leads} admits. */
  static String of(Circuit circuit, Node pin, Predicate<? super Branch> leads) {
    Set<Node> reached = circuit.reach(pin, leads);
    Optional<Path> fed =
        reached.stream()
            .filter(n -> circuit.branchesAt(n).stream().anyMatch(Source.class::isInstance))
            .findFirst()
            .flatMap(n -> circuit.path(n, pin, leads));
    if (fed.isPresent()) {
      Path way = fed.get();
      return way.branches().isEmpty()
          ? ""
          : " %s hangs on %s: %s.".formatted(pin, way.nodes().get(0), way.inWords());
    }
    List<String> over =
        Stream.concat(
                reached.stream().filter(n -> !n.equals(pin)).limit(NEAREST).map(Node::name),
                DeadEnds.of(circuit, pin, leads).stream().limit(2))
            .distinct()
            .toList();
    return over.isEmpty()
        ? " No wire leads on from %s.".formatted(pin)
        : " From %s it goes to %s, and from none of them to a source."
            .formatted(pin, String.join(", ", over));
  }

  /** Where both of two pins hang on one point, from where their ways part. */
  static String both(Circuit circuit, Node from, Node one, Node other) {
    List<Path> ways =
        List.of(one, other).stream()
            .flatMap(pin -> circuit.path(from, pin, Feeding::isWay).stream())
            .toList();
    return Parting.of(ways)
        .map(
            node ->
                " The ways part at %s: %s."
                    .formatted(
                        node,
                        ways.stream()
                            .map(way -> Parting.from(node, way).inWords())
                            .collect(Collectors.joining("; "))))
        .orElse("");
  }

  /** By which way a line still reaches a load while some contacts are open; or nothing. */
  static String kept(
      Circuit circuit, Feeding.Side line, String load, Predicate<? super Branch> open) {
    return circuit.outerNodesOf(load).stream()
        .flatMap(
            pin -> circuit.path(line.node(), pin, b -> Feeding.isWay(b) && !open.test(b)).stream())
        .findFirst()
        .map(Path::inWords)
        .orElse("");
  }

  /** The longest way from the mains to some wires that no device guards; or nothing. */
  static String bare(Stretch stretch) {
    return stretch.wires().stream()
        .flatMap(wire -> Stream.of(wire.from(), wire.to()))
        .flatMap(end -> stretch.guards().bareWay(end).stream())
        .max(Comparator.comparingInt(way -> way.branches().size()))
        .map(way -> ": " + way.inWords())
        .orElse("");
  }
}
