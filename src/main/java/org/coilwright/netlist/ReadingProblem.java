package org.coilwright.netlist;

import java.util.Optional;

/**
 * Something in the file that cannot be understood. It is data, not an exception.
 *
 * @param mark where, if the trouble has a place
 * @param what what is wrong, one sentence
 * @param remedy what to do about it
 * @param excerpt the line of the file it stands in, if there is one
 */
public record ReadingProblem(
    String file, Optional<Mark> mark, String what, String remedy, Optional<String> excerpt) {}
