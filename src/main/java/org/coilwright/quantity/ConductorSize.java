package org.coilwright.quantity;

import java.util.OptionalInt;

/**
 * A conductor's cross-section. AWG sizes keep their gauge number, because resistance and ampacity
 * are tabulated by it.
 *
 * @param mm2 cross-section in mm²
 * @param awg the gauge number if that is what was written; 0 stands for 1/0, -1 for 2/0, and so on
 */
public record ConductorSize(double mm2, OptionalInt awg) {}
