/**
 * The switching settings against a plant over time. May import quantity, netlist, table, circuit,
 * solve and drawing.
 */
@org.jspecify.annotations.NullMarked
package org.coilwright.behaviour;
