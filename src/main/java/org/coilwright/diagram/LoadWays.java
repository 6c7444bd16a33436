package org.coilwright.diagram;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.coilwright.diagram.Unit.Port;

/**
 * Which contacts, poles and fuses a load's current can pass: those that lie in one block with the
 * mains at one end and the loads at the other (Tarjan's search for blocks).
 */
final class LoadWays {
  private static final int MAINS = -1;
  private static final int LOADS = -2;

  private final Map<Integer, List<Way>> ways = new HashMap<>();
  private final Map<Integer, Integer> found = new HashMap<>();
  private final Map<Integer, Integer> low = new HashMap<>();
  private final Deque<Way> open = new ArrayDeque<>();
  private final Set<Unit> carrying = new HashSet<>();
  private final Set<Integer> mains = new HashSet<>();
  private final Set<Integer> loads = new HashSet<>();

  /** Two are never equal. */
  private static final class Way {
    private final int from;
    private final int to;
    private final List<Unit> units;

    Way(int from, int to, List<Unit> units) {
      this.from = from;
      this.to = to;
      this.units = units;
    }
  }

  private LoadWays(List<Unit> units, Nets nets) {
    for (Unit unit : units) {
      for (Port port : unit.ports()) {
        boolean earth = port.terminal().pin().equals("PE");
        if (unit.look() == Look.MAINS && !earth) {
          mains.add(nets.of(port));
        } else if (unit.look().isLoad() && !earth) {
          loads.add(nets.of(port));
        }
      }
    }
    add(new Way(MAINS, LOADS, List.of()));
    for (Unit unit : units) {
      if (unit.look().isWay()) {
        for (Port[] pole : Nets.poles(unit)) {
          int above = nets.of(pole[0]);
          int below = nets.of(pole[1]);
          if (above != below && loads.contains(above) && loads.contains(below)) {
            carrying.add(unit); // between one load and what feeds another
          }
          add(new Way(end(nets.of(pole[0])), end(nets.of(pole[1])), List.of(unit)));
        }
      }
    }
  }

  /** Contacts, poles and fuses on a way from the mains to a load. */
  static Set<Unit> of(List<Unit> units, Nets nets) {
    LoadWays search = new LoadWays(units, nets);
    search.visit(MAINS, null);
    return search.carrying;
  }

  private int end(int net) {
    if (mains.contains(net)) {
      return MAINS;
    }
    return loads.contains(net) ? LOADS : net;
  }

  private void add(Way way) {
    if (way.from != way.to) {
      ways.computeIfAbsent(way.from, n -> new ArrayList<>()).add(way);
      ways.computeIfAbsent(way.to, n -> new ArrayList<>()).add(way);
    }
  }

  private void visit(int net, @org.jspecify.annotations.Nullable Way came) {
    int number = found.size() + 1;
    found.put(net, number);
    low.put(net, number);
    for (Way way : ways.getOrDefault(net, List.of())) {
      if (way == came) {
        continue;
      }
      int other = way.from == net ? way.to : way.from;
      Integer known = found.get(other);
      if (known == null) {
        open.push(way);
        visit(other, way);
        int below = Objects.requireNonNull(low.get(other));
        low.merge(net, below, Math::min);
        if (below >= number) {
          close(way);
        }
      } else if (known < number) {
        open.push(way);
        low.merge(net, known, Math::min);
      }
    }
  }

  /** A block is whole; it counts if the way outside, from the loads back to the mains, is in it. */
  private void close(Way last) {
    List<Way> block = new ArrayList<>();
    Way way;
    do {
      way = open.pop();
      block.add(way);
    } while (way != last);
    if (block.stream().anyMatch(w -> w.units.isEmpty())) {
      block.forEach(w -> carrying.addAll(w.units));
    }
  }
}
