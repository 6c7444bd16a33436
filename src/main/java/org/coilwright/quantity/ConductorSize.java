package org.coilwright.quantity;

import java.util.OptionalInt;
import org.jspecify.annotations.Nullable;

/**
 * A conductor's cross-section. AWG sizes keep their gauge number, because resistance and ampacity
 * are tabulated by it.
 *
 * @param mm2 cross-section in mm²
 * @param awg the gauge number if that is what was written; 0 stands for 1/0, -1 for 2/0, and so on
 */
public record ConductorSize(double mm2, OptionalInt awg) {
  /** The thickest gauge, 4/0. */
  public static final int THICKEST_AWG = -3;

  /** The thinnest gauge that a circuit of this kind can meet. */
  public static final int THINNEST_AWG = 36;

  // written out: what the compiler makes of a record is put together at run time, at each start
  @Override
  public boolean equals(@Nullable Object other) {
    return this == other
        || (other instanceof ConductorSize that
            && Double.compare(mm2, that.mm2) == 0
            && awg.equals(that.awg));
  }

  @Override
  public int hashCode() {
    return 31 * Double.hashCode(mm2) + awg.hashCode();
  }

  /** A metric size. */
  public static ConductorSize ofMm2(double mm2) {
    return new ConductorSize(mm2, OptionalInt.empty());
  }

  /**
   * A gauge, its area computed from the diameter: 0.127 mm × 92^((36 − n)/39), ASTM B258.
   *
   * @param gauge the number; 0 for 1/0, -1 for 2/0, -3 for 4/0
   */
  public static ConductorSize ofAwg(int gauge) {
    double diameter = 0.127 * Math.pow(92, (36 - gauge) / 39.0);
    return new ConductorSize(Math.PI / 4 * diameter * diameter, OptionalInt.of(gauge));
  }
}
