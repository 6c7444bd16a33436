package org.coilwright.solve;

import java.util.List;
import java.util.OptionalDouble;

/**
 * What happens when a direct-current coil is switched off, at nominal values and with a constant
 * inductance. The armature's own travel comes on top of the time, and the inductance falls while it
 * opens: times order suppressors and bound them, they do not predict.
 *
 * @param relay designation
 * @param openedBy ids of the contacts that open
 * @param amps through the coil when they open
 * @param releaseAmps current at which the armature surely lets go
 * @param seconds until the coil's current has fallen to that; zero if nothing takes the current
 * @param coilVolts peak across the coil; empty if nothing takes the current, for then the spark
 *     decides
 * @param contactVolts peak across one of the contacts that open; empty likewise, and where contacts
 *     on both sides of the coil open, for then the circuit does not say how they share it
 * @param method how it was found
 */
public record TurnOff(
    String relay,
    List<String> openedBy,
    double amps,
    double releaseAmps,
    double seconds,
    OptionalDouble coilVolts,
    OptionalDouble contactVolts,
    Method method) {
  /** How a turn-off was found. */
  public enum Method {
    /** Nothing lies across the coil: the current stops in the spark. */
    NOTHING_ACROSS,
    /** Exponentials, pieced together where a diode or varistor starts or stops. */
    CLOSED_FORM,
    /** Integrated step by step: capacitors, or coils that feed one another. */
    INTEGRATED
  }
}
