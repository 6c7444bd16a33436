package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.coilwright.diagram.Unit.Port;

/** How far down each unit stands: below everything from which its current comes. */
final class Levels {
  private final Fabric fabric;
  private final Map<Unit, Integer> levels = new HashMap<>();
  private final Set<Unit> open = new HashSet<>();

  private Levels(Fabric fabric) {
    this.fabric = fabric;
  }

  static Map<Unit, Integer> of(Fabric fabric) {
    Levels all = new Levels(fabric);
    fabric.units().forEach(all::level);
    all.besideWhatTheyBridge();
    all.loadsAtTheBottom();
    all.consumersInARow();
    all.references();
    return all.levels;
  }

  private int level(Unit unit) {
    Integer known = levels.get(unit);
    if (known != null) {
      return known;
    }
    if (!open.add(unit)) {
      return -1;
    }
    int level = 0;
    for (Unit above : above(unit)) {
      level = Math.max(level, level(above) + 1);
    }
    open.remove(unit);
    levels.put(unit, level);
    return level;
  }

  /** Units joined from their lower ends to an upper end of this one. */
  private List<Unit> above(Unit unit) {
    return joined(unit, unit.tops(), false);
  }

  private List<Unit> below(Unit unit) {
    return joined(unit, unit.bottoms(), true);
  }

  private List<Unit> joined(Unit unit, List<Port> ports, boolean otherTop) {
    List<Unit> joined = new ArrayList<>();
    for (Port port : ports) {
      for (Joint joint : fabric.at(port)) {
        Port other = joint.other(port);
        if (other.isTop() == otherTop && other.unit() != unit) {
          joined.add(other.unit());
        }
      }
    }
    return joined;
  }

  private int at(Unit unit) {
    return levels.getOrDefault(unit, 0);
  }

  private int deepest() {
    return fabric.units().stream()
        .filter(u -> !u.look().isBelow())
        .mapToInt(this::at)
        .max()
        .orElse(0);
  }

  /** What hangs on the upper end of another unit only stands beside it. */
  private void besideWhatTheyBridge() {
    for (int pass = 0; pass < 2; pass++) {
      for (Unit unit : fabric.units()) {
        if (unit.look().isReference() || !above(unit).isEmpty() || unit.look() == Look.MAINS) {
          continue;
        }
        int beside = joined(unit, unit.tops(), true).stream().mapToInt(this::at).max().orElse(0);
        int least = below(unit).stream().mapToInt(this::at).min().orElse(Integer.MAX_VALUE);
        if (unit.look() != Look.SOURCE && beside > at(unit) && beside < least) {
          levels.put(unit, beside);
        }
      }
    }
  }

  private void loadsAtTheBottom() {
    int deepest = deepest();
    for (Unit unit : fabric.units()) {
      if (unit.look().isLoad()) {
        levels.put(unit, deepest);
      }
    }
  }

  /** Coils stand in one row where nothing follows them. */
  private void consumersInARow() {
    int row =
        fabric.units().stream()
            .filter(u -> u.look().isConsumer())
            .mapToInt(this::at)
            .max()
            .orElse(0);
    Map<Unit, Integer> before = new HashMap<>(levels);
    for (Unit unit : fabric.units()) {
      boolean last = below(unit).stream().allMatch(b -> b.look().isBelow());
      if (last && unit.look().isConsumer() && !above(unit).isEmpty()) {
        levels.put(unit, row);
      }
    }
    for (Unit unit : fabric.units()) {
      boolean hangsOn = !unit.look().isConsumer() && above(unit).isEmpty();
      if (!unit.look().isReference() && hangsOn && unit.slots() == 1) {
        joined(unit, unit.tops(), true).stream()
            .filter(u -> u.look() == Look.COIL && at(u) > before.getOrDefault(u, 0))
            .findFirst()
            .ifPresent(coil -> levels.put(unit, at(coil)));
      }
    }
  }

  private void references() {
    int bottom = deepest() + 1;
    for (Unit unit : fabric.units()) {
      if (unit.look().isAbove()) {
        int user = below(unit).stream().mapToInt(this::at).min().orElse(1);
        levels.put(unit, Math.max(0, user - 1));
      } else if (unit.look().isBelow()) {
        int user = above(unit).stream().mapToInt(this::at).max().orElse(0);
        levels.put(unit, fabric.area().power() ? user + 1 : bottom);
      }
    }
  }
}
