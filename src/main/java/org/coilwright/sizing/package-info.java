/**
 * Choosing a rating: load, derating, conductors, devices, life, heat, preferred series. May import
 * quantity, netlist, table, circuit and solve.
 */
@org.jspecify.annotations.NullMarked
package org.coilwright.sizing;
