package org.coilwright.table;

import java.util.Map;
import java.util.Optional;
import org.coilwright.quantity.ConductorSize;

/**
 * Resistance of copper conductors at 20 °C. A size the tables do not name has no answer: nothing is
 * interpolated, because the tabulated figures are largest values of real constructions.
 */
public final class ConductorTable {
  private final Tables tables;

  public ConductorTable(Tables tables) {
    this.tables = tables;
  }

  /**
   * Largest resistance of one metre of copper conductor times a thousand.
   *
   * @param flexible true for fine-stranded conductors (class 5); gauge sizes have one column
   * @return Ω/km at 20 °C
   */
  public Optional<Cited<Double>> ohmPerKm(ConductorSize size, boolean flexible) {
    if (size.awg().isPresent()) {
      return tables.lookup(
          "conductor-resistance-awg", Map.of("awg", gauge(size.awg().getAsInt())), "stranded-20");
    }
    return tables.lookup(
        "conductor-resistance-mm2", Map.of(), size.mm2(), flexible ? "class-5" : "class-2");
  }

  private static String gauge(int awg) {
    return awg > 0 ? Integer.toString(awg) : (1 - awg) + "/0";
  }
}
