package org.coilwright.solve;

import org.coilwright.table.Cited;

/**
 * Resistance of a copper line and the voltage it costs.
 *
 * @param copper how it follows temperature
 * @param ohmPerKilometre one conductor at 20 °C
 */
public record LineResistance(CopperLaw copper, Cited<Double> ohmPerKilometre) {
  /** Temperature the conductor tables are given for, °C. */
  private static final double TABLE_CELSIUS = 20;

  /** One conductor of {@code metres} at {@code celsius}, Ω. */
  public double ohms(double metres, double celsius) {
    return citedOhms(metres, celsius).value();
  }

  /** The same with its citation. */
  public Cited<Double> citedOhms(double metres, double celsius) {
    return copper.at(ohmPerKilometre.map(r -> r * metres / 1000), TABLE_CELSIUS, celsius);
  }

  /** Drop there and back at a steady current, V. */
  public double loopDrop(double metres, double celsius, double amps) {
    return 2 * ohms(metres, celsius) * amps;
  }

  /** Drop between two lines of a balanced three-phase load of unity power factor, V. */
  public double threePhaseDrop(double metres, double celsius, double amps) {
    return Math.sqrt(3) * ohms(metres, celsius) * amps;
  }

  /** Longest run, one way, whose loop costs at most {@code volts} at {@code amps}, m. */
  public double longestMetres(double volts, double amps, double celsius) {
    return volts / loopDrop(1, celsius, amps);
  }

  /**
   * Drop by a handbook's figure for a cable, which holds all conductors of the circuit and their
   * operating temperature already.
   *
   * @param milliVoltsPerAmpMetre from the handbook's table, mV/(A·m)
   * @param metres one way
   * @return V
   */
  public static double handbookDrop(double milliVoltsPerAmpMetre, double amps, double metres) {
    return milliVoltsPerAmpMetre * amps * metres / 1000;
  }

  /**
   * Factor that brings a measured resistance to 20 °C as IEC 60228 tabulates it, {@code 250/(230 +
   * t)}. For reproducing that table; {@link CopperLaw} is within 0.3 % of it up to 100 °C.
   */
  public static double tabulatedFactorTo20(double celsius) {
    return 250 / (230 + celsius);
  }
}
