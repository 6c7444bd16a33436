package org.coilwright.solve;

import org.coilwright.quantity.CurrentKind;

/**
 * What a contact carries or holds off in one state.
 *
 * @param closed whether it conducts
 * @param amps through it (r.m.s.)
 * @param makeAmps through it while the coils behind it pull in
 * @param volts across it while it is open, at the highest supply; zero when closed
 */
public record ContactReading(
    boolean closed, double amps, double makeAmps, double volts, CurrentKind kind) {}
