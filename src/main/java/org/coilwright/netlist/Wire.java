package org.coilwright.netlist;

import java.util.Optional;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.Quantity;

/**
 * A connection between two pins. Where a key is written at the wire it overrides the run's.
 *
 * @param run designation of the run it lies in, if any
 */
public record Wire(
    Mark mark,
    Written<Terminal> from,
    Written<Terminal> to,
    Optional<Written<String>> run,
    Optional<Written<ConductorSize>> size,
    Optional<Written<Quantity>> length,
    Optional<Written<Quantity>> insulation,
    Optional<Written<String>> colour,
    Optional<Written<String>> number,
    Optional<Written<String>> insulationMaterial,
    Optional<Written<Quantity>> clampTemperature) {
  /** The end that lands on {@code terminal}, as written. */
  public Written<Terminal> endAt(Terminal terminal) {
    return from.value().equals(terminal) ? from : to;
  }

  /** The end away from {@code terminal}, as written. */
  public Written<Terminal> farEnd(Terminal terminal) {
    return from.value().equals(terminal) ? to : from;
  }
}
