package org.coilwright.behaviour;

/** Sees every row of a rehearsal: for plots, and for tests that keep the books. */
@FunctionalInterface
public interface Trace {
  /**
   * One row.
   *
   * @param step row number from 0
   * @param closed whether the contact is closed
   * @param loadWatts what the controlled load takes
   * @param batteryWatts out of the battery positive, into it negative
   * @param gridWatts import positive, export negative
   * @param level battery level at the end of the row, 0 to 1; 0 without a battery
   * @param celsius water temperature at the end of the row; 0 without water
   */
  void row(
      long step,
      boolean closed,
      double loadWatts,
      double batteryWatts,
      double gridWatts,
      double level,
      double celsius);
}
