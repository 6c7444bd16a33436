package org.coilwright.solve;

/** Where in its tolerance something stands. */
enum Level {
  NOMINAL(0),
  LOW(1),
  HIGH(2);

  private final int number;

  Level(int number) {
    this.number = number;
  }

  /** A number of its own, the same in each run. */
  int number() {
    return number;
  }
}
