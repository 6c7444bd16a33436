package org.coilwright.circuit;

import org.jspecify.annotations.Nullable;

/**
 * What moves one or more contacts together.
 *
 * @param name as {@code intent} and the switching table name it: {@code U1.heat}, {@code S1},
 *     {@code B1}, {@code F1}, or the relay's designation {@code K1}
 */
public record Actuator(Kind kind, String name) {
  /** What moves it. */
  public enum Kind {
    /** A controller's volt-free output. */
    OUTPUT,
    /** A hand-operated switch. */
    SWITCH,
    THERMOSTAT,
    CUT_OUT,
    /** A fuse, breaker or residual-current device; counts as closed. */
    PROTECTIVE,
    /** A relay or contactor coil. */
    COIL
  }

  // written out: what the compiler makes of a record is put together at run time, at each start
  @Override
  public boolean equals(@Nullable Object other) {
    return this == other
        || (other instanceof Actuator that && kind == that.kind && name.equals(that.name));
  }

  @Override
  public int hashCode() {
    return name.hashCode();
  }

  /**
   * Its position when nothing drives it: outputs, switches and coils not operated; a thermostat or
   * cut-out as it is when cold. See {@link Branch.Contact#conductsWhen}.
   */
  public boolean atRest(boolean closedWhenCold) {
    return switch (kind) {
      case OUTPUT, SWITCH, COIL -> false;
      case THERMOSTAT, CUT_OUT -> closedWhenCold;
      case PROTECTIVE -> true;
    };
  }
}
