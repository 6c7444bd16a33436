package org.coilwright.solve;

/**
 * Between which two values something surely lies.
 *
 * @param low never negative; infinite for what does not conduct
 * @param high at least {@code low}; infinite if nobody can say
 */
public record Span(double low, double high) {
  /** Does not conduct at all. */
  public static final Span OPEN = new Span(Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);

  /** Could be anything. */
  public static final Span ANY = new Span(0, Double.POSITIVE_INFINITY);

  /**
   * Refuses limits that are out of order.
   *
   * @throws IllegalArgumentException if {@code low} is negative, not a number, or above {@code
   *     high}
   */
  public Span {
    if (!(low >= 0) || !(high >= low)) {
      throw new IllegalArgumentException("not a span: " + low + " to " + high);
    }
  }

  /** True if it surely does not conduct. */
  public boolean isOpen() {
    return Double.isInfinite(low);
  }
}
