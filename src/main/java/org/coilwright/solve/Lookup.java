package org.coilwright.solve;

import java.util.BitSet;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import org.coilwright.circuit.Branch;

/** Finds the zone of a branch, and the situation that a state of the whole circuit puts it in. */
final class Lookup {
  private final Model model;
  private final Variables variables;
  private final boolean every;
  private final Company company;

  /**
   * Looks into a model.
   *
   * @param every true if the states that it is asked for are every combination of the groups' own;
   *     else other groups are at rest in them, whatever they could do
   */
  Lookup(Model model, boolean every) {
    this.model = model;
    this.variables = model.setup.variables;
    this.every = every;
    this.company = new Company(model);
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

  /** The zone of a branch in a state, with what hangs on the same feed as it stands there. */
  ZoneInState at(Branch branch, State state) {
    return at(zoneOf(branch), state);
  }

  /** A zone in a state, with what hangs on the same feed as it stands there. */
  ZoneInState at(Zone zone, State state) {
    Situation situation = situation(zone, state);
    return model
        .grid
        .bundleOf(zone)
        .map(bundle -> ZoneInState.together(bundle.together(), situation, on(bundle, state)))
        .orElseGet(() -> ZoneInState.alone(zone, situation));
  }

  /**
   * The same, but where states are listed one group at a time with the other circuits on the feed
   * as that harms most.
   */
  ZoneInState atWorst(Branch branch, State state, ToDoubleFunction<ZoneInState> harm) {
    Optional<Bundle> bundle = every ? Optional.empty() : model.grid.bundleOf(zoneOf(branch));
    return bundle.isEmpty()
        ? at(branch, state)
        : company.worst(bundle.get(), situation(zoneOf(branch), state), harm);
  }

  private BitSet on(Bundle bundle, State state) {
    BitSet on = new BitSet();
    for (Zone zone : bundle.circuits) {
      Situation situation = situation(zone, state);
      Company.put(on, situation.group, situation.bits);
    }
    return on;
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
