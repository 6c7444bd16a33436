package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.CoreColour;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Printed;

/**
 * What stands beside a conductor: number and run, then size, and colour in the letters of IEC
 * 60757.
 */
final class Conductors {
  private final List<Branch.Conductor> conductors;

  Conductors(Circuit circuit) {
    this.conductors = circuit.branches(Branch.Conductor.class);
  }

  /** Lines of text of a conductor, by its place in the netlist from 0. */
  List<String> lines(int number) {
    Branch.Conductor conductor = conductors.get(number);
    List<String> lines = new ArrayList<>();
    String name = conductor.wire().number().map(Written::text).orElse("" + (number + 1));
    lines.add(name + conductor.run().map(Run::name).map(run -> " " + run).orElse(""));
    List<String> second = new ArrayList<>();
    conductor.size().map(Printed::of).ifPresent(second::add);
    conductor
        .wire()
        .colour()
        .map(Written::text)
        .map(c -> CoreColour.letters(c).orElse(c))
        .ifPresent(second::add);
    if (!second.isEmpty()) {
      lines.add(String.join(" ", second));
    }
    return lines;
  }
}
