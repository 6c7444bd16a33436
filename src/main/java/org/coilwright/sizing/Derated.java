package org.coilwright.sizing;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.table.Cited;

/**
 * A rating and all that lowers or raises it.
 *
 * @param rated A, before any factor
 * @param factors in the order in which they are written down
 * @param cited where {@code rated} comes from; empty if the part itself says it
 */
public record Derated(double rated, List<Factor> factors, List<Cited<Double>> cited) {
  /** A, after all factors. */
  public double amps() {
    return factors.stream().mapToDouble(f -> f.value().value()).reduce(rated, (a, b) -> a * b);
  }

  /** {@code 25 A × 0.87 (air at 53 °C) × 0.80 (close-mounted) = 17.4 A}. */
  public String words() {
    StringBuilder words = new StringBuilder(Printed.of(rated, Dimension.CURRENT));
    factors.forEach(f -> words.append(" × ").append(f.words()));
    if (!factors.isEmpty()) {
      words.append(" = ").append(Printed.of(amps(), Dimension.CURRENT));
    }
    return words.toString();
  }

  /** Every citation the result rests on. */
  public List<Cited<Double>> basis() {
    List<Cited<Double>> all = new ArrayList<>(cited);
    factors.forEach(f -> all.add(f.value()));
    return List.copyOf(all);
  }
}
