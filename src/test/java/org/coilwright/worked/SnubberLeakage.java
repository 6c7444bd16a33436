package org.coilwright.worked;

/**
 * What a resistor and capacitor across an open contact let through.
 *
 * @param ohms series resistance, Ω
 * @param farads capacitance, F
 */
record SnubberLeakage(double ohms, double farads) {
  /** Voltage that stays on a coil behind the open contact, V r.m.s. */
  double coilVolts(AcCoil coil, double volts, double hertz) {
    return coil.voltsInSeries(volts, ohms, -1 / (2 * Math.PI * hertz * farads));
  }
}
