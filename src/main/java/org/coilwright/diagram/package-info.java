/**
 * The circuit diagram: which symbols stand on which current path, and the lines between them. May
 * import quantity, netlist, circuit and drawing.
 */
@org.jspecify.annotations.NullMarked
package org.coilwright.diagram;
