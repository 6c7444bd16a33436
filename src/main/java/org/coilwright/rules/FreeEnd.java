package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch.LoadElement;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Quantity;

/** What the free end of a load with two pins is made for. */
enum FreeEnd {
  NEUTRAL,
  LINE,
  /** No rated voltage tells. */
  UNKNOWN;

  /**
   * What a free end is made for: the one of the two mains voltages that the rating is closer to.
   */
  static FreeEnd of(Circuit circuit, Part load) {
    List<Source> lines =
        circuit.branches(Source.class).stream().filter(source -> !source.isDirect()).toList();
    if (lines.size() == 1) {
      return NEUTRAL;
    }
    Optional<Double> rated =
        circuit.branchesOf(load.name()).stream()
            .filter(LoadElement.class::isInstance)
            .map(LoadElement.class::cast)
            .filter(element -> element.ratedVolts().isPresent())
            .map(element -> element.ratedVolts().getAsDouble())
            .findFirst();
    Optional<Double> toNeutral = lines.stream().flatMap(l -> volts(l).stream()).findFirst();
    Optional<Double> toLine = SourceVolts.between(lines.get(0), lines.get(1));
    if (rated.isEmpty() || toNeutral.isEmpty() || toLine.isEmpty()) {
      return UNKNOWN;
    }
    double apart = Math.abs(rated.get() - toNeutral.get());
    double apartFromLines = Math.abs(rated.get() - toLine.get());
    return apart < apartFromLines ? NEUTRAL : LINE;
  }

  private static Optional<Double> volts(Source line) {
    return line.volts().map(Quantity::nominal);
  }
}
