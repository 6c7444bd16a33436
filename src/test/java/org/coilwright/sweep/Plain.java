package org.coilwright.sweep;

import java.util.Optional;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.quantity.Quantity;

/** Values as plain numbers. */
final class Plain {
  private Plain() {}

  static double nominal(Optional<Written<Quantity>> written, double otherwise) {
    return written.map(w -> w.value().nominal()).orElse(otherwise);
  }

  static double nominal(Written<Quantity> written) {
    return written.value().nominal();
  }

  static boolean isDirect(Written<Quantity> voltage) {
    return voltage.value().kind() == CurrentKind.DC;
  }
}
