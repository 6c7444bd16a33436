/**
 * What happens: nodal analysis (DC and AC phasors), switching states, turn-off transients. May
 * import quantity, netlist, table and circuit; the only one that knows the linear-algebra library.
 */
@org.jspecify.annotations.NullMarked
package org.coilwright.solve;
