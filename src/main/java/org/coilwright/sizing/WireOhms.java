package org.coilwright.sizing;

import java.util.Optional;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.solve.CopperLaw;
import org.coilwright.table.Cited;
import org.coilwright.table.ConductorTable;
import org.coilwright.table.Tables;

/** Resistance of a copper wire by its size, and what it loses. */
public final class WireOhms {
  private static final double TABLE_CELSIUS = 20;
  private static final double METRES_PER_KM = 1000;

  private WireOhms() {}

  /**
   * Ω of one metre of solid or stranded wire.
   *
   * @param celsius temperature of the core
   * @return empty if no table has the size
   */
  public static Optional<Cited<Double>> perMetre(
      ConductorSize size, double celsius, Tables tables) {
    return new ConductorTable(tables)
        .ohmPerKm(size, false)
        .map(
            perKm ->
                perKm.map(
                    ohms ->
                        CopperLaw.from(tables).at(ohms, TABLE_CELSIUS, celsius) / METRES_PER_KM));
  }

  /** How many times one wire's loss a circuit loses: there and back, or √3 with three lines. */
  public static double wires(int loaded) {
    return loaded == 3 ? Math.sqrt(3) : 2;
  }
}
