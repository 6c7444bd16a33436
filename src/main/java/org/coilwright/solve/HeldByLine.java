package org.coilwright.solve;

import java.util.OptionalDouble;

/**
 * An alternating-current coil whose open line lies beside a live core: the capacitance between the
 * two in series with the held-in coil, a conductance and a susceptance in parallel. Circuit theory;
 * the exact form of what switchgear handbooks give by rules of thumb.
 *
 * @param rated rated voltage of the coil, r.m.s., above 0
 * @param holdVoltAmperes apparent power of the closed coil, VA, above 0
 * @param powerFactor of the closed coil, 0 to 1; 0 is the strictest
 * @param hertz mains frequency, above 0
 * @param supply voltage between the live core and the coil's other side, r.m.s.
 * @param siemens of what lies across the coil beside its own windings, 0 for nothing
 */
public record HeldByLine(
    double rated,
    double holdVoltAmperes,
    double powerFactor,
    double hertz,
    double supply,
    double siemens) {

  private double conductance() {
    return holdVoltAmperes * powerFactor / (rated * rated) + siemens;
  }

  private double susceptance() {
    return holdVoltAmperes * Math.sqrt(1 - powerFactor * powerFactor) / (rated * rated);
  }

  private double omega() {
    return 2 * Math.PI * hertz;
  }

  /** Volts that a capacitance, F, leaves on the coil while it is in. */
  public double volts(double farads) {
    double line = omega() * farads;
    return supply * line / Math.hypot(conductance(), line - susceptance());
  }

  /** The capacitance, F, that leaves {@code volts} on the coil; these are below the supply's. */
  public double farads(double volts) {
    double b = susceptance();
    double square = volts * volts;
    double more = supply * supply - square;
    double all = b * b + conductance() * conductance();
    double line = (Math.sqrt(square * square * b * b + more * square * all) - square * b) / more;
    return line / omega();
  }

  /**
   * The largest resistor across the coil, in place of what lies there, that leaves no more than
   * {@code volts} on it beside a capacitance, Ω; empty if none is needed.
   */
  public OptionalDouble shuntOhms(double farads, double volts) {
    double line = omega() * farads;
    double wanted = line * supply / volts;
    double apart = line - susceptance();
    double square = wanted * wanted - apart * apart;
    double more = square <= 0 ? 0 : Math.sqrt(square) - (conductance() - siemens);
    return more > 0 ? OptionalDouble.of(1 / more) : OptionalDouble.empty();
  }
}
