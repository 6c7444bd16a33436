package org.coilwright.solve;

import java.util.Map;

/**
 * A steady state of the circuit.
 *
 * @param positions independent actuator name to operated (true) or not, in the order of {@link
 *     Study#columns}. Thermostats, cut-outs and protective devices: true means "closed, has not
 *     opened"; for an NC form this is still "conducts"
 * @param pulledIn relay or contactor designation to armature position
 */
public record State(Map<String, Boolean> positions, Map<String, Boolean> pulledIn) {
  /** True if that relay's armature is in; false also if there is no such relay. */
  public boolean isIn(String relay) {
    return Boolean.TRUE.equals(pulledIn.get(relay));
  }

  /** True if that contact is operated; false also if it is no column. */
  public boolean isOperated(String actuator) {
    return Boolean.TRUE.equals(positions.get(actuator));
  }
}
