package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.coilwright.diagram.Unit.Port;
import org.jspecify.annotations.Nullable;

/** Gives each unit its columns, one current path after the other, straight down where it can be. */
final class Placing {
  /** A unit is not pulled further apart than by so many columns. */
  private static final int STRETCH = 4;

  private final Plan plan;
  private final Fabric fabric;
  private final Standing standing;

  Placing(Plan plan) {
    this.plan = plan;
    this.fabric = plan.fabric();
    this.standing = new Standing(plan);
  }

  void place() {
    List<Unit> order = new ArrayList<>(fabric.units());
    order.sort(Comparator.comparingInt(plan::level));
    for (boolean references : new boolean[] {false, true}) {
      for (Unit unit : order) {
        if (unit.look().isReference() == references && !plan.isPlaced(unit)) {
          place(unit, last());
          grow(unit);
        }
      }
    }
  }

  private Optional<Column> last() {
    List<Column> columns = plan.columns();
    return columns.isEmpty() ? Optional.empty() : Optional.of(columns.get(columns.size() - 1));
  }

  /** Places what hangs on a unit; the rightmost column that was used. */
  private Column grow(Unit unit) {
    List<Column> own = plan.at(unit);
    Column right = own.get(own.size() - 1);
    List<Unit> feeders = unit.look().isBelow() ? List.of() : joined(unit, unit.tops(), false);
    for (Unit feeder : feeders) {
      if (feeder.slots() == 1 && plan.level(feeder) < plan.level(unit)) {
        place(feeder, Optional.of(right));
        right = righter(right, plan.at(feeder).get(0));
      }
    }
    for (Unit beside : beside(unit)) {
      place(beside, Optional.of(right));
      right = righter(right, grow(beside));
    }
    for (boolean references : new boolean[] {false, true}) {
      for (Unit next : joined(unit, unit.bottoms(), true)) {
        if (next.look().isReference() == references
            && !plan.isPlaced(next)
            && plan.level(next) > plan.level(unit)) {
          place(next, Optional.of(right));
          right = righter(right, grow(next));
        }
      }
    }
    return right;
  }

  /** What bridges a unit or hangs on the same end of it. */
  private List<Unit> beside(Unit unit) {
    List<Unit> beside = new ArrayList<>(joined(unit, unit.tops(), true));
    beside.addAll(joined(unit, unit.bottoms(), false));
    return beside.stream()
        .distinct()
        .filter(u -> !u.look().isReference() && plan.level(u) == plan.level(unit))
        .toList();
  }

  private List<Unit> joined(Unit unit, List<Port> ports, boolean otherTop) {
    List<Unit> joined = new ArrayList<>();
    for (Port port : ports) {
      for (Joint joint : fabric.at(port)) {
        Port other = joint.other(port);
        if (other.isTop() == otherTop && other.unit() != unit && !plan.isPlaced(other.unit())) {
          joined.add(other.unit());
        }
      }
    }
    return joined.stream().distinct().toList();
  }

  private static Column righter(Column a, Column b) {
    return a.position() >= b.position() ? a : b;
  }

  private void place(Unit unit, Optional<Column> after) {
    if (plan.isPlaced(unit)) {
      return;
    }
    List<Column> columns = underneath(unit);
    if (columns.isEmpty()) {
      columns = new ArrayList<>();
      Optional<Column> anchor = after;
      for (int slot = 0; slot < unit.slots(); slot++) {
        Column fresh = plan.freshAfter(anchor);
        columns.add(fresh);
        anchor = Optional.of(fresh);
      }
    }
    standing.stand(unit, columns);
  }

  /** The columns of what it hangs on, if it can stand there; otherwise none. */
  private List<Column> underneath(Unit unit) {
    List<@Nullable Column> found = new ArrayList<>();
    boolean any = false;
    int current = -1;
    for (int slot = 0; slot < unit.slots(); slot++) {
      Column wanted = wanted(unit, slot);
      if (wanted != null && wanted.position() > current) {
        any = true;
        current = wanted.position();
        found.add(wanted);
      } else {
        found.add(null);
        current = current < 0 ? current : current + 1;
      }
    }
    if (!any || found.get(0) == null) {
      return List.of();
    }
    List<Column> columns = new ArrayList<>();
    for (int slot = 0; slot < found.size(); slot++) {
      Column column = found.get(slot);
      columns.add(column == null ? between(unit, slot, columns, found) : column);
      if (columns.get(slot) == null) {
        return List.of();
      }
    }
    int first = columns.get(0).position();
    int last = columns.get(columns.size() - 1).position();
    if (last - first + 1 > unit.slots() + STRETCH) {
      return List.of();
    }
    for (int i = first; i <= last; i++) {
      if (!plan.columns().get(i).isFree(plan.level(unit))) {
        return List.of();
      }
    }
    return columns;
  }

  /** A column for an end that hangs on nothing, right of the one before. */
  private @Nullable Column between(
      Unit unit, int slot, List<Column> before, List<@Nullable Column> found) {
    int place = before.get(slot - 1).position() + 1;
    int next = Integer.MAX_VALUE;
    for (Column later : found.subList(slot, found.size())) {
      if (later != null) {
        next = Math.min(next, later.position());
      }
    }
    if (place < plan.columns().size() && place < next) {
      Column candidate = plan.columns().get(place);
      if (standing.canStand(unit, slot, candidate, null)) {
        return candidate;
      }
    }
    return plan.isInsideUnit(place) ? null : plan.freshAfter(Optional.of(before.get(slot - 1)));
  }

  private @Nullable Column wanted(Unit unit, int slot) {
    for (boolean top : new boolean[] {true, false}) {
      Optional<Port> port = unit.port(slot, top);
      if (port.isEmpty()) {
        continue;
      }
      for (Joint joint : fabric.at(port.get())) {
        Port other = joint.other(port.get());
        if (other.unit() != unit
            && plan.isPlaced(other.unit())
            && other.isTop() != top
            && standing.canStand(unit, slot, plan.column(other), joint)) {
          return plan.column(other);
        }
      }
    }
    return null;
  }
}
