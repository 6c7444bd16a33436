package org.coilwright.checklist;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.coilwright.checklist.Checklist.WireRow;
import org.coilwright.circuit.Branch;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Wire;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;

/** The wiring list, in the order of the netlist. */
final class WireRows {
  private static final String NOT_STATED = "not stated";

  private final Anatomy anatomy;

  WireRows(Anatomy anatomy) {
    this.anatomy = anatomy;
  }

  List<WireRow> rows() {
    List<Branch.Conductor> conductors = anatomy.circuit().branches(Branch.Conductor.class);
    Set<String> taken = new HashSet<>();
    return java.util.stream.IntStream.range(0, conductors.size())
        .mapToObj(i -> row(i + 1, conductors.get(i), taken))
        .toList();
  }

  private WireRow row(int position, Branch.Conductor conductor, Set<String> taken) {
    Wire wire = conductor.wire();
    return new WireRow(
        Names.free(Names.of(Names.wire(wire), "wired"), taken),
        wire.number().map(Written::text).orElse(String.valueOf(position)),
        wire.from().value().toString(),
        wire.to().value().toString(),
        conductor.bridge() ? "bridge" : conductor.run().map(Run::name).orElse("single"),
        conductor.size().map(Printed::of).orElse(NOT_STATED),
        conductor.length().isPresent()
            ? Printed.given(conductor.length().getAsDouble(), Dimension.LENGTH)
            : NOT_STATED,
        wire.colour().map(Written::text).orElse(NOT_STATED),
        anatomy.carries(conductor.from()));
  }
}
