package org.coilwright.solve;

import java.util.Optional;
import org.coilwright.quantity.CurrentKind;

/**
 * What a coil gets in one state. Voltages are magnitudes (AC r.m.s.) across the coil.
 *
 * @param volts at nominal values; for DC the sign tells the direction, first pin positive
 * @param lowest at the worst corner downwards
 * @param lowestCorner that corner in words: {@code supply at 20.4 V, line at 45 °C, coil cold}
 * @param highest at the worst corner upwards
 * @param highestCorner that corner in words
 * @param kind kind of the current that reaches it; UNSTATED if none does
 * @param amps holding current at nominal values
 * @param pickUpAmps current while it pulls in (equal to amps for DC)
 * @param source designation of the supply that drives it, if one does
 * @param sourceVolts that supply's terminal voltage at the lowest corner
 */
public record CoilReading(
    double volts,
    double lowest,
    String lowestCorner,
    double highest,
    String highestCorner,
    CurrentKind kind,
    double amps,
    double pickUpAmps,
    boolean pulledIn,
    Optional<String> source,
    double sourceVolts) {}
