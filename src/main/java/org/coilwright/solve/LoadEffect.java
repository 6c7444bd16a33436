package org.coilwright.solve;

import java.util.List;
import java.util.Map;
import org.coilwright.circuit.Actuator;
import org.jspecify.annotations.Nullable;

/**
 * What a fault does to one load.
 *
 * @param positions of the independent contacts in which it shows, in the order of the table
 * @param stoppedBy what alone still turns the load off, whatever stands otherwise; only for a load
 *     that stays on or starts by itself
 * @param onlyHolds true if what stays on is a load that was on before: from off, it stays off
 */
public record LoadEffect(
    String load,
    Effect effect,
    List<Map<String, Boolean>> positions,
    List<Actuator> stoppedBy,
    boolean onlyHolds) {
  /** An effect that does not depend on what was before. */
  public LoadEffect(
      String load, Effect effect, List<Map<String, Boolean>> positions, List<Actuator> stoppedBy) {
    this(load, effect, positions, stoppedBy, false);
  }

  /** How the load differs from what it does when all is whole; worst first. */
  public enum Effect {
    /** On where it should be off. */
    STAYS_ON,
    /** Surely on where it might be off, a start being what turns it on: it starts by itself. */
    STARTS_BY_ITSELF,
    /** On with at least a twentieth more power. */
    STRONGER,
    /** Buzzing: on and off in turn. */
    UNSETTLED,
    /** Off as it should be, but a line that should be gone still reaches it. */
    STAYS_LIVE,
    /** On with at least a twentieth less power. */
    WEAKER,
    /** Off where it should be on. */
    STAYS_OFF,
    /** Surely off where a start should leave it on: it no longer holds. */
    LETS_GO
  }

  // written out: what the compiler makes of a record is put together at run time, at each start
  @Override
  public boolean equals(@Nullable Object other) {
    return this == other
        || (other instanceof LoadEffect that
            && effect == that.effect
            && load.equals(that.load)
            && positions.equals(that.positions)
            && stoppedBy.equals(that.stoppedBy)
            && onlyHolds == that.onlyHolds);
  }

  @Override
  public int hashCode() {
    return (31 * load.hashCode() + positions.hashCode()) * 31 + stoppedBy.hashCode();
  }

  /** True if the load is on although nobody asked for it. */
  public boolean isUnasked() {
    return effect == Effect.STAYS_ON || effect == Effect.STARTS_BY_ITSELF;
  }

  /** True if a thermostat or cut-out still turns it off without anyone doing anything. */
  public boolean isLimited() {
    return stoppedBy.stream()
        .anyMatch(
            a ->
                switch (a.kind()) {
                  case THERMOSTAT, CUT_OUT -> true;
                  case OUTPUT, SWITCH, PROTECTIVE, COIL -> false;
                });
  }
}
