package org.coilwright.solve;

import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.netlist.Run;
import org.coilwright.table.Cited;
import org.coilwright.table.ConductorTable;
import org.coilwright.table.Tables;

/** Resistance of copper wire: length, size and temperature. */
final class Copper {
  private final ConductorTable sizes;
  private final CopperLaw law;
  private final double reference;

  Copper(Tables tables) {
    this.sizes = new ConductorTable(tables);
    this.law = CopperLaw.from(tables);
    this.reference = tables.figure("coil.reference-temperature").value();
  }

  /** What copper's resistance is at a temperature, as a multiple of that at 20 °C. */
  double factor(double celsius) {
    return law.ratio(reference, celsius);
  }

  /** Resistance at a temperature relative to that at another. */
  double factor(double celsius, double from) {
    return law.ratio(from, celsius);
  }

  /** Ohms of a conductor; empty if length, size or the size's resistance is not known. */
  Optional<Cited<Double>> ohms(Conductor conductor, double celsius) {
    OptionalDouble length = conductor.length();
    if (length.isEmpty() || conductor.size().isEmpty() || !conductor.isCopper()) {
      return Optional.empty();
    }
    boolean flexible = conductor.run().flatMap(Run::flexible).map(w -> w.value()).orElse(false);
    double metres = length.getAsDouble();
    return sizes
        .ohmPerKm(conductor.size().get(), flexible)
        .map(perKm -> perKm.map(r -> r / 1000 * metres * factor(celsius)));
  }
}
