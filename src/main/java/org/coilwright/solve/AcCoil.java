package org.coilwright.solve;

/**
 * A coil on alternating voltage as a series of resistance and reactance.
 *
 * @param ohms resistance, Ω
 * @param reactance at the mains frequency, Ω
 */
public record AcCoil(double ohms, double reactance) {
  /**
   * From what a data sheet states.
   *
   * @param volts rated voltage, r.m.s.
   * @param voltAmperes apparent power while it holds (or while it pulls in)
   * @param watts active power in the same state; at most {@code voltAmperes}
   */
  public static AcCoil fromPower(double volts, double voltAmperes, double watts) {
    double impedance = volts * volts / voltAmperes;
    double cos = Math.min(1, watts / voltAmperes);
    return new AcCoil(impedance * cos, impedance * Math.sqrt(1 - cos * cos));
  }

  /** From apparent power and power factor. */
  public static AcCoil fromPowerFactor(double volts, double voltAmperes, double powerFactor) {
    return fromPower(volts, voltAmperes, voltAmperes * powerFactor);
  }

  /** From resistance (Ω) and inductance (H) at {@code hertz}. */
  public static AcCoil fromInductance(double ohms, double henry, double hertz) {
    return new AcCoil(ohms, 2 * Math.PI * hertz * henry);
  }

  /** Magnitude of the impedance, Ω. */
  public double impedance() {
    return Math.hypot(ohms, reactance);
  }

  /** Current at {@code volts} r.m.s., A. */
  public double amps(double volts) {
    return volts / impedance();
  }

  /** Current on direct voltage, where only the resistance is left: it burns the coil, A. */
  public double directAmps(double volts) {
    return volts / ohms;
  }

  /**
   * Voltage left on the coil when something else stands in series, V r.m.s. With a capacitive
   * series element it can exceed {@code volts}.
   *
   * @param seriesOhms resistance in series, Ω
   * @param seriesReactance reactance in series, Ω; negative for a capacitor
   */
  public double voltsInSeries(double volts, double seriesOhms, double seriesReactance) {
    return volts * impedance() / Math.hypot(ohms + seriesOhms, reactance + seriesReactance);
  }
}
