package org.coilwright.solve;

import java.util.List;

/**
 * A fault and the ways in which it may show; the worst of them counts.
 *
 * @param ways at least one
 */
record Breakage(Fault fault, List<Alteration> ways) {
  static Breakage of(Fault fault, Alteration way) {
    return new Breakage(fault, List.of(way));
  }
}
