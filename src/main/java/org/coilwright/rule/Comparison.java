package org.coilwright.rule;

/** {@link org.coilwright.quantity.Comparison} under the name by which rules call it. */
public final class Comparison {
  private Comparison() {}

  /** True if {@code value} is above {@code limit}; a value exactly at the limit is not. */
  public static boolean exceeds(double value, double limit) {
    return org.coilwright.quantity.Comparison.exceeds(value, limit);
  }

  /** True if {@code value} is below {@code limit}; a value exactly at the limit is not. */
  public static boolean fallsShort(double value, double limit) {
    return org.coilwright.quantity.Comparison.fallsShort(value, limit);
  }
}
