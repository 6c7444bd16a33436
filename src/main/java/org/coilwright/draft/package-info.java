/**
 * From a nameplate, a controller's manual and distances to a netlist that passes: designs, and
 * proves its design by the rules. May import quantity, netlist, table, circuit, solve, sizing and
 * rule; the rules themselves are handed in.
 */
@org.jspecify.annotations.NullMarked
package org.coilwright.draft;
