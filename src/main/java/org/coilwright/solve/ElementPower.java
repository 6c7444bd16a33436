package org.coilwright.solve;

/**
 * Power and current of a heating element, taken as a constant resistance.
 *
 * @param watts rated power
 * @param volts rated voltage
 */
public record ElementPower(double watts, double volts) {
  /** Resistance, Ω. */
  public double ohms() {
    return volts * volts / watts;
  }

  /** Rated current of a single-phase element, A. */
  public double amps() {
    return watts / volts;
  }

  /** Line current of a balanced three-phase element whose rated voltage is between lines, A. */
  public double threePhaseAmps() {
    return watts / (Math.sqrt(3) * volts);
  }

  /** Power at another voltage, W. */
  public double wattsAt(double otherVolts) {
    return watts * Math.pow(otherVolts / volts, 2);
  }

  /** Single-phase current at another voltage, A. */
  public double ampsAt(double otherVolts) {
    return amps() * otherVolts / volts;
  }

  /**
   * The power it may at most take at its rated voltage.
   *
   * @param share upper limit over rated power, such as 1.05
   * @param leastMargin margin it has in any case, W
   * @return W
   */
  public double highestWatts(double share, double leastMargin) {
    return Math.max(watts * share, watts + leastMargin);
  }

  /** The element that takes the highest power permitted. */
  public ElementPower atHighest(double share, double leastMargin) {
    return new ElementPower(highestWatts(share, leastMargin), volts);
  }
}
