package org.coilwright.solve;

/**
 * Turn-off of a direct-current coil, in closed form: an inductance and a resistance that carry
 * {@code amps} when the contact opens. The inductance is taken as constant, although it falls while
 * the armature opens: orders and bounds are sound, predicted release times are not. The armature's
 * own travel comes on top.
 *
 * @param henry inductance, H
 * @param ohms winding resistance, Ω
 * @param amps current when the contact opens, A
 */
public record CoilDecay(double henry, double ohms, double amps) {
  /**
   * A coil from its time constant.
   *
   * @param timeConstant L/R, s
   * @param volts voltage it was fed with
   */
  public static CoilDecay ofTimeConstant(double timeConstant, double ohms, double volts) {
    return new CoilDecay(timeConstant * ohms, ohms, volts / ohms);
  }

  /** Time until the current has built up to {@code share} of its final value after closing, s. */
  public double pickUpSeconds(double share) {
    return henry / ohms * Math.log(1 / (1 - share));
  }

  /** Energy stored when the contact opens, ½ L I², J. */
  public double storedJoules() {
    return henry * amps * amps / 2;
  }

  /**
   * Time until the current has fallen to {@code toAmps} against a constant voltage: a diode (its
   * forward drop), a diode with a zener (both added), a varistor or a bidirectional suppressor (its
   * clamping voltage).
   *
   * @param clampVolts at least 0
   * @return s
   */
  public double clampedSeconds(double clampVolts, double toAmps) {
    return henry / ohms * Math.log((amps * ohms + clampVolts) / (toAmps * ohms + clampVolts));
  }

  /** Current after {@code seconds} against a constant voltage; not below zero. */
  public double clampedAmps(double clampVolts, double seconds) {
    double shift = clampVolts / ohms;
    return Math.max(0, (amps + shift) * Math.exp(-seconds * ohms / henry) - shift);
  }

  /** Time until the current has fallen to {@code toAmps} through a resistor across the coil, s. */
  public double resistorSeconds(double resistorOhms, double toAmps) {
    return henry / (ohms + resistorOhms) * Math.log(amps / toAmps);
  }

  /** The same through a resistor in series with a diode of {@code diodeVolts}, s. */
  public double diodeResistorSeconds(double resistorOhms, double diodeVolts, double toAmps) {
    return new CoilDecay(henry, ohms + resistorOhms, amps).clampedSeconds(diodeVolts, toAmps);
  }

  /** Peak across the coil with a resistor across it: the coil's current through it, V. */
  public double resistorPeakVolts(double resistorOhms) {
    return amps * resistorOhms;
  }

  /** Peak across the coil with a resistor in series with a diode, V. */
  public double diodeResistorPeakVolts(double resistorOhms, double diodeVolts) {
    return amps * resistorOhms + diodeVolts;
  }

  /**
   * Ideal bound of the peak with nothing across the coil: all energy in the stray capacitance. A
   * bound, never a prediction: the contact's arc limits it far below.
   *
   * @param strayFarads stray capacitance, F
   * @return V
   */
  public double barePeakBound(double strayFarads) {
    return amps * Math.sqrt(henry / strayFarads);
  }

  /**
   * Time until the current is gone when the clamp sits across the switch, so that the supply stays
   * in the loop.
   *
   * @param clampVolts across the switch; more than {@code supplyVolts}
   * @return s
   * @throws IllegalArgumentException if the clamp is not above the supply: the current never stops
   */
  public double switchClampSeconds(double supplyVolts, double clampVolts) {
    if (clampVolts <= supplyVolts) {
      throw new IllegalArgumentException("a clamp at or below the supply never ends the current");
    }
    return henry / ohms * Math.log1p(amps * ohms / (clampVolts - supplyVolts));
  }

  /**
   * Energy that a clamp across the switch takes: more than the coil stores, because the supply adds
   * to it.
   *
   * @return J
   */
  public double switchClampJoules(double supplyVolts, double clampVolts) {
    double shift = (clampVolts - supplyVolts) / ohms;
    double seconds = switchClampSeconds(supplyVolts, clampVolts);
    double tau = henry / ohms;
    double charge = (amps + shift) * tau * -Math.expm1(-seconds / tau) - shift * seconds;
    return clampVolts * charge;
  }
}
