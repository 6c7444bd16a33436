package org.coilwright.solve;

import java.util.List;

/**
 * Faults that behave alike.
 *
 * @param faults at least one, in the order of the netlist
 * @param like what follows from each of them; its fault is the first
 */
public record FaultClass(List<Fault> faults, FaultCase like) {}
