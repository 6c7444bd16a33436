package org.coilwright.solve;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import org.coilwright.circuit.Branch.Joint;
import org.coilwright.circuit.Branch.Source;

/** Joins zones that act on one another. */
final class Groups {
  private final Grid grid;
  private final Variables variables;
  private final Map<Source, List<Zone>> fed = new LinkedHashMap<>();

  /** Zones by their number; variables behind them, as negative numbers. */
  private final Map<Integer, Integer> parent = new HashMap<>();

  private Groups(Grid grid) {
    this.grid = grid;
    this.variables = grid.setup.variables;
  }

  static List<Group> of(Grid grid) {
    return new Groups(grid).build();
  }

  private static int place(int variable) {
    return -1 - variable;
  }

  private List<Group> build() {
    TreeSet<Integer> present = new TreeSet<>();
    for (Zone zone : grid.zones) {
      for (Element element : zone.elements) {
        depend(zone, element.variable(), present);
        if (element.kind() == Element.Kind.INPUT) {
          variables.fedBy(element.branch()).forEach(v -> depend(zone, v, present));
        }
      }
      for (Source source : zone.sources()) {
        depend(zone, variables.ofSource(source), present);
        fed.computeIfAbsent(source, s -> new ArrayList<>()).add(zone);
      }
    }
    fed.forEach(this::joinAtLimit);
    Map<Integer, Group> groups = new LinkedHashMap<>();
    for (Zone zone : grid.zones) {
      group(groups, zone.number).add(zone);
    }
    for (int variable : present) {
      group(groups, place(variable)).add(variable);
    }
    fed.forEach(
        (source, zones) -> {
          if (source.limitAmps().isPresent()) {
            zones.stream()
                .map(z -> group(groups, z.number))
                .distinct()
                .forEach(g -> g.limited.add(source));
          }
        });
    return List.copyOf(groups.values());
  }

  private void depend(Zone zone, int variable, Collection<Integer> present) {
    if (variable >= 0) {
      present.add(variable);
      join(zone.number, place(variable));
    }
  }

  private Group group(Map<Integer, Group> groups, int place) {
    return groups.computeIfAbsent(root(place), r -> new Group(grid));
  }

  /**
   * Zones on a source that they cannot drive to its limit do not feel one another; the rest do.
   * What they can draw at most is the sum of what each coil and load would draw at the source's
   * highest voltage.
   */
  private void joinAtLimit(Source source, List<Zone> zones) {
    double volts = grid.setup.sources.volts(source, Level.HIGH);
    double most =
        zones.stream()
            .flatMap(z -> z.elements.stream())
            .mapToDouble(e -> isAltered(e) ? Double.POSITIVE_INFINITY : mostAmps(e, volts))
            .sum();
    if (most > grid.alteration.limit(source).orElse(Double.POSITIVE_INFINITY)) {
      for (Zone zone : zones) {
        join(zones.get(0).number, zone.number);
      }
    }
  }

  /** A bridge or joint may short-circuit the source: then all that hangs on it feels it. */
  private boolean isAltered(Element element) {
    return grid.alteration.bridged().contains(element.branch())
        || element.branch() instanceof Joint;
  }

  /** What a group can draw from a source at most, A. */
  static double mostAmps(Group group, Source source) {
    double volts = group.grid.setup.sources.volts(source, Level.HIGH);
    return group.zones.stream()
        .filter(z -> z.sources().contains(source))
        .flatMap(z -> z.elements.stream())
        .mapToDouble(e -> mostAmps(e, volts))
        .sum();
  }

  private static double mostAmps(Element element, double volts) {
    if (!element.isConsumer() && element.kind() != Element.Kind.PASSIVE) {
      return 0;
    }
    Optional<Impedance> z = element.on().at(Level.LOW, true, true);
    return z.map(i -> i.size() > 0 ? volts / i.size() : Double.POSITIVE_INFINITY).orElse(0.0);
  }

  private void join(int one, int other) {
    int a = root(one);
    int b = root(other);
    if (a != b) {
      parent.put(Math.min(a, b), Math.max(a, b));
    }
  }

  private int root(int start) {
    int place = start;
    int above = parent.getOrDefault(place, place);
    while (above != place) {
      int further = parent.getOrDefault(above, above);
      parent.put(place, further);
      place = above;
      above = further;
    }
    return place;
  }

  /** The group of each zone. */
  static Map<Zone, Group> byZone(List<Group> groups) {
    Map<Zone, Group> map = new LinkedHashMap<>();
    groups.forEach(g -> g.zones.forEach(z -> map.put(z, g)));
    return map;
  }
}
