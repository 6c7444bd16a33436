package org.coilwright.solve;

/** Where in its tolerance everything stands when the circuit is solved. */
enum Corner {
  /** Everything as named, wires at 20 °C. */
  NOMINAL,
  /** Supply low, wires hot, contacts at their highest, coils drawing most and pulling in. */
  LOWEST,
  /** Supply high, wires cold, contacts without resistance, coils drawing least. */
  HIGHEST,
  /** As named, but every coil that is on draws its pick-up current. */
  PICK_UP
}
