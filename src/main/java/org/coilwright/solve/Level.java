package org.coilwright.solve;

/** Where in its tolerance something stands. */
enum Level {
  NOMINAL,
  LOW,
  HIGH
}
