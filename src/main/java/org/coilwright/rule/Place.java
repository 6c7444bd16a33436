package org.coilwright.rule;

import org.coilwright.netlist.Mark;

/**
 * A place in the netlist and what to say about it.
 *
 * @param label what stands under the caret, such as {@code needs at least 9.60 V}
 */
public record Place(Mark mark, String label) {}
