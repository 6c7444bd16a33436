package org.coilwright.solve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit.Island;
import org.coilwright.circuit.Node;

/**
 * The circuit cut into zones: a zone is what hangs together when the terminals of ideal sources are
 * taken out, for nothing on one side of a known potential can be felt on the other. Circuits that
 * share no more than a stiff feed are zones of their own, each with its feed. Zones are solved
 * apart.
 */
final class Grid {
  final Setup setup;
  final Alteration alteration;
  final List<Zone> zones = new ArrayList<>();
  private final Map<Branch, Zone> zoneOf = new HashMap<>();

  /** The zones of a feed that several circuits hang on; the first is in {@link #zoneOf} too. */
  private final Map<Branch, List<Zone>> shared = new HashMap<>();

  private final Map<Zone, Bundle> bundles = new LinkedHashMap<>();

  /** Branches of what is not parted. */
  private final Set<Branch> kept;

  private final Optional<Grid> base;
  private int nextNumber;

  /**
   * Cuts islands into zones.
   *
   * @param base one that is altered otherwise: zones in which nothing differs are taken from it,
   *     with all that was solved there
   * @param kept branches of what is not parted although only a feed holds it together
   */
  Grid(
      Setup setup,
      List<Island> islands,
      Alteration alteration,
      Optional<Grid> base,
      Set<Branch> kept) {
    this.kept = kept;
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
      part(part, island, reference);
    }
  }

  private void part(List<Branch> part, Island island, Reference reference) {
    List<Feeds.Share> shares =
        !setup.parts || kept.contains(part.get(0))
            ? List.of(new Feeds.Share(part, 0))
            : Feeds.of(setup, part, reference, alteration);
    boolean less = lacks(part);
    List<Zone> circuits = new ArrayList<>();
    for (Feeds.Share share : shares) {
      List<Branch> own = share.branches();
      double sag = Math.max(share.sag(), less ? sagBefore(own) : 0);
      Zone zone =
          like(own, reference)
              .orElseGet(() -> zone(new Feeds.Share(own, sag), nextNumber++, island, reference));
      circuits.add(zone);
      for (Branch branch : own) {
        Zone other = zoneOf.putIfAbsent(branch, zone);
        if (other != null) {
          shared.computeIfAbsent(branch, b -> new ArrayList<>(List.of(other))).add(zone);
        }
      }
    }
    zones.addAll(circuits);
    if (circuits.size() > 1) {
      Bundle bundle =
          new Bundle(part, circuits, () -> zone(new Feeds.Share(part, 0), -1, island, reference));
      circuits.forEach(zone -> bundles.put(zone, bundle));
    }
  }

  /** True if circuits hang on the same feed in the base that are not here. */
  private boolean lacks(List<Branch> part) {
    Set<Branch> here = new HashSet<>(part);
    return base.stream()
        .flatMap(b -> part.stream().flatMap(b::bundlesOf))
        .distinct()
        .anyMatch(bundle -> !here.containsAll(bundle.branches));
  }

  private Stream<Bundle> bundlesOf(Branch branch) {
    return zoneOf(branch).flatMap(this::bundleOf).stream();
  }

  /** What circuits that are not here can take from the feed of these branches. */
  private double sagBefore(List<Branch> own) {
    return base.stream()
        .flatMap(b -> own.stream().filter(o -> !b.isShared(o)).flatMap(o -> b.zoneOf(o).stream()))
        .mapToDouble(zone -> zone.sag)
        .max()
        .orElse(0);
  }

  private Zone zone(Feeds.Share share, int number, Island island, Reference reference) {
    Zone zone = new Zone(number, island, reference, share.sag());
    share.branches().forEach(branch -> zone.add(branch, setup.elements, alteration));
    return zone;
  }

  /** The zone of the base that holds just these branches, if nothing in it is altered otherwise. */
  private Optional<Zone> like(List<Branch> branches, Reference reference) {
    return base.stream()
        .flatMap(b -> b.zonesOf(branches.get(branches.size() - 1)).stream())
        .filter(zone -> zone.branches() == branches.size())
        .filter(zone -> branches.stream().allMatch(b -> isAsInBase(b, zone)))
        .filter(zone -> zone.sources().stream().allMatch(this::isAsInBase))
        .filter(zone -> zone.reference.isLike(reference))
        .findFirst();
  }

  private boolean isAsInBase(Branch branch, Zone zone) {
    return base.filter(
            b ->
                zone.holds(branch)
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

  /** The zones a branch lies in: several for a feed that circuits share, none for a held source. */
  List<Zone> zonesOf(Branch branch) {
    List<Zone> several = shared.get(branch);
    return several != null ? several : zoneOf(branch).stream().toList();
  }

  /** True for a feed that several circuits share. */
  boolean isShared(Branch branch) {
    return shared.containsKey(branch);
  }

  /** The circuits that hang on the same feed as a zone; empty if none does. */
  Optional<Bundle> bundleOf(Zone zone) {
    return Optional.ofNullable(bundles.get(zone));
  }

  /** Every set of circuits on a common feed, each once. */
  Set<Bundle> bundles() {
    return new LinkedHashSet<>(bundles.values());
  }

  /** Branches of what is not parted although only a feed holds it together. */
  Set<Branch> kept() {
    return kept;
  }
}
