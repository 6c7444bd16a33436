package org.coilwright.rules;

import java.util.Optional;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.table.Cited;

/**
 * Between which temperatures a thermostat or cut-out opens.
 *
 * @param written what stands in the netlist, with its tolerance if one is written
 * @param text the same as written
 * @param taken what it may miss its mark by, up and down, in K; 0 if its tolerance is written
 */
record OpeningBand(Quantity written, String text, double taken) {
  /**
   * Its band; empty if no temperature is written.
   *
   * @param usual what to take, in K, where no tolerance is written
   */
  static Optional<OpeningBand> of(Part.Thermal thermal, Cited<Double> usual) {
    return thermal
        .opensAt()
        .map(w -> new OpeningBand(w.value(), w.text(), w.value().isExact() ? usual.value() : 0));
  }

  /** °C below which it surely does not open. */
  double lowest() {
    return written.low() - taken;
  }

  /** °C at which it has surely opened. */
  double highest() {
    return written.high() + taken;
  }

  /** True if its tolerance is not written. */
  boolean isTaken() {
    return taken > 0;
  }

  /** How it would be written with its tolerance if it were set to {@code nominal} °C. */
  String at(double nominal) {
    double half = (written.high() - written.low()) / 2;
    String set = Printed.given(nominal, Dimension.TEMPERATURE);
    return half == 0 ? set : "%s ± %s K".formatted(set, Printed.given(half, Dimension.COUNT));
  }

  /** {@code 98 °C ± 8 K, so by 106 °C}. */
  String by() {
    String so = ", so by " + Printed.of(highest(), Dimension.TEMPERATURE);
    if (isTaken()) {
      return "%s%s if it may miss that by %s K (no tolerance is written)"
          .formatted(text, so, Printed.of(taken, Dimension.COUNT));
    }
    return written.isExact() ? text : text + so;
  }
}
