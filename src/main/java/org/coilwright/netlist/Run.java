package org.coilwright.netlist;

import java.util.List;
import java.util.Optional;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.Quantity;

/** A cable, cord or conduit that holds several wires. */
public record Run(
    String name,
    Mark mark,
    Optional<Written<Quantity>> length,
    Optional<Written<ConductorSize>> size,
    Optional<Written<Quantity>> insulation,
    Optional<Written<String>> installed,
    List<Written<String>> sharesWith,
    Optional<Written<String>> coreMaterial,
    Optional<Written<Boolean>> flexible) {}
