/**
 * What was written: YAML to typed records with line and column; every reading problem is data. May
 * import quantity; with table the only one that knows SnakeYAML.
 */
@org.jspecify.annotations.NullMarked
package org.coilwright.netlist;
