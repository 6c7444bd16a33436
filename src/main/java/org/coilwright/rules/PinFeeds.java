package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;

/**
 * What hangs on each pin of a load: the sides of the sources that some of the wires, contacts and
 * diodes lead to it.
 *
 * @param byPin pins in their order; a pin that nothing reaches has an empty set
 */
record PinFeeds(Map<Node, Set<Side>> byPin) {
  /** What a side of a source is to a load. */
  enum Kind {
    LINE,
    NEUTRAL,
    PLUS,
    MINUS
  }

  /** One side of a source. */
  record Side(Node node, Kind kind) {
    @Override
    public String toString() {
      return node.name();
    }
  }

  /** The sides of every source, each once. */
  static Set<Side> sides(Circuit circuit) {
    Set<Side> sides = new LinkedHashSet<>();
    for (Source source : circuit.branches(Source.class)) {
      sides.add(new Side(source.to(), source.isDirect() ? Kind.PLUS : Kind.LINE));
      sides.add(new Side(source.from(), source.isDirect() ? Kind.MINUS : Kind.NEUTRAL));
    }
    return sides;
  }

  /** What admitted wires, contacts and diodes lead to a load. */
  static PinFeeds of(Circuit circuit, String load, Predicate<? super Branch> admitted) {
    Map<Node, Set<Side>> byPin = new LinkedHashMap<>();
    circuit.outerNodesOf(load).forEach(pin -> byPin.put(pin, new LinkedHashSet<>()));
    for (Side side : sides(circuit)) {
      Set<Node> reached =
          circuit.reach(side.node(), branch -> Circuit.isWay(branch) && admitted.test(branch));
      byPin.forEach(
          (pin, found) -> {
            if (reached.contains(pin)) {
              found.add(side);
            }
          });
    }
    return new PinFeeds(byPin);
  }

  /** The shortest admitted way from a side to each pin that has one. */
  List<Path> ways(Circuit circuit, Predicate<? super Branch> admitted) {
    List<Path> ways = new ArrayList<>();
    byPin.forEach(
        (pin, sides) ->
            sides.stream()
                .flatMap(
                    side ->
                        circuit
                            .path(side.node(), pin, b -> Circuit.isWay(b) && admitted.test(b))
                            .stream())
                .findFirst()
                .ifPresent(ways::add));
    return ways;
  }

  /** True if two pins hang on two different sides, so that current flows. */
  boolean areComplete() {
    List<Set<Side>> pins = new ArrayList<>(byPin.values());
    for (int one = 0; one < pins.size(); one++) {
      for (int other = one + 1; other < pins.size(); other++) {
        Set<Side> both = new LinkedHashSet<>(pins.get(one));
        both.addAll(pins.get(other));
        if (!pins.get(one).isEmpty() && !pins.get(other).isEmpty() && both.size() > 1) {
          return true;
        }
      }
    }
    return false;
  }

  /** Every side of a kind that reaches any pin. */
  Set<Side> all(Kind kind) {
    return byPin.values().stream()
        .flatMap(Set::stream)
        .filter(side -> side.kind() == kind)
        .collect(Collectors.toCollection(LinkedHashSet::new));
  }

  /** The first pin that a side of this kind reaches, if there is one. */
  Optional<Node> pinOn(Kind kind) {
    return byPin.entrySet().stream()
        .filter(pin -> pin.getValue().stream().anyMatch(side -> side.kind() == kind))
        .map(Map.Entry::getKey)
        .findFirst();
  }

  /** True if the mains reach it at all. */
  boolean areMains() {
    return !all(Kind.LINE).isEmpty() || !all(Kind.NEUTRAL).isEmpty();
  }
}
