package org.coilwright.quantity;

/** Direct or alternating current, as written after a unit ({@code 24 V DC}). */
public enum CurrentKind {
  AC,
  DC,
  UNSTATED
}
