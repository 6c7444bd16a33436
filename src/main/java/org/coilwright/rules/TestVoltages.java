package org.coilwright.rules;

import java.util.List;
import org.coilwright.table.Cited;

/**
 * Test voltages of reinforced insulation.
 *
 * @param published what makers test it at, V
 * @param publishedFor line to earth of the mains that this is published for, V
 * @param above what a basic insulation stands for a short time above the mains, V
 * @param multiple of that what a reinforced one stands
 */
record TestVoltages(
    Cited<Double> published,
    Cited<Double> publishedFor,
    Cited<Double> above,
    Cited<Double> multiple) {
  /** Less than this is too little on a mains of this voltage to earth, whoever asks. */
  double least(double lineToEarth) {
    return (lineToEarth + above.value()) * multiple.value();
  }

  List<Cited<Double>> leastFrom() {
    return List.of(above, multiple);
  }
}
