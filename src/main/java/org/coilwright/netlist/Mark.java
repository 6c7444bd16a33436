package org.coilwright.netlist;

/**
 * A place in a file.
 *
 * @param file name as the user gave it
 * @param line 1 for the first line
 * @param column 1 for the first character
 * @param endColumn one past the last character on that line; at least {@code column + 1}
 */
public record Mark(String file, int line, int column, int endColumn) {}
