package org.coilwright.solve;

import java.util.List;

/**
 * Mains on an extra-low-voltage circuit.
 *
 * @param pins of that circuit that it reaches
 * @param volts highest to the supply's neutral, r.m.s.; zero if only the neutral reaches it
 */
public record Crossing(List<String> pins, double volts) {}
