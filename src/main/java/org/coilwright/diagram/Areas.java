package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Circuit;
import org.coilwright.diagram.Unit.Port;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Written;

/**
 * Parts the units into the power circuit and the control circuits, and turns each the right way up.
 */
final class Areas {
  private static final String POWER = "power";
  private static final String NOT_WIRED = "not wired";
  private static final String KEEP_FREE = "keep free";

  private final Circuit circuit;
  private final List<Unit> units;
  private final Nets nets;
  private final Diagram.Words words;
  private final Set<Terminal> wired = new HashSet<>();

  Areas(Circuit circuit, List<Unit> units, Diagram.Words words) {
    this.circuit = circuit;
    this.words = words;
    this.units = units;
    this.nets = new Nets(units, circuit.netlist().wires());
    circuit
        .netlist()
        .wires()
        .forEach(
            w -> {
              wired.add(w.from().value());
              wired.add(w.to().value());
            });
  }

  /** The areas in the order in which they are read. Spare contacts of relays are in none. */
  List<Area> areas() {
    Set<Unit> power = power();
    turnPower(power);
    turnControl(power);
    Map<String, List<Unit>> byArea = new LinkedHashMap<>();
    Map<String, String> titles = new HashMap<>();
    byArea.put(POWER, new ArrayList<>(power));
    titles.put(POWER, words.of("diagram.power"));
    List<Unit> reserved = new ArrayList<>();
    for (Unit unit : units) {
      if (power.contains(unit) || isSpare(unit)) {
        continue;
      }
      if (!isWired(unit)) {
        reserved.add(unit);
        continue;
      }
      Circuit.Island island = island(unit);
      String key = island.hasMains() ? "mains" : "island " + island.number();
      byArea.computeIfAbsent(key, k -> new ArrayList<>()).add(unit);
      titles.putIfAbsent(key, title(island));
    }
    for (Unit unit : reserved) {
      boolean keep = unit.look() == Look.RESERVED;
      String key = keep ? KEEP_FREE : NOT_WIRED;
      byArea.computeIfAbsent(key, k -> new ArrayList<>()).add(unit);
      titles.put(key, words.of(keep ? "diagram.keep-free" : "diagram.not-wired"));
    }
    List<Area> areas = new ArrayList<>();
    byArea.forEach(
        (key, members) -> {
          if (!members.isEmpty()) {
            areas.add(
                new Area(titles.getOrDefault(key, ""), key.equals(POWER), List.copyOf(members)));
          }
        });
    return areas;
  }

  /** A contact that nobody has wired is named beneath its coil only. */
  boolean isSpare(Unit unit) {
    return circuit.netlist().parts().get(unit.part()) instanceof Part.Relay
        && unit.look() != Look.COIL
        && !isWired(unit);
  }

  private boolean isWired(Unit unit) {
    return unit.ports().stream().anyMatch(p -> wired.contains(p.terminal()));
  }

  private Circuit.Island island(Unit unit) {
    Terminal first =
        unit.ports().stream()
            .map(Port::terminal)
            .filter(wired::contains)
            .findFirst()
            .orElse(unit.ports().get(0).terminal());
    return circuit.islandOf(
        circuit.find(first).orElseThrow(() -> new IllegalStateException("no node at " + first)));
  }

  private String title(Circuit.Island island) {
    if (island.hasMains()) {
      return words.of("diagram.control-mains");
    }
    return island.sources().stream()
        .map(Branch.Source::output)
        .flatMap(Optional::stream)
        .map(
            o ->
                o.voltage().map(Written::text).orElse("=")
                    + o.isolation().map(i -> ", " + i.text()).orElse(""))
        .distinct()
        .collect(
            Collectors.collectingAndThen(
                Collectors.joining("; "),
                s ->
                    s.isEmpty()
                        ? words.of("diagram.control-not-fed")
                        : words.of("diagram.control", s)));
  }

  private Set<Unit> power() {
    Set<Unit> power = new java.util.LinkedHashSet<>();
    Set<Unit> ways = LoadWays.of(units, nets);
    Set<Integer> loadNets = new HashSet<>();
    for (Unit unit : units) {
      boolean fed = unit.look().isLoad() && isWired(unit);
      if (unit.look() == Look.MAINS || fed || ways.contains(unit)) {
        power.add(unit);
      }
      if (fed) {
        unit.ports().forEach(p -> loadNets.add(nets.of(p)));
      }
    }
    if (power.stream().noneMatch(u -> u.look().isLoad())) {
      return new java.util.LinkedHashSet<>();
    }
    Set<Integer> powerNets = new HashSet<>();
    power.forEach(u -> u.ports().forEach(p -> powerNets.add(nets.of(p))));
    for (Unit unit : units) {
      boolean clamp =
          unit.look() == Look.CLAMPS
              && unit.ports().stream().anyMatch(p -> powerNets.contains(nets.of(p)));
      boolean across =
          !unit.look().isWay()
              && !unit.look().isConsumer()
              && unit.look() != Look.SOURCE
              && unit.look() != Look.RESERVED
              && isWired(unit)
              && unit.ports().stream().allMatch(p -> loadNets.contains(nets.of(p)));
      if (clamp || across) {
        power.add(unit);
      }
    }
    // In the order of the netlist.
    Set<Unit> ordered = new java.util.LinkedHashSet<>(units);
    ordered.retainAll(power);
    return ordered;
  }

  /** In the power circuit the current comes from above in every conductor. */
  private void turnPower(Set<Unit> power) {
    Set<Integer> mains = netsOf(Look.MAINS, p -> true);
    Map<Integer, Integer> far = nets.distances(mains, u -> u.look().isWay(), Set.of());
    for (Unit unit : power) {
      if (unit.look().turns()) {
        int sum = 0;
        for (Port[] pole : Nets.poles(unit)) {
          sum +=
              Integer.signum(
                  far.getOrDefault(nets.of(pole[1]), 0) - far.getOrDefault(nets.of(pole[0]), 0));
        }
        unit.turn(sum < 0);
      }
    }
  }

  /** In a control circuit the live conductor is above, the neutral or minus below. */
  private void turnControl(Set<Unit> power) {
    Set<Integer> live = netsOf(Look.MAINS, p -> !isEarthed(p));
    live.addAll(netsOf(Look.SOURCE, Port::isTop));
    Set<Integer> back = netsOf(Look.MAINS, p -> p.terminal().pin().equals("N"));
    back.addAll(netsOf(Look.SOURCE, p -> !p.isTop()));
    Map<Integer, Integer> down =
        nets.distances(live, u -> u.look() != Look.SOURCE && u.look() != Look.RESERVED, back);
    Map<Integer, Integer> up =
        nets.distances(back, u -> u.look() != Look.SOURCE && u.look() != Look.RESERVED, live);
    for (Unit unit : units) {
      if (!power.contains(unit) && unit.look().turns()) {
        List<Port[]> poles = Nets.poles(unit);
        if (!poles.isEmpty()) {
          double above = part(nets.of(poles.get(0)[0]), down, up);
          double below = part(nets.of(poles.get(0)[1]), down, up);
          unit.turn(above > below);
        }
      }
    }
  }

  /** Where a net lies between live, 0, and back, 1. */
  private static double part(int net, Map<Integer, Integer> down, Map<Integer, Integer> up) {
    int fromLive = down.getOrDefault(net, -1);
    int toBack = up.getOrDefault(net, -1);
    if (fromLive < 0 && toBack < 0) {
      return 0.5;
    }
    if (toBack < 0) {
      return fromLive / 1000.0;
    }
    if (fromLive < 0) {
      return 1 - toBack / 1000.0;
    }
    return fromLive + toBack == 0 ? 0.5 : (double) fromLive / (fromLive + toBack);
  }

  private static boolean isEarthed(Port port) {
    return port.terminal().pin().equals("N") || port.terminal().pin().equals("PE");
  }

  private Set<Integer> netsOf(Look look, java.util.function.Predicate<Port> which) {
    return units.stream()
        .filter(u -> u.look() == look)
        .flatMap(u -> u.ports().stream())
        .filter(which)
        .map(nets::of)
        .collect(Collectors.toCollection(HashSet::new));
  }
}
