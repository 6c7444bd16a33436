package org.coilwright.solve;

import java.util.BitSet;
import org.coilwright.circuit.Branch;

/** Finds the zone of a branch, and the situation that a state of the whole circuit puts it in. */
final class Lookup {
  private final Model model;
  private final Variables variables;

  Lookup(Model model) {
    this.model = model;
    this.variables = model.setup.variables;
  }

  Model model() {
    return model;
  }

  /**
   * The zone of a branch.
   *
   * @throws IllegalArgumentException if it is not of this circuit
   */
  Zone zoneOf(Branch branch) {
    return model
        .grid
        .zoneOf(branch)
        .orElseThrow(() -> new IllegalArgumentException("not of this circuit: " + branch.id()));
  }

  Element elementOf(Zone zone, Branch branch) {
    return zone.element(branch)
        .orElseThrow(() -> new IllegalArgumentException("not of this circuit: " + branch.id()));
  }

  Situation situation(Zone zone, State state) {
    Group group = model.groupOf.get(zone);
    if (group == null) {
      throw new IllegalStateException("zone " + zone.number + " is in no group");
    }
    return situation(group, state);
  }

  Situation situation(Group group, State state) {
    return group.situation(bits(group, state));
  }

  /** A group's own part of a state. */
  BitSet bits(Group group, State state) {
    BitSet bits = new BitSet();
    for (int slot = 0; slot < group.firstSource(); slot++) {
      int variable = group.variables.get(slot);
      int relay = variable - variables.firstRelay();
      bits.set(
          slot,
          relay < 0
              ? state.isOperated(variables.columns().get(variable))
              : state.isIn(variables.relays().get(relay)));
    }
    return bits;
  }
}
