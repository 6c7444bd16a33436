package org.coilwright.rules;

import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;

/** Where a thing that is known by name stands in the file. */
final class Where {
  private Where() {}

  /** The designation of a part; the circuit's title if there is no such part. */
  static Mark part(Circuit circuit, String designation) {
    Part part = circuit.netlist().parts().get(designation);
    return part == null ? circuit.netlist().about().title().mark() : part.head().mark();
  }

  /** The coil of a relay or contactor. */
  static Mark coil(Circuit circuit, String relay) {
    return circuit.netlist().parts().get(relay) instanceof Part.Relay found
        ? found.coil().mark()
        : part(circuit, relay);
  }
}
