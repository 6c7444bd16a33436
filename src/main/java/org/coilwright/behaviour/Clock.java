package org.coilwright.behaviour;

import java.util.TreeSet;

/** When, within a day, anything happens by the clock: midnight, edges of windows, draw-offs. */
final class Clock {
  private static final int DAY = 86_400;

  private final int stepSeconds;
  private final TreeSet<Integer> events = new TreeSet<>();
  private int second;

  Clock(int firstSecond, int stepSeconds, Settings settings, Plant plant) {
    this.second = firstSecond;
    this.stepSeconds = stepSeconds;
    events.add(0);
    settings
        .windows()
        .forEach(
            w -> {
              events.add(w.from() % DAY);
              events.add(w.to() % DAY);
            });
    plant
        .water()
        .ifPresent(water -> water.drawOffs().forEach(d -> events.add(d.secondOfDay() % DAY)));
  }

  int second() {
    return second;
  }

  /** Rows from now up to, not including, the first row at or after the next event; at least 1. */
  int rowsToNextEvent() {
    Integer next = events.higher(second);
    int distance = (next == null ? DAY : next) - second;
    return (distance + stepSeconds - 1) / stepSeconds;
  }

  void advance(int rows) {
    second = (int) ((second + (long) rows * stepSeconds) % DAY);
  }

  /** True if {@code eventSecond} falls into the row that begins now. */
  boolean isNow(int eventSecond) {
    int since = second - eventSecond % DAY;
    return since >= 0 && since < stepSeconds;
  }
}
