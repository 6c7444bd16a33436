package org.coilwright.diagram;

import org.jspecify.annotations.Nullable;

/**
 * How a conductor runs: from one end across to a column, along it from one channel to another, and
 * across to the other end. A channel lies above each level and below the last.
 *
 * @param upper the end whose channel is the upper one
 * @param lower the other end
 * @param column where it runs down; if {@code second} is there, it does not run down but across
 *     from one to the other
 * @param second see {@code column}
 */
record Route(
    Joint joint, Unit.Port upper, Unit.Port lower, Column column, @Nullable Column second) {
  static Route down(Joint joint, Unit.Port upper, Unit.Port lower, Column column) {
    return new Route(joint, upper, lower, column, null);
  }

  /** True if it runs within one channel, from bar to bar. */
  boolean isAcross() {
    return second != null;
  }

  /** True if its text stands where conductors run across, for want of a stretch of its own. */
  boolean isBetweenBars(Plan plan) {
    return isAcross()
        || (plan.channel(upper) == plan.channel(lower)
            && plan.fabric().isBar(upper)
            && plan.fabric().isBar(lower));
  }

  Column secondColumn() {
    return second == null ? column : second;
  }
}
