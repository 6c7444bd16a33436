package org.coilwright.rule;

/**
 * A number with its unit, as findings state it.
 *
 * @param number in {@code unit}
 * @param unit printed unit, such as {@code V}
 */
public record Measure(double number, String unit) {}
