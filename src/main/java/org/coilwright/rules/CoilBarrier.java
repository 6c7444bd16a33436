package org.coilwright.rules;

import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part.InsulationSpec;
import org.coilwright.rules.InsulationGrade.Between;
import org.coilwright.solve.InsulationDistances;
import org.coilwright.table.Tables;

/** What the tables ask of the insulation between a relay's coil and its contacts, or of poles. */
final class CoilBarrier {
  private final TestVoltages tests;
  private final InsulationDistances distances;

  CoilBarrier(Tables tables) {
    tests =
        new TestVoltages(
            tables.figure("separation.test-voltage-reinforced"),
            tables.figure("separation.wire-voltage-to-earth"),
            tables.figure("separation.temporary-overvoltage"),
            tables.figure("separation.reinforced-overvoltage-multiple"));
    distances = new InsulationDistances(tables);
  }

  /** Weighs what is written of a relay's coil in this circuit, which has a mains. */
  InsulationGrade grade(Circuit circuit, VoltageBands bands, InsulationSpec spec) {
    return grade(circuit, bands, spec, Between.COIL_AND_CONTACTS);
  }

  /** The same of what lies between two poles or outputs of a device. */
  InsulationGrade gradeOfPoles(Circuit circuit, VoltageBands bands, InsulationSpec spec) {
    return grade(circuit, bands, spec, Between.POLES);
  }

  private InsulationGrade grade(
      Circuit circuit, VoltageBands bands, InsulationSpec spec, Between between) {
    return InsulationGrade.of(
        spec,
        between,
        bands.toEarth().nominal(),
        circuit.netlist().site().altitude().map(a -> a.value().high()),
        distances,
        tests);
  }
}
