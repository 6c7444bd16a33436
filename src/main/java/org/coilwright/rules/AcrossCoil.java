package org.coilwright.rules;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.coilwright.circuit.Branch.Coil;
import org.coilwright.circuit.Branch.DiodeBranch;
import org.coilwright.circuit.Branch.Passive;
import org.coilwright.netlist.Written;

/**
 * What lies across a coil: parts wired to both its pins, and what is built into it.
 *
 * @param diodes each wired across it
 * @param others varistors, snubbers and resistors wired across it; a lamp takes no turn-off current
 *     worth counting
 * @param builtIn what the part itself states: "none", "diode", "varistor", "rc"
 */
record AcrossCoil(
    Coil coil, List<DiodeBranch> diodes, List<Passive> others, Optional<Written<String>> builtIn) {
  static final String NONE = "none";
  static final String DIODE = "diode";
  static final String DIODE_WITH_ZENER = "diode-with-zener";
  static final String VARISTOR = "varistor";
  static final String RC = "rc";

  /** True if the part states that this is built in. */
  boolean hasBuiltIn(String kind) {
    return builtIn.filter(written -> word(written).startsWith(kind)).isPresent();
  }

  /** True if the part states that something is built in. */
  boolean hasAnyBuiltIn() {
    return builtIn.filter(written -> !word(written).equals(NONE)).isPresent();
  }

  private static String word(Written<String> written) {
    return written.value().strip().toLowerCase(Locale.ROOT);
  }
}
