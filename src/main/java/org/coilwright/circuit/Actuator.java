package org.coilwright.circuit;

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
