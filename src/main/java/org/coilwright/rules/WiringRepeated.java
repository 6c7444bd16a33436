package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rewiring;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** The same two pins are joined by more than one wire. */
final class WiringRepeated implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("wiring.repeated", Weight.NOTE, "same two pins joined twice")
          .what("Raised for each wire between two pins that an earlier wire already joins.")
          .why(
              "One of the two is mostly a slip of the pen, and then another pin goes without; if"
                  + " both are fitted, one of them can break and nobody notices.")
          .remedy("Strike one of the two out, or correct the pin that one of them should go to.")
          .blind("Two wires that join the same two nodes by way of different pins.")
          .sources("common-practice");

  private final Basis basis;

  WiringRepeated(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.COMMON_PRACTICE);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    Map<List<Terminal>, Wire> seen = new LinkedHashMap<>();
    List<Outcome> outcomes = new ArrayList<>();
    for (Wire wire : study.circuit().netlist().wires()) {
      List<Terminal> ends = ends(wire);
      Wire first = seen.putIfAbsent(ends, wire);
      if (first != null) {
        outcomes.add(repeated(study.circuit().netlist(), ends, first, wire));
      }
    }
    if (outcomes.isEmpty()) {
      outcomes.add(
          Subject.ofCircuit(FACTS, study.circuit().netlist())
              .satisfied("No two wires join the same two pins.", basis));
    }
    return outcomes;
  }

  private static List<Terminal> ends(Wire wire) {
    Terminal from = wire.from().value();
    Terminal to = wire.to().value();
    return from.compareTo(to) <= 0 ? List.of(from, to) : List.of(to, from);
  }

  private Outcome repeated(Netlist netlist, List<Terminal> ends, Wire first, Wire again) {
    String from = ends.get(0).toString();
    String to = ends.get(1).toString();
    return Subject.of(FACTS, again.mark(), from, to)
        .violated(
            "%s and %s are joined twice".formatted(from, to),
            "Two wires run between %s and %s.".formatted(from, to),
            "joins them again")
        .alsoAt(first.mark(), "joins them already")
        .change(Rewiring.without(netlist, again))
        .todo("Strike one out, or correct the pin that one of them should go to.", basis);
  }
}
