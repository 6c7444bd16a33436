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
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.circuit.Routes;
import org.coilwright.netlist.Terminal;
import org.coilwright.rules.Feeding.Kind;
import org.coilwright.rules.Feeding.Side;

/**
 * What hangs on each pin of a load: the sides of the sources that a {@link Feeding} leads to it.
 *
 * @param byPin pins in their order; a pin that nothing reaches has an empty set
 */
record PinFeeds(Map<Node, Set<Side>> byPin) {
  /** The shortest admitted way from a side to each pin that has one. */
  List<Path> ways(Circuit circuit, Predicate<? super Branch> admitted) {
    List<Path> ways = new ArrayList<>();
    byPin.forEach(
        (pin, sides) ->
            sides.stream()
                .flatMap(
                    side ->
                        circuit
                            .way(side.node(), pin, b -> Feeding.isWay(b) && admitted.test(b))
                            .stream())
                .findFirst()
                .ifPresent(ways::add));
    return ways;
  }

  /** What is left of it where these contacts open; the ways are those that led to the pins. */
  PinFeeds without(List<Contact> contacts, Routes ways) {
    Map<Node, Set<Side>> left = new LinkedHashMap<>();
    byPin.forEach(
        (pin, sides) ->
            left.put(
                pin,
                sides.stream()
                    .filter(side -> ways.leadWithout(contacts, side.node(), pin))
                    .collect(Collectors.toCollection(LinkedHashSet::new))));
    return new PinFeeds(left);
  }

  /** The parts on the ways that lead to the pins of a load, and on those that end before them. */
  Set<String> devices(Circuit circuit, String load) {
    Set<Node> nodes = new LinkedHashSet<>();
    ways(circuit, branch -> true).forEach(way -> nodes.addAll(way.nodes()));
    free().forEach(pin -> nodes.addAll(circuit.reach(pin, Feeding::isWay)));
    return nodes.stream()
        .flatMap(node -> node.terminals().stream())
        .map(Terminal::part)
        .filter(part -> !part.equals(load))
        .collect(Collectors.toCollection(LinkedHashSet::new));
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

  /**
   * True if contacts can put a pin on one side or another, as for turning a motor round: then only
   * a state tells which.
   */
  boolean areAmbiguous() {
    return byPin.values().stream().anyMatch(sides -> sides.size() > 1);
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

  /** The pins that nothing reaches. */
  List<Node> free() {
    return byPin.entrySet().stream()
        .filter(pin -> pin.getValue().isEmpty())
        .map(Map.Entry::getKey)
        .toList();
  }

  /** True if the mains reach it at all. */
  boolean areMains() {
    return !all(Kind.LINE).isEmpty() || !all(Kind.NEUTRAL).isEmpty();
  }
}
