package org.coilwright.checklist;

import org.coilwright.rule.Basis;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;

/** Grounds in the making: how a figure came about, and the citations it rests on. */
final class Reasons {
  private Reasons() {}

  /** Computed so, from these figures. */
  static Grounds of(String how, Cited<?>... figures) {
    return of(how, Basis.of(figures));
  }

  static Grounds of(String how, Basis basis) {
    return new Grounds(
        how, basis.sources(), words(basis.standing()), basis.standing() == Standing.FROM_MEMORY);
  }

  /** Follows from the netlist and the order of the work alone. */
  static Grounds ofNetlist(String how) {
    return new Grounds(how, java.util.List.of(), "as the netlist has it", false);
  }

  static String words(Standing standing) {
    return standing.word().replace('-', ' ');
  }
}
