package org.coilwright.solve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Branch.Source;

/** Joins zones that act on one another. */
final class Groups {
  private final Grid grid;
  private final Map<String, CoilModel> coils;
  private final int[] parent;

  private Groups(Grid grid, Map<String, CoilModel> coils) {
    this.grid = grid;
    this.coils = coils;
    this.parent = new int[grid.zones.size() + grid.variables.size()];
    Arrays.setAll(parent, i -> i);
  }

  static List<Group> of(Grid grid, Map<String, CoilModel> coils) {
    return new Groups(grid, coils).build();
  }

  /** A variable's place behind the zones. */
  private int place(int variable) {
    return grid.zones.size() + variable;
  }

  private List<Group> build() {
    Variables variables = grid.variables;
    for (Zone zone : grid.zones) {
      for (Element element : zone.elements) {
        if (element.variable() >= 0) {
          join(zone.number, place(element.variable()));
        }
      }
      for (Source source : zone.reference.held()) {
        if (variables.ofSource(source) >= 0) {
          join(zone.number, place(variables.ofSource(source)));
        }
      }
    }
    variables
        .inputs()
        .forEach(
            (source, input) ->
                grid.zoneOf(input)
                    .ifPresent(zone -> join(zone.number, place(variables.ofSource(source)))));
    grid.circuit.branches(Source.class).stream()
        .filter(s -> s.limitAmps().isPresent())
        .forEach(this::joinAtLimit);
    Map<Integer, Group> groups = new LinkedHashMap<>();
    for (int variable = 0; variable < variables.size(); variable++) {
      group(groups, place(variable)).add(variable);
    }
    for (Zone zone : grid.zones) {
      group(groups, zone.number).add(zone);
    }
    List<Group> list = new ArrayList<>(groups.values());
    for (Group group : list) {
      for (int slot = 0; slot < group.variables.size(); slot++) {
        variables.setSlot(group.variables.get(slot), slot);
      }
      grid.circuit.branches(Source.class).stream()
          .filter(s -> s.limitAmps().isPresent())
          .filter(s -> group.zones.stream().anyMatch(z -> feeds(s, z)))
          .forEach(group.limited::add);
    }
    return list;
  }

  private Group group(Map<Integer, Group> groups, int place) {
    return groups.computeIfAbsent(root(place), r -> new Group(grid, coils));
  }

  static boolean feeds(Source source, Zone zone) {
    return zone.reference.holds(source) || zone.element(source).isPresent();
  }

  /**
   * Zones on a source that they cannot drive to its limit do not feel one another; the rest do.
   * What they can draw at most is the sum of what each coil and load would draw at the source's
   * highest voltage.
   */
  private void joinAtLimit(Source source) {
    List<Zone> fed = grid.zones.stream().filter(z -> feeds(source, z)).toList();
    double volts = grid.sources.volts(source, Level.HIGH);
    double most =
        fed.stream()
            .flatMap(z -> z.elements.stream())
            .filter(e -> e.isConsumer() || e.kind() == Element.Kind.PASSIVE)
            .mapToDouble(e -> mostAmps(e, volts))
            .sum();
    if (most > source.limitAmps().orElse(Double.POSITIVE_INFINITY)) {
      for (Zone zone : fed) {
        join(fed.get(0).number, zone.number);
      }
    }
  }

  private static double mostAmps(Element element, double volts) {
    Optional<Impedance> z = element.on().at(Level.LOW, true, true);
    return z.map(i -> i.size() > 0 ? volts / i.size() : Double.POSITIVE_INFINITY).orElse(0.0);
  }

  private void join(int one, int other) {
    int a = root(one);
    int b = root(other);
    parent[Math.max(a, b)] = Math.min(a, b);
  }

  private int root(int start) {
    int place = start;
    while (parent[place] != place) {
      parent[place] = parent[parent[place]];
      place = parent[place];
    }
    return place;
  }

  /** The group a branch's zone belongs to. */
  static Map<Zone, Group> byZone(List<Group> groups) {
    Map<Zone, Group> map = new LinkedHashMap<>();
    groups.forEach(g -> g.zones.forEach(z -> map.put(z, g)));
    return map;
  }
}
