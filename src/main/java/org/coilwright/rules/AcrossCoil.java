package org.coilwright.rules;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Coil;
import org.coilwright.circuit.Branch.DiodeBranch;
import org.coilwright.circuit.Branch.Passive;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
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
  static final String VARISTOR = "varistor";
  static final String RC = "rc";

  static AcrossCoil of(Circuit circuit, Coil coil) {
    Set<Node> first = circuit.net(coil.from());
    Set<Node> second = circuit.net(coil.to());
    return new AcrossCoil(
        coil,
        circuit.branches(DiodeBranch.class).stream()
            .filter(d -> isAcross(d, first, second))
            .toList(),
        circuit.branches(Passive.class).stream()
            .filter(p -> !(p.spec() instanceof Part.Lamp) && isAcross(p, first, second))
            .toList(),
        coil.spec().suppression());
  }

  private static boolean isAcross(Branch branch, Set<Node> first, Set<Node> second) {
    return (first.contains(branch.from()) && second.contains(branch.to()))
        || (first.contains(branch.to()) && second.contains(branch.from()));
  }

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

  /** The coils that a suppressor lies across. */
  static List<Coil> under(Circuit circuit, Branch suppressor) {
    return circuit.branches(Coil.class).stream()
        .filter(c -> isAcross(suppressor, circuit.net(c.from()), circuit.net(c.to())))
        .toList();
  }
}
