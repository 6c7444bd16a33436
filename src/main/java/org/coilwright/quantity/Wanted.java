package org.coilwright.quantity;

import java.util.List;

/**
 * What a place in a netlist can use.
 *
 * @param dimensions those that fit, the usual one first; at least one
 * @param bare true if a number without a unit is read in the base unit of the first dimension (a
 *     ratio is then read as a fraction)
 * @param least how small it may be
 */
public record Wanted(List<Dimension> dimensions, boolean bare, Least least) {

  /** How small a value may be. */
  public enum Least {
    ANY,
    ZERO,
    ABOVE_ZERO
  }

  /** A value of one of these dimensions, above zero; a temperature may be anything. */
  public static Wanted of(Dimension... dimensions) {
    boolean temperature = dimensions[0] == Dimension.TEMPERATURE;
    return new Wanted(
        List.of(dimensions),
        dimensions[0] == Dimension.COUNT,
        temperature ? Least.ANY : Least.ABOVE_ZERO);
  }

  /** The same, and zero fits as well. */
  public Wanted orZero() {
    return new Wanted(dimensions, bare, Least.ZERO);
  }

  /** The same, and a number without a unit fits as well. */
  public Wanted orBare() {
    return new Wanted(dimensions, true, least);
  }

  /** What is needed, in words: {@code a current or a plain number}. */
  public String inWords() {
    return Words.either(dimensions.stream().map(Dimension::noun).toList());
  }
}
