package org.coilwright.solve;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.coilwright.circuit.Branch.LoadElement;

/**
 * What the loads of some groups take in every set of positions of their independent contacts.
 * Positions are kept as the numbers of the contacts that are operated, so that tables of different
 * models can be laid side by side.
 */
final class WorkTable {
  /** Most positions of groups that do not act on one another, combined. */
  private static final int MOST = 1 << Exploration.MOST_CONTACTS;

  /** The contacts the table has a column for, ascending. */
  final List<Integer> columns;

  /** Operated contacts to what the loads do, once for each steady state there. */
  final Map<BitSet, List<Work>> rows = new LinkedHashMap<>();

  /** Operated contacts in which the mains is short-circuited: its protection opens. */
  final Set<BitSet> tripped = new HashSet<>();

  private final BitSet mask = new BitSet();

  /** False if some group, or all together, have too many contacts. */
  final boolean complete;

  private WorkTable(List<Integer> columns, boolean complete) {
    this.columns = columns;
    columns.forEach(mask::set);
    this.complete = complete;
  }

  /**
   * What loads do in one steady state.
   *
   * @param watts by load
   * @param lines that reach a load's pins, by load
   */
  record Work(Map<String, Double> watts, Map<String, Set<String>> lines) {
    double watts(String load) {
      return watts.getOrDefault(load, 0.0);
    }

    Set<String> lines(String load) {
      return lines.getOrDefault(load, Set.of());
    }

    private Work with(Work other) {
      Map<String, Double> sum = new HashMap<>(watts);
      other.watts.forEach((load, more) -> sum.merge(load, more, Double::sum));
      Map<String, Set<String>> all = new HashMap<>(lines);
      other.lines.forEach((load, more) -> all.merge(load, more, WorkTable::union));
      return new Work(sum, all);
    }
  }

  private static Set<String> union(Set<String> one, Set<String> other) {
    Set<String> both = new TreeSet<>(one);
    both.addAll(other);
    return both;
  }

  /** The table of these explorations together. */
  static WorkTable of(Collection<Exploration> explorations) {
    TreeSet<Integer> columns = new TreeSet<>();
    boolean complete = true;
    long combinations = 1;
    for (Exploration exploration : explorations) {
      columns.addAll(exploration.group.variables.subList(0, exploration.group.independents()));
      combinations *=
          1L << Math.min(Exploration.MOST_CONTACTS + 1, exploration.group.independents());
      complete &= exploration.complete && combinations <= MOST;
    }
    WorkTable table = new WorkTable(List.copyOf(columns), complete);
    if (complete) {
      table.rows.put(new BitSet(), List.of(new Work(Map.of(), Map.of())));
      explorations.forEach(table::multiply);
    }
    return table;
  }

  private void multiply(Exploration exploration) {
    Map<BitSet, List<Work>> before = new LinkedHashMap<>(rows);
    Set<BitSet> trippedBefore = Set.copyOf(tripped);
    rows.clear();
    tripped.clear();
    for (BitSet moved : exploration.order()) {
      List<Work> own = new ArrayList<>();
      for (BitSet steady : exploration.steady.getOrDefault(moved, List.of())) {
        own.add(work(exploration.group, steady));
      }
      boolean trips = trips(exploration, moved);
      BitSet here = operated(exploration, moved);
      before.forEach(
          (others, works) -> {
            BitSet operated = (BitSet) others.clone();
            operated.or(here);
            rows.put(
                operated, own.stream().flatMap(o -> works.stream().map(w -> w.with(o))).toList());
            if (trips || trippedBefore.contains(others)) {
              tripped.add(operated);
            }
          });
    }
  }

  /** True if the mains is short-circuited there; if nothing rests, with armatures out or in. */
  private static boolean trips(Exploration exploration, BitSet moved) {
    List<BitSet> states = exploration.steady.getOrDefault(moved, List.of());
    return (states.isEmpty() ? exploration.outAndIn(moved) : states)
        .stream().anyMatch(bits -> isMainsShorted(exploration.group, bits));
  }

  private static boolean isMainsShorted(Group group, BitSet bits) {
    Situation situation = group.situation(bits);
    return group.zones.stream()
        .filter(z -> z.reference.hasMains())
        .flatMap(z -> Ways.bare(situation.flow(z, Corner.NOMINAL)).shorts().stream())
        .anyMatch(s -> !s.source().isDirect());
  }

  private static BitSet operated(Exploration exploration, BitSet moved) {
    BitSet operated = new BitSet();
    Group group = exploration.group;
    for (int slot = 0; slot < group.independents(); slot++) {
      int variable = group.variables.get(slot);
      operated.set(variable, group.all.atRest(variable) != moved.get(slot));
    }
    return operated;
  }

  private static Work work(Group group, BitSet steady) {
    Map<String, Double> watts = new HashMap<>();
    Map<String, Set<String>> lines = new HashMap<>();
    Situation situation = group.situation(steady);
    for (Zone zone : group.zones) {
      if (zone.loads().isEmpty()) {
        continue;
      }
      ZoneFlow flow = situation.flow(zone, Corner.NOMINAL);
      Ways ways = Ways.bare(flow);
      for (Element element : zone.loads()) {
        boolean idle = flow.amps(element) < CoilReadings.NOTHING_AMPS;
        String load = element.branch().part();
        watts.merge(load, idle ? 0 : flow.watts(element), Double::sum);
        Set<String> reaching = new TreeSet<>(ways.linesAt(element.from()));
        reaching.addAll(ways.linesAt(element.to()));
        lines.merge(load, reaching, WorkTable::union);
      }
    }
    return new Work(watts, lines);
  }

  /** Rated power of the loads' elements in these groups, by load. */
  static Map<String, Double> rated(Collection<Exploration> explorations) {
    Map<String, Double> rated = new LinkedHashMap<>();
    for (Exploration exploration : explorations) {
      for (Zone zone : exploration.group.zones) {
        for (Element element : zone.loads()) {
          if (element.branch() instanceof LoadElement load) {
            rated.merge(load.part(), load.ratedWatts().orElse(0), Double::sum);
          }
        }
      }
    }
    return rated;
  }

  /** What every load does where these contacts are operated, whatever else the table knows of. */
  List<Work> at(BitSet operated) {
    return rows.getOrDefault(own(operated), List.of());
  }

  /** True if the protection of the mains opens there. */
  boolean isTripped(BitSet operated) {
    return tripped.contains(own(operated));
  }

  private BitSet own(BitSet operated) {
    BitSet own = (BitSet) operated.clone();
    own.and(mask);
    return own;
  }
}
