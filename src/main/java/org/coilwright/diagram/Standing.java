package org.coilwright.diagram;

import java.util.List;
import java.util.Set;
import org.coilwright.diagram.Unit.Port;
import org.jspecify.annotations.Nullable;

/** Where a unit can stand, and what it takes when it does. */
final class Standing {
  private final Plan plan;
  private final Fabric fabric;

  Standing(Plan plan) {
    this.plan = plan;
    this.fabric = plan.fabric();
  }

  /** True if an end can stand on a column, its conductor {@code straight} running along it. */
  boolean canStand(Unit unit, int slot, Column column, @Nullable Joint straight) {
    int level = plan.level(unit);
    if (!column.isFree(level)) {
      return false;
    }
    for (Port port : unit.ports()) {
      if (port.slot() != slot) {
        continue;
      }
      Set<Object> own = Set.of(port);
      boolean along = straight != null && fabric.at(port).contains(straight);
      if (straight != null && along) {
        if (!isOpen(port, straight, column)) {
          return false;
        }
      } else if (!column.isOpenTo(port.isTop() ? level : level + 1, own)) {
        return false;
      }
      if (plan.isFarBar(port) && !isClear(port, column)) {
        return false;
      }
    }
    return true;
  }

  private boolean isClear(Port port, Column column) {
    int from = plan.level(port.unit()) + 1;
    for (int channel = from; channel <= plan.channel(port); channel++) {
      if (!column.isOpenTo(channel, Set.of(port))) {
        return false;
      }
    }
    return column.areFree(from, plan.channel(port));
  }

  private boolean isOpen(Port port, Joint joint, Column column) {
    Port other = joint.other(port);
    Port upper = port.isTop() ? other : port;
    Port lower = port.isTop() ? port : other;
    if (plan.isFarBar(upper) || plan.channel(upper) > plan.channel(lower)) {
      return false;
    }
    for (int channel = plan.channel(upper); channel <= plan.channel(lower); channel++) {
      if (!column.isOpenTo(channel, Set.of(joint, upper, lower))) {
        return false;
      }
    }
    return column.areFree(plan.channel(upper), plan.channel(lower));
  }

  void stand(Unit unit, List<Column> columns) {
    plan.places().put(unit, List.copyOf(columns));
    int level = plan.level(unit);
    int last = columns.get(columns.size() - 1).position();
    for (int i = columns.get(0).position(); i <= last; i++) {
      plan.columns().get(i).take(level, unit);
    }
    for (Port port : unit.ports()) {
      Column column = columns.get(port.slot());
      column.touch(port.isTop() ? level : level + 1, port);
      if (plan.isFarBar(port)) {
        for (int channel = level + 1; channel <= plan.channel(port); channel++) {
          column.touch(channel, port);
          if (channel < plan.channel(port)) {
            column.take(channel, port);
          }
        }
      }
      for (Joint joint : fabric.at(port)) {
        Port other = joint.other(port);
        if (other.unit() != unit
            && plan.isPlaced(other.unit())
            && other.isTop() != port.isTop()
            && plan.column(other) == column
            && plan.route(joint).isEmpty()
            && isOpen(port, joint, column)) {
          straight(port, joint, column);
          break;
        }
      }
    }
  }

  private void straight(Port port, Joint joint, Column column) {
    Port other = joint.other(port);
    Port upper = port.isTop() ? other : port;
    Port lower = port.isTop() ? port : other;
    Routing.along(plan, Route.down(joint, upper, lower, column));
  }
}
