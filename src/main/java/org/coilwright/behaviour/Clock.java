package org.coilwright.behaviour;

import java.util.TreeSet;

/** When, within a day, anything happens by the clock: midnight, edges of windows, draw-offs. */
final class Clock {
  static final int MILLIS = 1000;
  private static final int DAY = 86_400 * MILLIS;

  private final int stepMillis;
  private final TreeSet<Integer> events = new TreeSet<>();
  private int now;

  Clock(int firstMilli, int stepMillis, Settings settings, Plant plant) {
    this.now = firstMilli;
    this.stepMillis = stepMillis;
    events.add(0);
    settings
        .windows()
        .forEach(
            w -> {
              events.add(w.from() * MILLIS % DAY);
              events.add((int) ((long) w.to() * MILLIS % DAY));
            });
    plant
        .water()
        .ifPresent(
            water -> water.drawOffs().forEach(d -> events.add(d.secondOfDay() * MILLIS % DAY)));
  }

  /** Whole seconds of the day that begins or goes on now. */
  int second() {
    return now / MILLIS;
  }

  /** Rows from now up to, not including, the first row at or after the next event; at least 1. */
  int rowsToNextEvent() {
    Integer next = events.higher(now);
    int distance = (next == null ? DAY : next) - now;
    return (distance + stepMillis - 1) / stepMillis;
  }

  void advance(int rows) {
    now = (int) ((now + (long) rows * stepMillis) % DAY);
  }

  /** True if {@code eventSecond} falls into the row that begins now. */
  boolean isNow(int eventSecond) {
    long since = now - (long) eventSecond * MILLIS % DAY;
    return since >= 0 && since < stepMillis;
  }
}
