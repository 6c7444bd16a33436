package org.coilwright.solve;

import java.util.Optional;
import org.coilwright.circuit.Circuit;
import org.coilwright.quantity.Quantity;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * The air around the devices and wires, in °C.
 *
 * @param coldest lowest the site names
 * @param hottest highest the site names
 * @param written false if the site names none and the cited normal service conditions stand in
 */
record Air(Cited<Double> coldest, Cited<Double> hottest, boolean written) {
  static Air of(Circuit circuit, Tables tables) {
    Cited<Double> low = tables.figure("coil.air-coldest");
    Cited<Double> high = tables.figure("coil.air-hottest");
    Optional<Quantity> air = circuit.airAround();
    return air.map(a -> new Air(low.map(any -> a.low()), high.map(any -> a.high()), true))
        .orElseGet(() -> new Air(low, high, false));
  }
}
