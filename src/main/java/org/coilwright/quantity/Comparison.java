package org.coilwright.quantity;

/** The one routine that decides whether a value is at, inside or outside a limit. */
public final class Comparison {
  /** Two figures this close, relative to the larger, are the same figure. */
  private static final double RELATIVE = 1e-9;

  private Comparison() {}

  /** True if {@code value} is above {@code limit}; a value exactly at the limit is not. */
  public static boolean exceeds(double value, double limit) {
    if (Double.isInfinite(value) || Double.isInfinite(limit)) {
      return value > limit;
    }
    return value - limit > RELATIVE * Math.max(Math.abs(value), Math.abs(limit));
  }

  /** True if {@code value} is below {@code limit}; a value exactly at the limit is not. */
  public static boolean fallsShort(double value, double limit) {
    return exceeds(limit, value);
  }

  /** True if neither is above the other. */
  public static boolean same(double one, double other) {
    return !exceeds(one, other) && !exceeds(other, one);
  }
}
