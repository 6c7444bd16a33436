package org.coilwright.solve;

/**
 * Resistance and reactance in series, in ohms.
 *
 * @param re resistance
 * @param im reactance; positive for an inductance
 */
record Impedance(double re, double im) {
  static Impedance ohms(double resistance) {
    return new Impedance(resistance, 0);
  }

  /** From its size and the power factor of an inductive element. */
  static Impedance inductive(double size, double powerFactor) {
    double factor = Math.min(1, Math.max(0, powerFactor));
    return new Impedance(size * factor, size * Math.sqrt(1 - factor * factor));
  }

  Impedance times(double factor) {
    return new Impedance(re * factor, im * factor);
  }

  double size() {
    return Math.hypot(re, im);
  }
}
