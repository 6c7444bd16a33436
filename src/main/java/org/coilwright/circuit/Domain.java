package org.coilwright.circuit;

/** What a point of the circuit belongs to, by the sources of its galvanic island. */
public enum Domain {
  /** An alternating source feeds the island, whatever else does. */
  MAINS,
  /** Only direct outputs feed it, each declared {@code isolation: SELV}. */
  SELV,
  /**
   * Only direct outputs feed it, at least one declared {@code isolation: PELV}, none undeclared.
   */
  PELV,
  /** A direct output feeds it whose isolation is not written, or is {@code none}. */
  UNDECLARED_ELV,
  /** No source feeds it. */
  NONE
}
