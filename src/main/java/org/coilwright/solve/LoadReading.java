package org.coilwright.solve;

import java.util.Map;

/**
 * What a load does in one state.
 *
 * @param on true if it takes at least one hundredth of its rated power
 * @param watts at nominal values
 * @param amps r.m.s. current at each of its pins that carries any, pin to amperes
 * @param lines mains lines it hangs on and that feed it, such as {@code L1 L2 L3}
 */
public record LoadReading(
    boolean on, double watts, Map<String, Double> amps, java.util.List<String> lines) {}
