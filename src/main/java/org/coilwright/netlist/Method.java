package org.coilwright.netlist;

import org.coilwright.quantity.Worded;

/** Reference methods of laying a wire, and the wiring of a panel. */
public enum Method implements Worded {
  A1,
  A2,
  B1,
  B2,
  C,
  PANEL;

  @Override
  public String word() {
    return this == PANEL ? "panel" : name();
  }
}
