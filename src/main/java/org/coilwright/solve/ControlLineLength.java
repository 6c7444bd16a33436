package org.coilwright.solve;

/**
 * Handbook formulas for the length of a control line by voltage drop. They take copper at a flat
 * conductivity, so they are 3 to 13 % kinder than tabulated conductor resistances: good to
 * reproduce a handbook, not to decide a circuit.
 */
public final class ControlLineLength {
  /** Conductivity that the formula takes for copper, m/(Ω·mm²). */
  private static final double CONDUCTIVITY = 57;

  private ControlLineLength() {}

  /**
   * Longest line, both ways added.
   *
   * @param drop allowed share of the voltage
   * @param volts rated control voltage
   * @param mm2 cross-section
   * @param pickUpVoltAmperes apparent power while the coil pulls in
   * @return m, there and back together
   */
  public static double totalMetres(
      double drop, double volts, double mm2, double pickUpVoltAmperes) {
    return drop * volts * volts * CONDUCTIVITY * mm2 / pickUpVoltAmperes;
  }

  /** Share of the voltage lost on {@code totalMetres}, there and back together. */
  public static double drop(
      double totalMetres, double volts, double mm2, double pickUpVoltAmperes) {
    return pickUpVoltAmperes * totalMetres / (volts * volts * CONDUCTIVITY * mm2);
  }

  /**
   * Longest line one way by a switchgear maker's factor, which grows as the coil's power factor
   * falls.
   *
   * @param factor from that maker's table: 1.38 for 20 VA, 2.15 for 200 VA; 1.38 for direct current
   * @return m, one way
   */
  public static double oneWayMetres(
      double volts, double pickUpVoltAmperes, double mm2, double factor) {
    return volts * volts / pickUpVoltAmperes * mm2 * factor;
  }
}
