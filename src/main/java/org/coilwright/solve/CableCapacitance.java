package org.coilwright.solve;

/**
 * How long a control line may be before its own capacitance holds an alternating-current coil in
 * after the contact at its far end has opened. Taken as a capacitor in series with a purely
 * inductive held-in coil, which is the strictest case: {@code C = m/(1+m) · S/(2πf U²)}, where m is
 * the coil's release voltage over its rated voltage. Near the supply the line matters little.
 */
public final class CableCapacitance {
  private CableCapacitance() {}

  /**
   * Capacitance at which the coil is just held at its release voltage.
   *
   * @param releaseShare release over rated voltage, between 0 and 1
   * @param holdVoltAmperes apparent power of the closed coil, VA
   * @param volts rated voltage, r.m.s.
   * @param hertz mains frequency
   * @return F
   */
  public static double holdingFarads(
      double releaseShare, double holdVoltAmperes, double volts, double hertz) {
    return releaseShare
        / (1 + releaseShare)
        * holdVoltAmperes
        / (2 * Math.PI * hertz * volts * volts);
  }

  /**
   * Longest line, one way, for a contact that stays closed as long as the coil is on.
   *
   * @param farads capacitance as {@link #holdingFarads}
   * @param faradsPerKilometre capacitance between the two cores
   * @return m
   */
  public static double longestMetres(double farads, double faradsPerKilometre) {
    return farads / faradsPerKilometre * 1000;
  }

  /**
   * Longest line, one way, for start and stop push-buttons (three wires): half of the other, since
   * two cores couple onto the coil.
   *
   * @return m
   */
  public static double longestMomentaryMetres(double farads, double faradsPerKilometre) {
    return longestMetres(farads, faradsPerKilometre) / 2;
  }

  /**
   * The handbook's short form at 50 Hz, {@code C = 500 S/U²} in µF: the exact form at a release
   * voltage of 20 % less about 6 %.
   *
   * @return F
   */
  public static double shortFormFarads(double holdVoltAmperes, double volts) {
    return 500e-6 * holdVoltAmperes / (volts * volts);
  }

  /** Resistor across the coil that a switchgear handbook gives against it, 1000/C in µF, Ω. */
  public static double shuntOhms(double farads) {
    return 1000 / (farads * 1e6);
  }
}
