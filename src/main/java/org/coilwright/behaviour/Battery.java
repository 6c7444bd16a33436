package org.coilwright.behaviour;

/**
 * A battery that holds the meter at zero as far as its limits allow.
 *
 * <p>After a step of the load it goes on giving what it gave and only settles in time; this is what
 * makes surplus appear that is none. Losses are left out: they do not decide over a start.
 *
 * @param capacityWh energy between empty and full, Wh; above 0
 * @param dischargeWatts most it gives; at least 0
 * @param chargeWatts most it takes; at least 0
 * @param settlesInSeconds time until a step is worked off; 0 or more
 * @param settling the shape of the way there
 * @param floorFraction level below which it gives nothing, 0 to 1
 * @param startFraction level at the beginning, 0 to 1
 */
public record Battery(
    double capacityWh,
    double dischargeWatts,
    double chargeWatts,
    double settlesInSeconds,
    Settling settling,
    double floorFraction,
    double startFraction) {

  /** How a step is worked off. */
  public enum Settling {
    /** In a straight line, done after the settling time: the mean of the demand over that time. */
    RAMP,
    /** Exponentially; 95 % done after the settling time, so the time constant is a third of it. */
    FIRST_ORDER
  }

  /** The same battery at another level to begin with. */
  public Battery startingAt(double fraction) {
    return new Battery(
        capacityWh,
        dischargeWatts,
        chargeWatts,
        settlesInSeconds,
        settling,
        floorFraction,
        fraction);
  }
}
