package org.coilwright.solve;

import java.util.Optional;
import org.coilwright.netlist.Mark;
import org.coilwright.table.Cited;

/**
 * The voltages that decide what an armature does. AC as r.m.s.
 *
 * @param operate at or above this it surely pulls in, hot coil included
 * @param operateReason how that came about: {@code 80 % of 24 V, as its data sheet says}
 * @param operateMark of {@code operate} where that decides; empty where the range or a table does
 * @param release at or below this it surely lets go
 * @param releaseReason likewise
 * @param highest at or below this it may stay on for ever
 * @param highestReason likewise
 */
public record CoilLimits(
    Cited<Double> operate,
    String operateReason,
    Optional<Mark> operateMark,
    Cited<Double> release,
    String releaseReason,
    Cited<Double> highest,
    String highestReason) {}
