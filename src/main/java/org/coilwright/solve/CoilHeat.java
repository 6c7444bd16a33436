package org.coilwright.solve;

/**
 * How warm a direct-current coil gets from its own current.
 *
 * @param copper how its resistance follows temperature
 * @param ohms resistance at the reference temperature
 * @param referenceCelsius reference temperature, °C
 * @param kelvinPerWatt thermal resistance from winding to air
 */
public record CoilHeat(
    CopperLaw copper, double ohms, double referenceCelsius, double kelvinPerWatt) {

  /**
   * Steady winding temperature at {@code volts} in air of {@code airCelsius}: the fixed point of
   * {@code T = Ta + Rth U² / R(T)}. With the copper law that is a quadratic in {@code k + T}, so no
   * iteration is needed.
   *
   * @return °C
   */
  public double windingCelsius(double volts, double airCelsius) {
    double k = copper.constant().value();
    double cold = k + airCelsius;
    double heat = kelvinPerWatt * volts * volts * (k + referenceCelsius) / ohms;
    return (cold + Math.sqrt(cold * cold + 4 * heat)) / 2 - k;
  }

  /** Power it takes once warm, W. */
  public double watts(double volts, double airCelsius) {
    return volts * volts / copper.at(ohms, referenceCelsius, windingCelsius(volts, airCelsius));
  }

  /**
   * Voltage it needs to pull in again right after it has been on: the cold pick-up voltage scaled
   * to the warm winding.
   *
   * @param pickUp pick-up voltage at the reference temperature, V
   * @param volts voltage it was warmed with
   * @return V
   */
  public double hotPickUp(double pickUp, double volts, double airCelsius) {
    return copper.at(pickUp, referenceCelsius, windingCelsius(volts, airCelsius));
  }

  /**
   * Highest voltage at another air temperature, from the one stated: the same hot winding, so less
   * heat may be added as the air warms: {@code U(Ta) = U(T0) √((Tmax - Ta)/(Tmax - T0))}.
   *
   * @param volts highest voltage at {@code statedCelsius}
   * @param windingLimitCelsius temperature the winding may reach
   * @return V; zero if the air is at or above the winding's limit
   */
  public static double highestVolts(
      double volts, double statedCelsius, double airCelsius, double windingLimitCelsius) {
    double share = (windingLimitCelsius - airCelsius) / (windingLimitCelsius - statedCelsius);
    return share <= 0 ? 0 : volts * Math.sqrt(share);
  }
}
