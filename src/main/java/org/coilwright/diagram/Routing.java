package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.coilwright.diagram.Unit.Port;

/** Finds a way for the conductors that do not run straight down. */
final class Routing {
  private final Plan plan;
  private final Fabric fabric;

  Routing(Plan plan) {
    this.plan = plan;
    this.fabric = plan.fabric();
  }

  void route() {
    for (Joint joint : fabric.joints()) {
      if (plan.route(joint).isEmpty()) {
        along(plan, find(joint));
      }
    }
  }

  private Route find(Joint joint) {
    boolean swapped = plan.channel(joint.a()) > plan.channel(joint.b());
    Port upper = swapped ? joint.b() : joint.a();
    Port lower = swapped ? joint.a() : joint.b();
    boolean barAbove = fabric.isBar(upper);
    boolean barBelow = fabric.isBar(lower);
    if (plan.channel(upper) == plan.channel(lower)) {
      if (barAbove && barBelow) {
        Column first = plan.freshAfter(Optional.of(plan.column(upper)));
        return new Route(joint, upper, lower, first, plan.freshAfter(Optional.of(first)));
      }
      return Route.down(joint, upper, lower, plan.column(barAbove ? lower : upper));
    }
    for (Column column : candidates(upper, lower)) {
      if (isOpen(joint, upper, lower, column)) {
        return Route.down(joint, upper, lower, column);
      }
    }
    Column beside = plan.column(barBelow && !barAbove ? upper : lower);
    return Route.down(joint, upper, lower, plan.freshAfter(Optional.of(beside)));
  }

  /** The ends' own columns, the one with a single conductor first; then those between. */
  private List<Column> candidates(Port upper, Port lower) {
    List<Column> candidates = new ArrayList<>();
    if (!fabric.isBar(lower)) {
      candidates.add(plan.column(lower));
    }
    candidates.add(plan.column(upper));
    if (fabric.isBar(lower)) {
      candidates.add(plan.column(lower));
    }
    return candidates;
  }

  private boolean isOpen(Joint joint, Port upper, Port lower, Column column) {
    for (int channel = plan.channel(upper); channel <= plan.channel(lower); channel++) {
      if (!column.isOpenTo(channel, Set.of(joint, upper, lower))) {
        return false;
      }
    }
    return column.areFree(plan.channel(upper), plan.channel(lower));
  }

  /** Takes what a conductor needs. */
  static void along(Plan plan, Route route) {
    plan.routes().put(route.joint(), route);
    int from = plan.channel(route.upper());
    int to = plan.channel(route.lower());
    for (int channel = from; channel <= to; channel++) {
      route.column().touch(channel, route.joint());
      route.secondColumn().touch(channel, route.joint());
      if (channel < to) {
        route.column().take(channel, route.joint());
      }
    }
    for (Port end : List.of(route.upper(), route.lower())) {
      if (!plan.fabric().isBar(end)) {
        plan.column(end).touch(plan.channel(end), route.joint());
      }
    }
  }
}
