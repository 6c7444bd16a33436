package org.coilwright.solve;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Map;

/** Finds where the one-way elements of a zone do not agree with themselves. */
final class Unsettled {
  /** What the rules ask of coils, loads and supplies is read at these. */
  private static final List<Corner> READ_AT =
      List.of(Corner.NOMINAL, Corner.LOWEST, Corner.HIGHEST);

  private Unsettled() {}

  /**
   * Zones of a group whose one-way elements do not agree with themselves, each with the first
   * positions in which it shows.
   */
  static List<Trouble.NotSolved> in(Exploration exploration) {
    List<Trouble.NotSolved> unsolved = new ArrayList<>();
    Group group = exploration.group;
    for (Zone zone : group.zones) {
      List<String> diodes = zone.oneWays();
      if (diodes.isEmpty() || !zone.reference.hasDirect()) {
        continue;
      }
      Map<String, Boolean> first = Map.of();
      for (BitSet moved : exploration.order()) {
        for (BitSet bits : exploration.steady.getOrDefault(moved, List.of())) {
          Situation situation = group.situation(bits);
          boolean settled = READ_AT.stream().allMatch(c -> situation.flow(zone, c).consistent());
          if (!settled && first.isEmpty()) {
            first = Troubles.positions(exploration, moved);
          }
        }
      }
      if (zone.isUnsettled()) {
        unsolved.add(new Trouble.NotSolved(first, diodes));
      }
    }
    return unsolved;
  }
}
