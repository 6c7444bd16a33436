package org.coilwright.netlist;

/** When a load shall be on, as a boolean expression over named contacts. */
public sealed interface Intent {
  /** A controlled contact: {@code U1.heat}, {@code S1}, {@code B1}. */
  record Name(Written<String> contact) implements Intent {}

  /** Both. */
  record And(Intent left, Intent right) implements Intent {}

  /** Either. */
  record Or(Intent left, Intent right) implements Intent {}

  /** Not. */
  record Not(Intent of) implements Intent {}
}
