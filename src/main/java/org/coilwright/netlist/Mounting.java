package org.coilwright.netlist;

import org.coilwright.quantity.Worded;

/** How a device sits on its rail. */
public enum Mounting implements Worded {
  SIDE_BY_SIDE,
  SPACED
}
