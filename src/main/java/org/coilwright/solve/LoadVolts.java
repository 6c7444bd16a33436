package org.coilwright.solve;

/**
 * What reaches a load's worst element in one state, at the element: the one that is furthest from
 * its rated voltage at nominal values.
 *
 * @param rated of that element; 0 if it is not written
 * @param nominal at nominal values
 * @param lowest at the worst corner downwards
 * @param lowestCorner that corner in words
 * @param highest at the worst corner upwards
 * @param highestCorner that corner in words
 */
public record LoadVolts(
    double rated,
    double nominal,
    double lowest,
    String lowestCorner,
    double highest,
    String highestCorner) {}
