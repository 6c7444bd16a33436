package org.coilwright.solve;

import java.util.LinkedHashMap;
import java.util.Map;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part;
import org.coilwright.table.Tables;

/** What the parts of a circuit are worth to the solver, whatever is asked of them. */
final class Setup {
  /** Mains frequency where the site does not name it. */
  private static final double USUAL_HERTZ = 50;

  final Circuit circuit;
  final Air air;
  final double hertz;
  final Variables variables;
  final Sources sources;
  final Elements elements;
  final Map<String, CoilModel> coils = new LinkedHashMap<>();

  /** False if everything that hangs together is explored together, whatever that takes. */
  final boolean parts;

  Setup(Circuit circuit, Tables tables) {
    this(circuit, tables, true);
  }

  Setup(Circuit circuit, Tables tables, boolean parts) {
    this.circuit = circuit;
    this.parts = parts;
    this.air = Air.of(circuit, tables);
    this.hertz =
        circuit
            .netlist()
            .site()
            .mains()
            .flatMap(m -> m.frequency())
            .map(f -> f.value().nominal())
            .orElse(USUAL_HERTZ);
    Copper copper = new Copper(tables);
    for (Part part : circuit.netlist().parts().values()) {
      if (part instanceof Part.Relay relay) {
        coils.put(relay.name(), CoilModel.of(relay, tables, copper, air, hertz));
      }
    }
    this.variables = new Variables(circuit);
    this.sources = new Sources(circuit, variables);
    this.elements = new Elements(variables, sources, coils, circuit, tables, air, hertz);
  }
}
