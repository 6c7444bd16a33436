package org.coilwright.solve;

import java.util.Optional;
import org.coilwright.circuit.Branch;

/**
 * A branch of a circuit that is switched off.
 *
 * @param part empty for a wire
 * @param branch empty for what is joined inside a device
 * @param from node; the anode of a diode
 * @param ohms between which limits its resistance lies
 */
record DeadEdge(String part, Kind kind, Optional<Branch> branch, int from, int to, Span ohms) {
  enum Kind {
    WIRE,
    CONTACT,
    DIODE,
    PLAIN
  }

  DeadEdge between(int newFrom, int newTo) {
    return new DeadEdge(part, kind, branch, newFrom, newTo, ohms);
  }

  int other(int node) {
    return node == from ? to : from;
  }

  /** True if an insulation test has it joined out: it would break down at the test voltage. */
  boolean isSuppressor() {
    return kind == Kind.DIODE
        || (branch.isPresent()
            && branch.get() instanceof Branch.Passive passive
            && passive.spec() instanceof org.coilwright.netlist.Part.Varistor);
  }
}
