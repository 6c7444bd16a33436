package org.coilwright.solve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Terminal;

/** What closed contacts, wires and forward diodes join in a zone, in one situation. */
final class Ways {
  private final ZoneFlow flow;
  private final int[] parent;

  private Ways(ZoneFlow flow, Predicate<Element> leads) {
    this.flow = flow;
    this.parent = new int[flow.zone().nodes.size()];
    Arrays.setAll(parent, i -> i);
    for (Element element : flow.zone().elements) {
      if (leads.test(element)) {
        parent[root(element.from())] = root(element.to());
      }
    }
  }

  /** Joined by what takes no work out of the current. */
  static Ways bare(ZoneFlow flow) {
    return new Ways(flow, e -> isBare(flow, e));
  }

  /** Joined also by resistors, lamps and snubbers. */
  static Ways withPassives(ZoneFlow flow) {
    return new Ways(
        flow,
        e ->
            isBare(flow, e)
                || ((e.kind() == Element.Kind.PASSIVE || e.kind() == Element.Kind.CONTACT)
                    && flow.amps(e) > 0));
  }

  /**
   * Wires, closed contacts, forward diodes; on alternating current every diode, half the time, but
   * for one that a direct voltage holds off throughout.
   */
  static boolean isBare(ZoneFlow flow, Element element) {
    return switch (element.kind()) {
      case WIRE -> true;
      case CONTACT -> flow.conducts().get(element.number());
      case DIODE -> flow.conducts().get(element.number()) || conductsHalfTheTime(flow, element);
      case COIL, LOAD, SOURCE, PASSIVE, INPUT -> false;
    };
  }

  private static boolean conductsHalfTheTime(ZoneFlow flow, Element diode) {
    Reference reference = flow.zone().reference;
    double peak = Math.sqrt(2) * flow.alternatingVolts(diode);
    return reference.hasMains()
        && (!reference.hasDirect() || peak > Math.max(0, -flow.directVolts(diode)));
  }

  private int root(int start) {
    int node = start;
    while (parent[node] != node) {
      parent[node] = parent[parent[node]];
      node = parent[node];
    }
    return node;
  }

  boolean joined(int one, int other) {
    return root(one) == root(other);
  }

  /** The sources whose terminal a node is joined to, the line or plus side first. */
  List<Source> sourcesAt(int node) {
    List<Source> sources = new ArrayList<>();
    for (boolean plus : new boolean[] {true, false}) {
      for (Source source : flow.zone().reference.sources()) {
        int terminal = flow.zone().indexOf(plus ? source.to() : source.from());
        if (terminal >= 0 && joined(terminal, node) && !sources.contains(source)) {
          sources.add(source);
        }
      }
    }
    return sources;
  }

  /** The lines, by their pin, that a node is joined to. */
  List<String> linesAt(int node) {
    return flow.zone().reference.sources().stream()
        .filter(s -> !s.isDirect())
        .filter(
            s -> {
              int terminal = flow.zone().indexOf(s.to());
              return terminal >= 0 && joined(terminal, node);
            })
        .map(s -> s.to().terminals().get(0).pin())
        .toList();
  }

  /**
   * Two source terminals that are joined: a short-circuit.
   *
   * @param throughOutput true if the output of a direct supply lies between
   */
  record Joined(Source source, Node one, Node other, boolean throughOutput) {}

  /**
   * Short-circuits: a source's own two terminals, a line and the protective conductor that the
   * mains joins to its neutral, or two lines. The mains are shorted as well where nothing lies
   * between but the output of a direct supply.
   */
  List<Joined> shorts() {
    List<Joined> shorts = shorts(false);
    Reference reference = flow.zone().reference;
    if (!shorts.isEmpty() || !reference.hasMains() || !reference.hasDirect()) {
      return shorts;
    }
    Ways through = bare(flow);
    outputs().forEach(s -> through.join(s.from(), s.to()));
    return through.shorts(true).stream().filter(s -> !s.source().isDirect()).toList();
  }

  private Stream<Source> outputs() {
    return flow.zone().reference.sources().stream().filter(Source::isDirect);
  }

  private void join(Node one, Node other) {
    int a = flow.zone().indexOf(one);
    int b = flow.zone().indexOf(other);
    if (a >= 0 && b >= 0) {
      parent[root(a)] = root(b);
    }
  }

  private List<Joined> shorts(boolean throughOutput) {
    List<Joined> shorts = new ArrayList<>();
    List<Source> sources = flow.zone().reference.sources();
    for (Source source : sources) {
      addIfJoined(shorts, source, source.from(), source.to(), throughOutput);
      if (!source.isDirect()) {
        for (Node node : flow.zone().nodes) {
          if (node.terminals().contains(new Terminal(source.part(), "PE"))) {
            addIfJoined(shorts, source, node, source.to(), throughOutput);
          }
        }
      }
    }
    for (int i = 0; i < sources.size(); i++) {
      for (int j = i + 1; j < sources.size(); j++) {
        Source one = sources.get(i);
        Source other = sources.get(j);
        if (!one.isDirect()
            && !other.isDirect()
            && one.phaseDegrees().orElse(0) != other.phaseDegrees().orElse(0)) {
          addIfJoined(shorts, one, one.to(), other.to(), throughOutput);
        }
      }
    }
    return shorts;
  }

  private void addIfJoined(
      List<Joined> shorts, Source source, Node one, Node other, boolean throughOutput) {
    int a = flow.zone().indexOf(one);
    int b = flow.zone().indexOf(other);
    if (a >= 0 && b >= 0 && joined(a, b)) {
      shorts.add(new Joined(source, one, other, throughOutput));
    }
  }

  /** A way from one to the other, of what leads in this situation; empty if there is none. */
  Optional<Branch.Path> path(Joined found, Circuit circuit) {
    Set<Branch> leading = new HashSet<>();
    for (Element element : flow.zone().elements) {
      if (isBare(flow, element)) {
        leading.add(element.branch());
      }
    }
    if (found.throughOutput()) {
      outputs().forEach(leading::add);
    }
    return circuit.path(found.one(), found.other(), leading::contains);
  }

  /** Ohms of a way, at nominal. */
  double ohms(Branch.Path path) {
    return path.branches().stream()
        .map(b -> flow.zone().element(b))
        .flatMap(Optional::stream)
        .map(e -> e.on().at(Level.NOMINAL, true, false))
        .flatMap(Optional::stream)
        .mapToDouble(Impedance::size)
        .sum();
  }
}
