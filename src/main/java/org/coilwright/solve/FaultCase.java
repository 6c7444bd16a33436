package org.coilwright.solve;

import java.util.List;
import java.util.Optional;

/**
 * A fault and what follows from it.
 *
 * @param effects one for each load and effect, worst first; empty if every load does what it should
 * @param shorted designations of the sources that get a path without a load
 * @param crossing mains on extra-low voltage, if the fault brings it there
 * @param explored false if the fault joins more independent contacts than are explored together:
 *     then the effects are not known
 */
public record FaultCase(
    Fault fault,
    List<LoadEffect> effects,
    List<String> shorted,
    Optional<Crossing> crossing,
    boolean explored) {

  /** How bad it is; worst first. */
  public enum Harm {
    /** Mains reaches what people take for safe to touch. */
    CROSSES,
    /** A load stays on or starts, and nothing turns it off by itself. */
    STAYS_ON,
    /** A load stays on or starts, until a thermostat or cut-out opens. */
    STAYS_ON_LIMITED,
    /** What follows is not known. */
    UNKNOWN,
    /** A source is short-circuited. */
    SHORT_CIRCUIT,
    /** A line stays on a load that is off. */
    STAYS_LIVE,
    /** A load does not work as it should. */
    FAILS,
    /** Nothing changes; nobody notices. */
    HIDDEN
  }

  /** The worst that follows. */
  public Harm harm() {
    if (crossing.isPresent()) {
      return Harm.CROSSES;
    }
    List<LoadEffect> on = effects.stream().filter(LoadEffect::isUnasked).toList();
    if (!on.isEmpty()) {
      return on.stream().allMatch(LoadEffect::isLimited) ? Harm.STAYS_ON_LIMITED : Harm.STAYS_ON;
    }
    if (!explored) {
      return Harm.UNKNOWN;
    }
    if (!shorted.isEmpty()) {
      return Harm.SHORT_CIRCUIT;
    }
    if (effects.stream().anyMatch(e -> e.effect() == LoadEffect.Effect.STAYS_LIVE)) {
      return Harm.STAYS_LIVE;
    }
    return effects.isEmpty() ? Harm.HIDDEN : Harm.FAILS;
  }
}
