package org.coilwright.sizing;

import java.util.Optional;
import org.coilwright.netlist.Site;
import org.coilwright.quantity.Quantity;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * How far a mains voltage may rise: as its tolerance says, and where none is written by the usual
 * band of the practice (IEC 60038, ANSI C84.1).
 *
 * @param high V
 * @param taken the share that was taken; empty if the tolerance is written
 */
public record MainsBand(double high, Optional<Cited<Double>> taken) {
  /**
   * Of an alternating mains voltage.
   *
   * @param volts as written
   */
  public static MainsBand of(Quantity volts, Site.Practice practice, Tables tables) {
    if (!volts.isExact()) {
      return new MainsBand(volts.high(), Optional.empty());
    }
    Cited<Double> share =
        tables.figure(
            practice == Site.Practice.NEC
                ? "sizing.nec-voltage-band"
                : "sizing.rated-voltage-band");
    return new MainsBand(volts.nominal() * (1 + share.value()), Optional.of(share));
  }
}
