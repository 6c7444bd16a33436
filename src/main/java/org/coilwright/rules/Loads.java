package org.coilwright.rules;

import java.util.List;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part;

/** The loads of a circuit. */
final class Loads {
  private Loads() {}

  /** Heaters and other loads, in the order of the netlist. */
  static List<Part> of(Circuit circuit) {
    return circuit.netlist().parts().values().stream().filter(Loads::isLoad).toList();
  }

  /** Their designations. */
  static List<String> names(Circuit circuit) {
    return of(circuit).stream().map(Part::name).toList();
  }

  private static boolean isLoad(Part part) {
    return part instanceof Part.Heater || part instanceof Part.OtherLoad;
  }
}
