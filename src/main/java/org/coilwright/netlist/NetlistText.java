package org.coilwright.netlist;

import java.util.List;

/**
 * The file as text, for excerpts and for the record.
 *
 * @param file name as the user gave it; {@code -} for standard input
 * @param lines without line ends
 * @param sha256 lower-case hex digest of the bytes
 */
public record NetlistText(String file, List<String> lines, String sha256) {}
