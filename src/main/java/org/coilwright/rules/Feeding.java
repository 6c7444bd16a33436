package org.coilwright.rules;

import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;
import org.jspecify.annotations.Nullable;

/**
 * How far each side of each source gets through wires and some of the contacts. Diodes are left
 * out: no load is fed through one, and one across a coil would join the line to the neutral.
 */
final class Feeding {
  private final Circuit circuit;
  private final Borders borders;
  private final Predicate<? super Branch> admitted;
  private final Map<Node, Set<Side>> known = new HashMap<>();

  private Feeding(Circuit circuit, Borders borders, Predicate<? super Branch> admitted) {
    this.circuit = circuit;
    this.borders = borders;
    this.admitted = admitted;
  }

  /** What a side of a source is to a load. */
  enum Kind {
    LINE,
    NEUTRAL,
    PLUS,
    MINUS
  }

  /** One side of a source. */
  record Side(Node node, Kind kind) {
    // written out: what the compiler makes of a record is put together at run time, at each start
    @Override
    public boolean equals(@Nullable Object other) {
      return this == other
          || (other instanceof Side that && kind == that.kind && node.equals(that.node));
    }

    @Override
    public int hashCode() {
      return node.hashCode();
    }

    @Override
    public String toString() {
      return node.name();
    }
  }

  /** Kept with the study. */
  private record Whole(Feeding feeding) {}

  /** With every contact closed; worked out once for the many rules that ask. */
  static Feeding whole(Study study) {
    return study.derived(Whole.class, s -> new Whole(of(s, branch -> true))).feeding();
  }

  /** With the contacts as a state has them. */
  static Feeding in(Study study, State state) {
    return of(study, closed(study, state));
  }

  /**
   * Through the wires and contacts that are admitted. Worked out from the node that is asked about
   * and kept for all that hangs together with it, so it costs what lies before the load.
   */
  static Feeding of(Study study, Predicate<? super Branch> admitted) {
    return new Feeding(study.circuit(), Borders.of(study), admitted);
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

  /** Wires and contacts. */
  static boolean isWay(Branch branch) {
    return branch instanceof Conductor || branch instanceof Contact;
  }

  /** True for all but a contact that a state has open. */
  static Predicate<Branch> closed(Study study, State state) {
    return b -> !(b instanceof Contact contact) || study.contact(contact, state).closed();
  }

  /** The sides that reach a node, in the order of the netlist. */
  synchronized Set<Side> at(Node node) {
    Set<Side> sides = known.get(node);
    return sides == null ? look(node) : sides;
  }

  private Set<Side> look(Node start) {
    Set<Node> inside = borders.inside(circuit, start, admitted);
    Set<Node> met = new LinkedHashSet<>();
    for (Node node : inside) {
      if (borders.sides().containsKey(node)) {
        met.add(node);
      }
    }
    Set<Side> sides = inOrder(borders.joined(circuit, met, admitted));
    for (Node node : inside) {
      // what lies beyond a border has been looked at from one side of it only
      if (node.equals(start) || !met.contains(node)) {
        known.put(node, sides);
      }
    }
    return sides;
  }

  private Set<Side> inOrder(Set<Node> nodes) {
    Set<Side> sides = new LinkedHashSet<>(2);
    nodes.stream()
        .flatMap(node -> borders.sides().getOrDefault(node, List.of()).stream())
        .sorted(Comparator.comparingInt(side -> borders.place(side)))
        .forEach(sides::add);
    return Collections.unmodifiableSet(sides);
  }

  /** What it leads to the pins of a load. */
  PinFeeds at(String load) {
    Map<Node, Set<Side>> byPin = new LinkedHashMap<>();
    for (Node pin : circuit.outerNodesOf(load)) {
      byPin.put(pin, at(pin));
    }
    return new PinFeeds(byPin);
  }
}
