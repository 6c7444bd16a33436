package org.coilwright.solve;

import java.util.Optional;
import org.coilwright.circuit.Branch;

/**
 * A branch as the solver sees it.
 *
 * @param number its place in the zone
 * @param from node, numbered within the zone
 * @param to likewise
 * @param variable what it depends on: an actuator, or whether a source is live; -1 for nothing
 * @param off what it is worth while the variable is false
 * @param on what it is worth while the variable is true
 * @param conductsWhen for contacts: which value of the variable closes it; without a variable,
 *     whether it is closed
 */
record Element(
    int number,
    Kind kind,
    Branch branch,
    int from,
    int to,
    int variable,
    Values off,
    Values on,
    boolean conductsWhen) {
  enum Kind {
    WIRE,
    CONTACT,
    COIL,
    LOAD,
    /** A source whose terminals are not the zone's known potentials. */
    SOURCE,
    DIODE,
    PASSIVE,
    INPUT
  }

  Values values(boolean variableIs) {
    return variableIs ? on : off;
  }

  Optional<Branch.Coil> coil() {
    return branch instanceof Branch.Coil coil && kind == Kind.COIL
        ? Optional.of(coil)
        : Optional.empty();
  }

  /** True for what a current does its work in. */
  boolean isConsumer() {
    return kind == Kind.COIL || kind == Kind.LOAD;
  }
}
