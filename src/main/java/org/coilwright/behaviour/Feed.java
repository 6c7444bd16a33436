package org.coilwright.behaviour;

/**
 * Power over time, handed out in blocks so that a year at one second needs no more memory than an
 * hour.
 */
public interface Feed {
  /** Milliseconds between two rows; the same throughout, at least 1 and at most a day. */
  int stepMillis();

  /** Millisecond of the local day of the first row, 0 to 86 399 999. */
  int firstMillisOfDay();

  /**
   * Fills the arrays from the front with the next rows.
   *
   * @param pv generation, W, at least 0
   * @param other all load but the controlled one, W
   * @return how many rows were filled; 0 at the end
   */
  int next(float[] pv, float[] other);

  /** Starts again at the first row. */
  void rewind();
}
