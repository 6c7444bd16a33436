package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A part has no wire at all. */
final class WiringUnusedPart implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("wiring.unused-part", Weight.NOTE, "part without a wire")
          .what("Raised for each part on which no wire ends.")
          .why(
              "Either the part is a leftover, or its wires were forgotten and it does nothing of"
                  + " what it is there for.")
          .remedy("Wire the part, or take it out of the netlist.")
          .blind("A part that is wired but to no purpose.")
          .sources("common-practice");

  private final Basis basis;

  WiringUnusedPart(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.COMMON_PRACTICE);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    Netlist netlist = study.circuit().netlist();
    List<Outcome> outcomes = new ArrayList<>();
    for (Part part : netlist.parts().values()) {
      if (part.pins().stream()
          .allMatch(pin -> study.circuit().wiresAt(new Terminal(part.name(), pin)).isEmpty())) {
        outcomes.add(unused(part));
      }
    }
    if (outcomes.isEmpty()) {
      // one line for the whole circuit: fifteen lines that say "has a wire" would tell nothing more
      outcomes.add(
          Subject.ofCircuit(FACTS, netlist).satisfied("Every part has at least one wire.", basis));
    }
    return outcomes;
  }

  private Outcome unused(Part part) {
    return Subject.of(FACTS, part.head().mark(), part.name())
        .violated(
            "%s has no wire".formatted(part.name()),
            "None of its pins (%s) is wired.".formatted(String.join(", ", part.pins())),
            "no wire names it")
        .todo("Wire %s, or take it out of the netlist.".formatted(part.name()), basis);
  }
}
