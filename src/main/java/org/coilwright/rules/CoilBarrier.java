package org.coilwright.rules;

import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part.InsulationSpec;
import org.coilwright.solve.InsulationDistances;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** What the tables ask of the insulation between a relay's coil and its contacts. */
final class CoilBarrier {
  private final Cited<Double> testVoltage;
  private final Cited<Double> testedFor;
  private final InsulationDistances distances;

  CoilBarrier(Tables tables) {
    testVoltage = tables.figure("separation.test-voltage-reinforced");
    testedFor = tables.figure("separation.wire-voltage-to-earth");
    distances = new InsulationDistances(tables);
  }

  /** Weighs what is written of a relay in this circuit, which has a mains. */
  InsulationGrade grade(Circuit circuit, VoltageBands bands, InsulationSpec spec) {
    return InsulationGrade.of(
        spec,
        bands.toEarth().nominal(),
        circuit.netlist().site().altitude().map(a -> a.value().high()),
        distances,
        testVoltage,
        testedFor);
  }
}
