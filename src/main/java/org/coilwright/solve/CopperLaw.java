package org.coilwright.solve;

import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/**
 * How copper's resistance, and with it the pick-up and release voltage of a direct-current coil,
 * follows temperature: {@code R(T) = R(T0) (k + T) / (k + T0)} with k = 234.5 °C.
 *
 * <p>The armature answers to current, so at another temperature it needs its voltage scaled like
 * the resistance. Holds for annealed copper between about -50 and +200 °C. An alternating-current
 * coil is mostly reactance and follows this law with its resistance only.
 *
 * @param constant k, °C
 */
public record CopperLaw(Cited<Double> constant) {
  /** Colder than anything a circuit meets; below it copper leaves the straight line, °C. */
  private static final double COLDEST = -200;

  /** The law with the tabulated constant. */
  public static CopperLaw from(Tables tables) {
    return new CopperLaw(tables.figure("coil.copper-constant"));
  }

  /**
   * Factor from one temperature to another, both in °C. Below -200 °C the value at -200 °C is
   * taken, so that a slip in a file never makes a resistance vanish or turn negative.
   */
  public double ratio(double fromCelsius, double toCelsius) {
    double k = constant.value();
    return (k + Math.max(toCelsius, COLDEST)) / (k + Math.max(fromCelsius, COLDEST));
  }

  /** Resistance (any unit) at {@code celsius}, known at {@code referenceCelsius}. */
  public double at(double value, double referenceCelsius, double celsius) {
    return value * ratio(referenceCelsius, celsius);
  }

  /** The same, with the citation carried along; the weaker standing counts. */
  public Cited<Double> at(Cited<Double> value, double referenceCelsius, double celsius) {
    Standing standing = value.standing().weaker(constant.standing());
    return new Cited<>(
        at(value.value(), referenceCelsius, celsius), value.source(), value.place(), standing);
  }

  /** Temperature coefficient at {@code celsius}, 1/K. */
  public double coefficient(double celsius) {
    return 1 / (constant.value() + celsius);
  }

  /**
   * Rise of a winding over its temperature when cold, from its resistance: {@code (k + T1) (R2/R1 -
   * 1)}.
   *
   * @param coldOhms at {@code coldCelsius}
   * @param hotOhms warm
   * @return K
   */
  public double riseFromResistance(double coldOhms, double hotOhms, double coldCelsius) {
    return (constant.value() + coldCelsius) * (hotOhms / coldOhms - 1);
  }

  /**
   * Temperature at which a value that follows the law has grown by {@code ratio} since {@code
   * fromCelsius}.
   *
   * @return °C
   */
  public double temperatureFor(double ratio, double fromCelsius) {
    double k = constant.value();
    return ratio * (k + fromCelsius) - k;
  }
}
