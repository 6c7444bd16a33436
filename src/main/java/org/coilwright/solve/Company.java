package org.coilwright.solve;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.ToDoubleFunction;

/**
 * How the circuits on a common feed stand when that is worst for one of them. Through a stiff feed
 * ({@link Feeds#STIFF}) what each does to it adds up but for the square of what they do, so each is
 * put, one after the other and until nothing changes, as it harms most while the rest stay.
 */
final class Company {
  /** Currents that differ by less are the same, A. */
  private static final double SAME = 1e-9;

  /** Rounds after which it is left as it is; two do, where what circuits do adds up. */
  private static final int MOST_ROUNDS = 4;

  private final Model model;
  private final Map<Bundle, Map<Group, List<BitSet>>> known = new HashMap<>();

  Company(Model model) {
    this.model = model;
  }

  /**
   * All circuits of a bundle, those of one group as they are and the others at their worst.
   *
   * @param own the group that is asked about, as it stands
   * @param harm what is made as large as can be
   */
  ZoneInState worst(Bundle bundle, Situation own, ToDoubleFunction<ZoneInState> harm) {
    Map<Group, List<BitSet>> ways = known.computeIfAbsent(bundle, this::ways);
    BitSet on = new BitSet();
    ways.forEach((group, states) -> put(on, group, states.get(0)));
    put(on, own.group, own.bits);
    ZoneInState worst = ZoneInState.together(bundle.together(), own, (BitSet) on.clone());
    double most = harm.applyAsDouble(worst);
    boolean changed = true;
    for (int round = 0; changed && round < MOST_ROUNDS; round++) {
      changed = false;
      for (Map.Entry<Group, List<BitSet>> other : ways.entrySet()) {
        if (other.getKey() == own.group) {
          continue;
        }
        BitSet best = (BitSet) on.clone();
        for (BitSet bits : other.getValue()) {
          put(on, other.getKey(), bits);
          ZoneInState here = ZoneInState.together(bundle.together(), own, (BitSet) on.clone());
          double harms = harm.applyAsDouble(here);
          if (harms > most) {
            most = harms;
            worst = here;
            best = (BitSet) on.clone();
            changed = true;
          }
        }
        on.clear();
        on.or(best);
      }
    }
    return worst;
  }

  static void put(BitSet on, Group group, BitSet bits) {
    for (int slot = 0; slot < group.variables.size(); slot++) {
      on.set(group.variables.get(slot), bits.get(slot));
    }
  }

  private Map<Group, List<BitSet>> ways(Bundle bundle) {
    Map<Group, List<BitSet>> ways = new LinkedHashMap<>();
    for (Zone zone : bundle.circuits) {
      Group group = model.groupOf.get(zone);
      if (group != null && !ways.containsKey(group)) {
        ways.put(group, ways(bundle, group));
      }
    }
    return ways;
  }

  /** The states of a group that differ in what it draws from the feed; at rest first. */
  private List<BitSet> ways(Bundle bundle, Group group) {
    Exploration exploration = Objects.requireNonNull(model.explorations.get(group));
    Set<List<Long>> seen = new LinkedHashSet<>();
    List<BitSet> ways = new ArrayList<>();
    for (BitSet moved : exploration.order()) {
      for (BitSet steady : exploration.steady.getOrDefault(moved, List.of())) {
        Situation situation = group.situation(steady);
        if (seen.add(drawn(bundle, situation))) {
          ways.add(situation.bits);
        }
      }
    }
    return ways.isEmpty() ? List.of(exploration.atRest()) : ways;
  }

  private List<Long> drawn(Bundle bundle, Situation situation) {
    List<Long> drawn = new ArrayList<>();
    for (Zone zone : bundle.circuits) {
      if (situation.group.holds(zone)) {
        for (Corner corner : List.of(Corner.NOMINAL, Corner.PICK_UP)) {
          ZoneFlow flow = situation.flow(zone, corner);
          for (Element element : zone.elements) {
            if (model.grid.isShared(element.branch())) {
              drawn.add(Math.round(flow.direct().iRe[element.number()] / SAME));
              drawn.add(Math.round(flow.alternating().iRe[element.number()] / SAME));
              drawn.add(Math.round(flow.alternating().iIm[element.number()] / SAME));
            }
          }
        }
      }
    }
    return drawn;
  }
}
