package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.diagram.Unit.Port;

/** Which unit stands on which columns at which level, and how the conductors run. */
final class Plan {
  private final Fabric fabric;
  private final Map<Unit, Integer> levels;
  private final List<Column> columns = new ArrayList<>();
  private final Map<Unit, List<Column>> places = new LinkedHashMap<>();
  private final Map<Port, Integer> homes = new HashMap<>();
  private final Map<Joint, Route> routes = new LinkedHashMap<>();

  Plan(Fabric fabric, Map<Unit, Integer> levels) {
    this.fabric = fabric;
    this.levels = levels;
    for (Unit unit : fabric.units()) {
      unit.ports().forEach(p -> homes.put(p, home(p)));
    }
  }

  /**
   * The channel in which a port's conductors leave it: the one beside it, but for the common return
   * of several current paths, whose bar lies below them all.
   */
  private int home(Port port) {
    int beside = port.isTop() ? level(port.unit()) : level(port.unit()) + 1;
    if (port.isTop() || !fabric.isBar(port)) {
      return beside;
    }
    int returns = 0;
    int deepest = beside;
    for (Joint joint : fabric.at(port)) {
      Port other = joint.other(port);
      int level = level(other.unit());
      if (!other.isTop() && level > level(port.unit())) {
        returns++;
        deepest = Math.max(deepest, level + 1);
      } else if (other.unit().look().isBelow()) {
        deepest = Math.max(deepest, level);
      }
    }
    return 2 * returns >= fabric.at(port).size() ? deepest : beside;
  }

  Fabric fabric() {
    return fabric;
  }

  int level(Unit unit) {
    return levels.getOrDefault(unit, 0);
  }

  /** How many levels there are. */
  int depth() {
    return 1 + levels.values().stream().mapToInt(Integer::intValue).max().orElse(0);
  }

  /** The channel in which the conductors of a port leave it. */
  int channel(Port port) {
    return homes.getOrDefault(port, 0);
  }

  /** True if a port's bar lies further down than just below it. */
  boolean isFarBar(Port port) {
    return !port.isTop() && channel(port) > level(port.unit()) + 1;
  }

  List<Column> columns() {
    return columns;
  }

  Map<Unit, List<Column>> places() {
    return places;
  }

  boolean isPlaced(Unit unit) {
    return places.containsKey(unit);
  }

  List<Column> at(Unit unit) {
    return places.getOrDefault(unit, List.of());
  }

  Column column(Port port) {
    return at(port.unit()).get(port.slot());
  }

  Map<Joint, Route> routes() {
    return routes;
  }

  Optional<Route> route(Joint joint) {
    return Optional.ofNullable(routes.get(joint));
  }

  /** A new column behind another, or the nearest place after it that parts no unit. */
  Column freshAfter(Optional<Column> after) {
    int place = after.map(c -> c.position() + 1).orElse(0);
    while (isInsideUnit(place)) {
      place++;
    }
    Column fresh = new Column();
    columns.add(place, fresh);
    renumber();
    return fresh;
  }

  /** True if a column inserted here would part a unit. */
  boolean isInsideUnit(int place) {
    return places.values().stream()
        .anyMatch(c -> c.get(0).position() < place && c.get(c.size() - 1).position() >= place);
  }

  private void renumber() {
    for (int i = 0; i < columns.size(); i++) {
      columns.get(i).moveTo(i);
    }
  }
}
