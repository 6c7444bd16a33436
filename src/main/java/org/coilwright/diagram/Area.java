package org.coilwright.diagram;

import java.util.List;

/**
 * What is drawn together.
 *
 * @param title what it is
 * @param power true for the circuit of the loads
 */
record Area(String title, boolean power, List<Unit> units) {}
