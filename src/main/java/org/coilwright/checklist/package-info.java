/**
 * What the electrician reads and fills in, as plain records. May import quantity, netlist, table,
 * circuit, solve, rule, behaviour, drawing and diagram.
 */
@org.jspecify.annotations.NullMarked
package org.coilwright.checklist;
