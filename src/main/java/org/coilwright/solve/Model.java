package org.coilwright.solve;

import java.util.HashMap;
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
    this.grid = new Grid(setup, islands, alteration, base);
    List<Group> groups = Groups.of(grid);
    this.groupOf = Groups.byZone(groups);
    groups.forEach(g -> explorations.put(g, new Exploration(g)));
    groupOf.forEach(
        (zone, group) ->
            zone.sources()
                .forEach(s -> fedBy.computeIfAbsent(s, k -> new LinkedHashSet<>()).add(group)));
  }

  /** The groups that feel a source's voltage. */
  Set<Group> fedBy(Source source) {
    return fedBy.getOrDefault(source, Set.of());
  }

  /** The group that a branch lies in; empty for a source that a reference holds. */
  Optional<Group> groupOf(Branch branch) {
    return grid.zoneOf(branch).flatMap(z -> Optional.ofNullable(groupOf.get(z)));
  }
}
