/**
 * What is wired: terminals and branches as a graph; islands, paths, bridges, cut sets as named
 * questions. May import quantity and netlist; the only one that knows JGraphT.
 */
@org.jspecify.annotations.NullMarked
package org.coilwright.circuit;
