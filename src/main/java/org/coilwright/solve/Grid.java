package org.coilwright.solve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit.Island;
import org.coilwright.circuit.Node;

/**
 * The circuit cut into zones: a zone is what hangs together when the terminals of ideal sources are
 * taken out, for nothing on one side of a known potential can be felt on the other. Zones are
 * solved apart.
 */
final class Grid {
  final Setup setup;
  final Alteration alteration;
  final List<Zone> zones = new ArrayList<>();
  private final Map<Branch, Zone> zoneOf = new HashMap<>();
  private final Optional<Grid> base;
  private int nextNumber;

  /**
   * Cuts islands into zones.
   *
   * @param base one that is altered otherwise: zones in which nothing differs are taken from it,
   *     with all that was solved there
   */
  Grid(Setup setup, List<Island> islands, Alteration alteration, Optional<Grid> base) {
    this.setup = setup;
    this.alteration = alteration;
    this.base = base;
    this.nextNumber = base.map(b -> b.nextNumber).orElse(0);
    for (Island island : islands) {
      if (!island.branches().isEmpty()) {
        cut(island);
      }
    }
  }

  private void cut(Island island) {
    Reference reference = setup.sources.reference(island, alteration);
    Map<Node, Integer> index = new HashMap<>();
    for (Node node : island.nodes()) {
      index.put(node, index.size());
    }
    int[] parent = new int[index.size()];
    Arrays.setAll(parent, i -> i);
    List<Branch> inside = new ArrayList<>();
    for (Branch branch : island.branches()) {
      if (branch instanceof Source source
          && (reference.holds(source) || alteration.gone().contains(source))) {
        continue;
      }
      inside.add(branch);
      if (!reference.isKnown(branch.from()) && !reference.isKnown(branch.to())) {
        parent[root(parent, at(index, branch.from()))] = root(parent, at(index, branch.to()));
      }
    }
    List<List<Branch>> parts = new ArrayList<>();
    Map<Integer, List<Branch>> byRoot = new HashMap<>();
    for (Branch branch : inside) {
      boolean fromKnown = reference.isKnown(branch.from());
      Node free = fromKnown ? branch.to() : branch.from();
      if (reference.isKnown(free)) {
        parts.add(List.of(branch));
      } else {
        byRoot
            .computeIfAbsent(
                root(parent, at(index, free)),
                r -> {
                  List<Branch> part = new ArrayList<>();
                  parts.add(part);
                  return part;
                })
            .add(branch);
      }
    }
    for (List<Branch> part : parts) {
      Zone zone = like(part, reference).orElseGet(() -> newZone(part, island, reference));
      zones.add(zone);
      part.forEach(branch -> zoneOf.put(branch, zone));
    }
  }

  private Zone newZone(List<Branch> branches, Island island, Reference reference) {
    Zone zone = new Zone(nextNumber++, island, reference);
    branches.forEach(branch -> zone.add(branch, setup.elements, alteration));
    return zone;
  }

  /** The zone of the base that holds just these branches, if nothing in it is altered otherwise. */
  private Optional<Zone> like(List<Branch> branches, Reference reference) {
    return base.flatMap(b -> b.zoneOf(branches.get(0)))
        .filter(zone -> zone.branches() == branches.size())
        .filter(zone -> branches.stream().allMatch(b -> isAsInBase(b, zone)))
        .filter(zone -> zone.sources().stream().allMatch(this::isAsInBase))
        .filter(zone -> zone.reference.isLike(reference));
  }

  private boolean isAsInBase(Branch branch, Zone zone) {
    return base.filter(
            b ->
                b.zoneOf(branch).filter(z -> z == zone).isPresent()
                    && b.alteration.gone().contains(branch) == alteration.gone().contains(branch)
                    && b.alteration.bridged().contains(branch)
                        == alteration.bridged().contains(branch))
        .isPresent();
  }

  private boolean isAsInBase(Source source) {
    return base.filter(
            b -> b.alteration.atTop().contains(source) == alteration.atTop().contains(source))
        .isPresent();
  }

  private static int at(Map<Node, Integer> index, Node node) {
    return index.getOrDefault(node, 0);
  }

  private static int root(int[] parent, int start) {
    int node = start;
    while (parent[node] != node) {
      parent[node] = parent[parent[node]];
      node = parent[node];
    }
    return node;
  }

  /** The zone a branch lies in; empty for a source that a reference holds. */
  Optional<Zone> zoneOf(Branch branch) {
    return Optional.ofNullable(zoneOf.get(branch));
  }
}
