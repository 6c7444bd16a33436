package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Where an area that is too large is parted: where few conductors go over, about in the middle. */
final class Cut {
  /** What a unit more on one side than on the other weighs against a conductor that goes over. */
  private static final double UNEVEN = 0.3;

  private final AreaLayout layout;

  private Cut(AreaLayout layout) {
    this.layout = layout;
  }

  /** The units of the first part; at least one, and not all. */
  static List<Unit> of(AreaLayout layout) {
    Cut cut = new Cut(layout);
    Plan plan = layout.plan();
    Comparator<Unit> across = Comparator.comparingInt(u -> plan.at(u).get(0).position());
    Comparator<Unit> down = Comparator.comparingInt(plan::level);
    List<Unit> byColumn = cut.sorted(across.thenComparing(down));
    List<Unit> byLevel = cut.sorted(down.thenComparing(across));
    List<Unit> best = List.of();
    double least = Double.MAX_VALUE;
    for (List<Unit> order : List.of(byColumn, byLevel)) {
      for (int size = 1; size < order.size(); size++) {
        List<Unit> first = order.subList(0, size);
        double weight = cut.over(first) + UNEVEN * Math.abs(order.size() - 2 * size);
        if (weight < least) {
          least = weight;
          best = first;
        }
      }
    }
    return List.copyOf(best);
  }

  private List<Unit> sorted(Comparator<Unit> by) {
    List<Unit> units = new ArrayList<>(layout.area().units());
    units.sort(by);
    return units;
  }

  private long over(List<Unit> first) {
    Set<Unit> units = new HashSet<>(first);
    Set<Unit> own = new HashSet<>(layout.area().units());
    return layout.fabric().joints().stream()
        .filter(j -> own.contains(j.a().unit()) && own.contains(j.b().unit()))
        .filter(j -> units.contains(j.a().unit()) != units.contains(j.b().unit()))
        .count();
  }
}
