package org.coilwright.solve;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit.Island;
import org.coilwright.circuit.Node;
import org.jspecify.annotations.Nullable;

/** A part of an island that known potentials keep apart from the rest. */
final class Zone {
  final int number;
  final Island island;
  final Reference reference;
  final List<Element> elements = new ArrayList<>();
  final List<Node> nodes = new ArrayList<>();
  private final Map<Node, Integer> index = new HashMap<>();
  private final Map<Branch, Element> elementOf = new LinkedHashMap<>();
  private final List<Element> loads = new ArrayList<>();
  private final Map<String, Element> coils = new HashMap<>();
  private final Set<Source> sources = new LinkedHashSet<>();
  private final Map<Key, ZoneFlow> solved = new HashMap<>();
  private final Set<Branch> branches = new HashSet<>();

  /** Volts that circuits on the same feed can take from it, or add, at most. */
  final double sag;

  private boolean unsettled;
  private double[] zeros = {};

  Zone(int number, Island island, Reference reference, double sag) {
    this.sag = sag;
    this.number = number;
    this.island = island;
    this.reference = reference;
  }

  void add(Branch branch, Elements worth, Alteration alteration) {
    branches.add(branch);
    int from = node(branch.from());
    int to = node(branch.to());
    if (alteration.gone().contains(branch)) {
      return;
    }
    Element element = worth.of(branch, elements.size(), from, to);
    if (alteration.bridged().contains(branch)) {
      element = Elements.bridged(element);
    }
    elements.add(element);
    elementOf.put(branch, element);
    if (element.kind() == Element.Kind.LOAD) {
      loads.add(element);
    }
    if (element.kind() == Element.Kind.SOURCE && branch instanceof Source source) {
      sources.add(source);
    }
    if (element.kind() == Element.Kind.COIL) {
      coils.put(branch.part(), element);
      worth.builtInDiode(element, elements.size()).ifPresent(elements::add);
    }
  }

  private int node(Node node) {
    return index.computeIfAbsent(
        node,
        n -> {
          nodes.add(n);
          reference.way(n).forEach(leg -> sources.add(leg.source()));
          return nodes.size() - 1;
        });
  }

  /** How many branches lie in it, those that are gone included. */
  int branches() {
    return branches.size();
  }

  /** True if a branch lies in it, even one that is gone. */
  boolean holds(Branch branch) {
    return branches.contains(branch);
  }

  /** Its loads' elements. */
  List<Element> loads() {
    return loads;
  }

  /** The sources whose voltage is felt in this zone. */
  Set<Source> sources() {
    return sources;
  }

  Optional<Element> element(Branch branch) {
    return Optional.ofNullable(elementOf.get(branch));
  }

  /** A relay's coil, if it is here and whole. */
  Optional<Element> coil(String relay) {
    return Optional.ofNullable(coils.get(relay));
  }

  /** The number of a node in this zone, or -1. */
  int indexOf(Node node) {
    return index.getOrDefault(node, -1);
  }

  /** What a solution depends on: the corner and the zone's own variables. */
  private record Key(Corner corner, BitSet bits) {
    // written out: what the compiler makes of a record is put together at run time, at each start
    @Override
    public boolean equals(@Nullable Object other) {
      return other instanceof Key that && corner.equals(that.corner) && bits.equals(that.bits);
    }

    @Override
    public int hashCode() {
      return 31 * corner.hashCode() + bits.hashCode();
    }
  }

  /** Solved with every source at its own voltage; computed once for each set of positions. */
  ZoneFlow solve(Corner corner, Settings settings) {
    BitSet own = new BitSet();
    for (Element element : elements) {
      if (element.variable() >= 0 && settings.is(element.variable())) {
        own.set(element.number());
      }
    }
    int live = elements.size();
    for (Source source : sources) {
      own.set(live++, settings.isLive(source));
    }
    return solved.computeIfAbsent(
        new Key(corner, own),
        k -> noted(new ZoneSolver(this, corner, settings, e -> true).solve()).lean(zeros()));
  }

  /** As many zeros as there are nodes or elements, for solutions that hold nothing else. */
  private double[] zeros() {
    int most = Math.max(nodes.size(), elements.size());
    if (zeros.length != most) {
      zeros = new double[most];
    }
    return zeros;
  }

  /** Hands a solution on, and remembers if its one-way elements do not agree with themselves. */
  ZoneFlow noted(ZoneFlow flow) {
    unsettled |= !flow.consistent();
    return flow;
  }

  /** True if some solution so far does not agree with itself. */
  boolean isUnsettled() {
    return unsettled;
  }

  /** Designations of the parts that are or hold its one-way elements. */
  List<String> oneWays() {
    return elements.stream()
        .filter(e -> e.kind() == Element.Kind.DIODE || ZoneSolver.isClamp(e))
        .map(e -> e.branch().part())
        .distinct()
        .toList();
  }

  /** How many different corners and sets of positions were solved. */
  int solutions() {
    return solved.size();
  }

  /** Solved afresh, without the elements that {@code present} refuses. */
  ZoneFlow solve(Corner corner, Settings settings, Predicate<Element> present) {
    return new ZoneSolver(this, corner, settings, present).solve();
  }
}
