package org.coilwright.diagram;

import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;

/** A line from top to bottom on which symbols and conductors stand. Two are never equal. */
final class Column {
  private int position;

  /** What stands on it at a level: a unit, or a conductor or terminal that passes. */
  private final Map<Integer, Object> cells = new HashMap<>();

  /** Conductors and terminals that touch it between two levels, by the lower one. */
  private final Map<Integer, Set<Object>> touches = new HashMap<>();

  int position() {
    return position;
  }

  void moveTo(int place) {
    position = place;
  }

  boolean isFree(int level) {
    return !cells.containsKey(level);
  }

  boolean areFree(int from, int to) {
    for (int level = from; level < to; level++) {
      if (!isFree(level)) {
        return false;
      }
    }
    return true;
  }

  void take(int level, Object by) {
    cells.put(level, by);
  }

  /** Everything at a level: units with the columns they span, and what passes. */
  Map<Integer, Object> cells() {
    return cells;
  }

  /** True if nothing but these touches it in a channel. */
  boolean isOpenTo(int channel, Set<Object> these) {
    return these.containsAll(touches.getOrDefault(channel, Set.of()));
  }

  void touch(int channel, Object by) {
    touches.computeIfAbsent(channel, c -> new HashSet<>()).add(by);
  }
}
