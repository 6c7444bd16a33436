package org.coilwright.worked;

/**
 * A coil on alternating voltage as a series of resistance and reactance.
 *
 * @param ohms resistance, Ω
 * @param reactance at the mains frequency, Ω
 */
record AcCoil(double ohms, double reactance) {
  /** From apparent power, VA at {@code volts} r.m.s., and power factor. */
  static AcCoil fromPowerFactor(double volts, double voltAmperes, double powerFactor) {
    double impedance = volts * volts / voltAmperes;
    return new AcCoil(
        impedance * powerFactor, impedance * Math.sqrt(1 - powerFactor * powerFactor));
  }

  /**
   * Voltage left on it when something else stands in series; a capacitor can make it exceed {@code
   * volts}.
   *
   * @param seriesReactance negative for a capacitor
   */
  double voltsInSeries(double volts, double seriesOhms, double seriesReactance) {
    return volts
        * Math.hypot(ohms, reactance)
        / Math.hypot(ohms + seriesOhms, reactance + seriesReactance);
  }
}
