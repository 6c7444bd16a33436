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

  Grid(Setup setup, List<Island> islands, Alteration alteration) {
    this.setup = setup;
    this.alteration = alteration;
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
    Map<Integer, Zone> byRoot = new HashMap<>();
    for (Branch branch : inside) {
      boolean fromKnown = reference.isKnown(branch.from());
      Node free = fromKnown ? branch.to() : branch.from();
      Zone zone =
          reference.isKnown(free)
              ? newZone(island, reference)
              : byRoot.computeIfAbsent(
                  root(parent, at(index, free)), r -> newZone(island, reference));
      zone.add(branch, setup.elements, alteration);
      zoneOf.put(branch, zone);
    }
  }

  private Zone newZone(Island island, Reference reference) {
    Zone zone = new Zone(zones.size(), island, reference);
    zones.add(zone);
    return zone;
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
