package org.coilwright.solve;

/**
 * What a direct-voltage output or the mains delivers in one state.
 *
 * @param amps steady
 * @param pickUpAmps while every coil that is on in this state pulls in at once
 * @param watts steady
 */
public record SupplyReading(double amps, double pickUpAmps, double watts) {}
