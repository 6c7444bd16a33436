package org.coilwright.diagram;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import org.coilwright.diagram.Unit.Port;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;

/** Terminals that wires and clamps join, and how many units lie between one net and another. */
final class Nets {
  private final Map<Terminal, Integer> netOf = new HashMap<>();
  private final Map<Integer, Integer> parent = new HashMap<>();
  private final List<Unit> units;

  Nets(List<Unit> units, List<Wire> wires) {
    this.units = units;
    for (Unit unit : units) {
      for (Port port : unit.ports()) {
        netOf.computeIfAbsent(
            port.terminal(),
            t -> {
              parent.put(netOf.size(), netOf.size());
              return netOf.size();
            });
      }
      if (unit.look() == Look.CLAMPS) {
        unit.ports().forEach(p -> join(p.terminal(), unit.ports().get(0).terminal()));
      }
    }
    wires.forEach(w -> join(w.from().value(), w.to().value()));
  }

  private void join(Terminal a, Terminal b) {
    int first = of(a);
    int second = of(b);
    parent.put(Math.max(first, second), Math.min(first, second));
  }

  /** The number of a terminal's net. */
  int of(Terminal terminal) {
    int net = netOf.getOrDefault(terminal, 0);
    while (true) {
      int above = parent.getOrDefault(net, net);
      if (above == net) {
        return net;
      }
      net = above;
    }
  }

  int of(Port port) {
    return of(port.terminal());
  }

  /** The two ends of each pole of a unit. */
  static List<Port[]> poles(Unit unit) {
    List<Port[]> poles = new ArrayList<>();
    if (unit.look() == Look.CLAMPS || unit.look().isLoad() || unit.look() == Look.MAINS) {
      return poles;
    }
    List<Port> tops = unit.tops();
    for (Port bottom : unit.bottoms()) {
      tops.stream()
          .filter(t -> t.slot() == bottom.slot() || tops.size() == 1)
          .findFirst()
          .ifPresent(t -> poles.add(new Port[] {t, bottom}));
    }
    if (unit.bottoms().size() == 1 && tops.size() > 1) {
      poles.clear();
      tops.forEach(t -> poles.add(new Port[] {t, unit.bottoms().get(0)}));
    }
    return poles;
  }

  /**
   * How many units lie between some nets and each other net.
   *
   * @param through which units count as a way
   * @param barred nets at which a way ends
   */
  Map<Integer, Integer> distances(Set<Integer> from, Predicate<Unit> through, Set<Integer> barred) {
    Map<Integer, Integer> distance = new HashMap<>();
    Deque<Integer> next = new ArrayDeque<>();
    Map<Integer, Set<Integer>> ways = new HashMap<>();
    for (Unit unit : units) {
      if (through.test(unit)) {
        for (Port[] pole : poles(unit)) {
          ways.computeIfAbsent(of(pole[0]), n -> new HashSet<>()).add(of(pole[1]));
          ways.computeIfAbsent(of(pole[1]), n -> new HashSet<>()).add(of(pole[0]));
        }
      }
    }
    for (int net : from) {
      distance.put(net, 0);
      next.add(net);
    }
    while (!next.isEmpty()) {
      int net = next.remove();
      int far = distance.getOrDefault(net, 0);
      for (int other : ways.getOrDefault(net, Set.of())) {
        if (!distance.containsKey(other)) {
          distance.put(other, far + 1);
          if (!barred.contains(other)) {
            next.add(other);
          }
        }
      }
    }
    return distance;
  }
}
