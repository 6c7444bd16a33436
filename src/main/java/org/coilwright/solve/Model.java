package org.coilwright.solve;

import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit.Island;

/** Islands, or parts of islands, with whatever is altered in them, cut into zones and explored. */
final class Model {
  final Setup setup;
  final Alteration alteration;
  final Grid grid;
  final Map<Zone, Group> groupOf;
  final Map<Group, Exploration> explorations = new LinkedHashMap<>();
  private final Map<Source, Set<Group>> fedBy = new HashMap<>();

  /** The circuit as drawn. */
  static Model of(Setup setup) {
    return apart(setup, setup.circuit.islands(), Alteration.NONE);
  }

  /** Some islands, altered, with everything solved afresh. */
  static Model apart(Setup setup, List<Island> islands, Alteration alteration) {
    return new Model(setup, islands, alteration, Optional.empty());
  }

  /** Some islands, altered otherwise; what does not differ is taken over as it was solved here. */
  Model altered(List<Island> islands, Alteration otherwise) {
    return new Model(setup, islands, otherwise, Optional.of(grid));
  }

  private Model(Setup setup, List<Island> islands, Alteration alteration, Optional<Grid> base) {
    this.setup = setup;
    this.alteration = alteration;
    Set<Branch> kept = new HashSet<>(base.map(Grid::kept).orElse(Set.of()));
    Grid cut = new Grid(setup, islands, alteration, base, kept);
    List<Group> groups = Groups.of(cut);
    while (keepsWhole(cut, Groups.byZone(groups), kept) || feels(cut, groups, kept)) {
      cut = new Grid(setup, islands, alteration, base, Set.copyOf(kept));
      groups = Groups.of(cut);
    }
    this.grid = cut;
    this.groupOf = Groups.byZone(groups);
    groupOf.forEach(
        (zone, group) ->
            zone.sources()
                .forEach(s -> fedBy.computeIfAbsent(s, k -> new LinkedHashSet<>()).add(group)));
  }

  /**
   * True if circuits were parted that are one group all the same: then nothing is won, and together
   * they are solved exactly.
   */
  private static boolean keepsWhole(Grid cut, Map<Zone, Group> groupOf, Set<Branch> kept) {
    boolean again = false;
    for (Bundle bundle : cut.bundles()) {
      long moving =
          bundle.circuits.stream()
              .map(groupOf::get)
              .filter(g -> g != null && !g.variables.isEmpty())
              .distinct()
              .count();
      if (moving < 2) {
        kept.addAll(bundle.branches);
        again = true;
      }
    }
    return again;
  }

  /** Explores; true if circuits were parted that may move one another's armatures. */
  private boolean feels(Grid cut, List<Group> groups, Set<Branch> kept) {
    explorations.clear();
    groups.forEach(g -> explorations.put(g, new Exploration(g)));
    boolean again = false;
    for (Group group : groups) {
      for (Zone zone : group.delicate) {
        Optional<Bundle> bundle = cut.bundleOf(zone);
        bundle.ifPresent(b -> kept.addAll(b.branches));
        again |= bundle.isPresent();
      }
    }
    return again;
  }

  /** True if what was left out of it, on the same feed, may move an armature. */
  boolean isDelicate() {
    return explorations.keySet().stream().anyMatch(g -> !g.delicate.isEmpty());
  }

  /** What was found out about some groups, in their order. */
  List<Exploration> explorationsOf(Collection<Group> groups) {
    return groups.stream().flatMap(g -> Optional.ofNullable(explorations.get(g)).stream()).toList();
  }

  /** The groups that have a variable. */
  List<Group> movedBy(int variable) {
    return explorations.keySet().stream().filter(g -> g.slot(variable) >= 0).toList();
  }

  /** The groups that feel a source's voltage. */
  Set<Group> fedBy(Source source) {
    return fedBy.getOrDefault(source, Set.of());
  }

  /** The groups that a branch lies in: several for a feed that circuits share. */
  Set<Group> groupsOf(Branch branch) {
    Set<Group> groups = new LinkedHashSet<>();
    grid.zonesOf(branch).forEach(z -> Optional.ofNullable(groupOf.get(z)).ifPresent(groups::add));
    return groups;
  }
}
