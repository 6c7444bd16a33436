package org.coilwright.diagram;

import java.util.List;

/**
 * A conductor between two ports of one area.
 *
 * @param number from 0, in the order of the netlist
 * @param lines what stands beside it
 */
record Joint(int number, Unit.Port a, Unit.Port b, List<String> lines) {
  Unit.Port other(Unit.Port end) {
    return end == a ? b : a;
  }

  /** Each is one conductor, whatever else is alike. */
  @Override
  public boolean equals(@org.jspecify.annotations.Nullable Object other) {
    return this == other;
  }

  @Override
  public int hashCode() {
    return number;
  }
}
