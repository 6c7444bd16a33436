package org.coilwright.rule;

import org.coilwright.netlist.Mark;

/**
 * What a remedy would have written into the netlist.
 *
 * @param mark what stands there now
 * @param text what shall stand there instead
 */
public record Change(Mark mark, String text) {}
