package org.coilwright.netlist;

/**
 * A value together with where it stands and how it was written.
 *
 * @param value what it means
 * @param text what stands in the file
 * @param mark where it stands
 */
public record Written<T>(T value, String text, Mark mark) {}
