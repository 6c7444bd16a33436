package org.coilwright.solve;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Node;
import org.jspecify.annotations.Nullable;

/**
 * The nodes of an island whose potential is known: those that ideal sources join to one another.
 * The way from the first of them to each other is a list of sources, each with a sign.
 */
final class Reference {
  /** A source on the way, +1 if it is passed from minus to plus. */
  record Leg(Source source, int sign) {
    // written out: what the compiler makes of a record is put together at run time, at each start
    @Override
    public boolean equals(@Nullable Object other) {
      return other instanceof Leg that && sign == that.sign && source.equals(that.source);
    }

    @Override
    public int hashCode() {
      return sign * source.hashCode();
    }
  }

  private final Map<Node, List<Leg>> ways = new HashMap<>();
  private final Set<Source> held;
  private final List<Source> sources;
  private final boolean mains;
  private final boolean direct;

  Reference(Map<Node, List<Leg>> ways, List<Source> held, List<Source> sources) {
    this.ways.putAll(ways);
    this.held = Set.copyOf(held);
    this.sources = List.copyOf(sources);
    this.mains = sources.stream().anyMatch(s -> !s.isDirect());
    this.direct = sources.stream().anyMatch(Source::isDirect);
  }

  /** Every source of the island, whether held or not, in the order of the netlist. */
  List<Source> sources() {
    return sources;
  }

  /** True if an alternating source feeds the island. */
  boolean hasMains() {
    return mains;
  }

  /** True if a direct source feeds it. */
  boolean hasDirect() {
    return direct;
  }

  boolean isKnown(Node node) {
    return ways.containsKey(node);
  }

  /** True if another says the same of every node, by the same sources. */
  boolean isLike(Reference other) {
    return sources.equals(other.sources) && held.equals(other.held) && ways.equals(other.ways);
  }

  /** The sources that lead to a node; none for the first node, or for one that is not known. */
  List<Leg> way(Node node) {
    return ways.getOrDefault(node, List.of());
  }

  boolean holds(Source source) {
    return held.contains(source);
  }
}
