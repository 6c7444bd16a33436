/** The switching settings against a plant over time. May import quantity, netlist and table. */
@org.jspecify.annotations.NullMarked
package org.coilwright.behaviour;
