/**
 * Cited tables and the bibliography; a value without a source cannot be loaded. May import
 * quantity; with netlist the only one that knows SnakeYAML.
 */
@org.jspecify.annotations.NullMarked
package org.coilwright.table;
