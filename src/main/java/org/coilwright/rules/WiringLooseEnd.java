package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A pin that must be wired is not. */
final class WiringLooseEnd implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("wiring.loose-end", Weight.FIX, "pin that needs a wire and has none")
          .what(
              "Looks at every part that has at least one wire. Both coil pins, all pins of a load"
                  + " (its PE if it is of class I, or not written and a heater or motor),"
                  + " both pins of a two-pin part and of a supply need a wire; a contact or pole"
                  + " needs one at its other end once one end is wired; a clamp with a single wire"
                  + " leads nowhere.")
          .why("Current that has no way on does not flow: what hangs on this pin does nothing.")
          .remedy("Wire the pin, or take the wire off the other end.")
          .blind(
              "Contacts, outputs and poles that are left free at both ends, which is what spare"
                  + " ones look like; a wire that goes to the wrong place.")
          .sources("common-practice")
          .consequenceOf(
              "poles.earth-missing",
              "poles.line-missing",
              "poles.neutral-missing",
              "protection.rcd-bypassed")
          .meansWiredOtherwise();

  private final Basis basis;
  private final double extraLow;

  WiringLooseEnd(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.COMMON_PRACTICE);
    extraLow = tables.figure("separation.elv-ac").value();
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    Circuit circuit = study.circuit();
    List<Outcome> outcomes = new ArrayList<>();
    int ends = 0;
    for (Part part : circuit.netlist().parts().values()) {
      LooseEnds found = LooseEnds.of(part, circuit, extraLow);
      ends += found.looked();
      found.loose().forEach(end -> outcomes.add(loose(circuit, part, end)));
    }
    if (outcomes.isEmpty()) {
      outcomes.add(
          Subject.ofCircuit(FACTS, circuit.netlist())
              .satisfied("Each of the %s ends that need a wire has one.".formatted(ends), basis));
    }
    return outcomes;
  }

  private Outcome loose(Circuit circuit, Part part, LooseEnds.End end) {
    String missing =
        end.pins().stream()
            .map(pin -> new Terminal(part.name(), pin).toString())
            .collect(Collectors.joining(" or "));
    var finding =
        Subject.of(FACTS, end.mark(), part.name() + "." + end.pins().get(0))
            .violated(
                "%s is loose".formatted(missing),
                end.sentence().formatted(missing),
                "%s needs a wire".formatted(missing));
    for (String pin : end.wired()) {
      Terminal other = new Terminal(part.name(), pin);
      for (Wire wire : circuit.wiresAt(other)) {
        finding.alsoAt(wire.endAt(other).mark(), "ends on %s".formatted(other));
      }
    }
    return finding.todo(end.remedy().formatted(missing), basis);
  }
}
