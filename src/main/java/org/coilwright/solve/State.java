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
public record State(Map<String, Boolean> positions, Map<String, Boolean> pulledIn) {}
