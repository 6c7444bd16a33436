package org.coilwright.quantity;

/**
 * A value with its tolerance or range, in the base unit of its dimension.
 *
 * <p>{@code 24 V ± 10 %} has low 21.6, nominal 24 and high 26.4; a plain value has all three equal;
 * a range {@code 22..28 V} has its middle as nominal.
 *
 * @param dimension what it measures
 * @param low least value, base unit
 * @param nominal the value named, base unit
 * @param high greatest value, base unit; {@code low <= nominal <= high}
 * @param kind AC or DC where it was written
 */
public record Quantity(
    Dimension dimension, double low, double nominal, double high, CurrentKind kind) {

  /**
   * Refuses what no person can have meant.
   *
   * @throws IllegalArgumentException if a bound is not finite or the bounds are out of order
   */
  public Quantity {
    if (!Double.isFinite(low) || !Double.isFinite(nominal) || !Double.isFinite(high)) {
      throw new IllegalArgumentException("a quantity must be finite");
    }
    if (low > nominal || nominal > high) {
      throw new IllegalArgumentException(
          "bounds out of order: " + low + ", " + nominal + ", " + high);
    }
  }

  /** An exact value in the base unit of {@code dimension}. */
  public static Quantity of(double value, Dimension dimension) {
    return new Quantity(dimension, value, value, value, CurrentKind.UNSTATED);
  }

  /** True if low and high are the same: no tolerance, no range. */
  public boolean isExact() {
    return low == high;
  }

  /**
   * What this value, all of it positive, divides a whole into: {@code whole / this}, its largest
   * bound giving the least. Whether it was alternating or direct says nothing of the result.
   */
  public Quantity dividing(double whole, Dimension result) {
    return new Quantity(result, whole / high, whole / nominal, whole / low, CurrentKind.UNSTATED);
  }

  /** This value with every bound multiplied by {@code factor} (positive). */
  public Quantity times(double factor) {
    return new Quantity(dimension, low * factor, nominal * factor, high * factor, kind);
  }
}
