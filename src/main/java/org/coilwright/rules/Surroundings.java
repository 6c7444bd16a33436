package org.coilwright.rules;

import java.util.OptionalDouble;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Netlist;
import org.coilwright.quantity.Quantity;
import org.coilwright.table.Tables;

/**
 * The air around devices and wires, at its warmest.
 *
 * @param insideKnown false if there is a box whose warmth is neither written nor could be computed
 */
record Surroundings(double insideHigh, double outsideHigh, boolean insideKnown) {
  static Surroundings of(Circuit circuit, Tables tables) {
    var site = circuit.netlist().site();
    double normal = tables.figure("coil.air-hottest").value();
    double outside =
        site.ambient().or(site::enclosureAir).map(a -> a.value().high()).orElse(normal);
    double inside = circuit.airAround().map(Quantity::high).orElse(normal);
    return new Surroundings(
        inside, outside, circuit.insideAir().isPresent() || site.enclosure().isEmpty());
  }

  /** The coldest that the air at the devices gets, °C. */
  static double coldest(Circuit circuit, Tables tables) {
    return circuit.airAround().map(Quantity::low).orElse(tables.figure("coil.air-coldest").value());
  }

  static OptionalDouble altitude(Netlist netlist) {
    return netlist.site().altitude().stream().mapToDouble(a -> a.value().high()).findFirst();
  }
}
