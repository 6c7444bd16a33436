package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Run;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;

/** A mains wire does not say how thick or how long it is. */
final class ConductorSizeMissing implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("conductor.size-missing", Weight.FIX, "mains wire without size or length")
          .what(
              "Looks whether every mains wire, or the run it lies in, has a size and a length. A"
                  + " wire in no run and without a length is a bridge between neighbouring clamps.")
          .why("Whether it is protected, and what it loses, cannot be worked out without.")
          .remedy("Write the size and the length at the run or at the wire.")
          .blind("Whether what is written is what was drawn in.")
          .sources("common-practice");

  private final PowerSides sides;
  private final Basis basis;

  ConductorSizeMissing(PowerSides sides) {
    this.sides = sides;
    basis = Basis.of(FACTS, sides.tables(), Standing.COMMON_PRACTICE);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    Set<String> seen = new LinkedHashSet<>();
    for (Stretch stretch : sides.of(study).stretches()) {
      for (Conductor wire : stretch.wires()) {
        if (!wire.bridge()) {
          String missing =
              (wire.size().isEmpty() ? "size" : "")
                  + (wire.size().isEmpty() && wire.length().isEmpty() ? " and " : "")
                  + (wire.length().isEmpty() ? "length" : "");
          String name =
              wire.run().map(Run::name).orElse("%s to %s".formatted(wire.from(), wire.to()));
          if (seen.add(name + missing)) {
            outcomes.add(judge(wire, name, missing));
          }
        }
      }
    }
    return outcomes;
  }

  private Outcome judge(Conductor wire, String name, String missing) {
    Mark mark = wire.run().map(Run::mark).orElse(wire.mark());
    Subject subject =
        Subject.of(
            FACTS, mark, wire.run().map(Run::name).orElse(wire.wire().from().value().toString()));
    if (missing.isEmpty()) {
      return subject.satisfied("%s has a size and a length.".formatted(name), basis);
    }
    return subject
        .violated(
            "%s has no %s".formatted(name, missing),
            "It carries mains, and its %s is not written.".formatted(missing),
            "no " + missing)
        .alsoAt(wire.mark(), "a mains wire")
        .todo("Write the %s of %s.".formatted(missing, name), basis);
  }
}
