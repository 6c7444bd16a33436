package org.coilwright.solve;

/** An impedance at its three levels. */
record Spread(Impedance nominal, Impedance low, Impedance high) {
  static Spread ohms(double nominal, double low, double high) {
    return new Spread(Impedance.ohms(nominal), Impedance.ohms(low), Impedance.ohms(high));
  }

  static Spread exact(Impedance z) {
    return new Spread(z, z, z);
  }

  /** With a tolerance either way. */
  static Spread within(Impedance z, double tolerance) {
    return new Spread(z, z.times(1 / (1 + tolerance)), z.times(1 + tolerance));
  }

  Impedance at(Level level) {
    return switch (level) {
      case NOMINAL -> nominal;
      case LOW -> low;
      case HIGH -> high;
    };
  }
}
