package org.coilwright.solve;

/**
 * What a resistor and capacitor across an open contact let through.
 *
 * @param ohms series resistance, Ω
 * @param farads capacitance, F
 */
public record SnubberLeakage(double ohms, double farads) {
  /** Reactance at {@code hertz}, Ω; negative, because it is a capacitor. */
  public double reactance(double hertz) {
    return -1 / (2 * Math.PI * hertz * farads);
  }

  /** Magnitude of the impedance at {@code hertz}, Ω. */
  public double impedance(double hertz) {
    return Math.hypot(ohms, reactance(hertz));
  }

  /** Current with the load's own impedance neglected, A r.m.s.: the highest short of resonance. */
  public double amps(double volts, double hertz) {
    return volts / impedance(hertz);
  }

  /** Voltage that stays on a coil behind the open contact, V r.m.s. */
  public double coilVolts(AcCoil coil, double volts, double hertz) {
    return coil.voltsInSeries(volts, ohms, reactance(hertz));
  }

  /** Voltage a leakage current leaves on a direct-current coil, V. */
  public static double directCoilVolts(double leakageAmps, double coilOhms) {
    return leakageAmps * coilOhms;
  }
}
