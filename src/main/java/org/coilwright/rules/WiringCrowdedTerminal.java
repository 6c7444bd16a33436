package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;
import org.coilwright.quantity.Comparison;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** More conductors lie under one clamp than it holds. */
final class WiringCrowdedTerminal implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("wiring.crowded-terminal", Weight.FIX, "too many conductors under one clamp")
          .what(
              "Counts the conductors that end on one pin. A clamp of a terminal strip has two sides"
                  + " and may hold twice as many. Raised above two under one clamp.")
          .why(
              "Under a crowded clamp the thinnest conductor is held by nothing but its neighbours:"
                  + " it works loose, and the joint heats up.")
          .remedy("Bring the conductors together on bridged clamps of a terminal strip.")
          .blind(
              "What the maker of the terminal allows, conductors of unlike size under one clamp,"
                  + " and the origin of the mains, which is a bar and not a clamp.")
          .sources("common-practice");

  private static final String UNIT = "conductors";

  private final Cited<Double> perClamp;

  WiringCrowdedTerminal(Tables tables) {
    perClamp = tables.figure("wiring.conductors-per-clamp");
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    int most = 0;
    for (Part part : study.circuit().netlist().parts().values()) {
      if (part instanceof Part.Mains) {
        continue;
      }
      double limit = part instanceof Part.TerminalStrip ? 2 * perClamp.value() : perClamp.value();
      for (String pin : part.pins()) {
        Terminal terminal = new Terminal(part.name(), pin);
        List<Wire> wires = study.circuit().wiresAt(terminal);
        most = Math.max(most, wires.size());
        if (Comparison.exceeds(wires.size(), limit)) {
          outcomes.add(crowded(terminal, wires, limit));
        }
      }
    }
    if (outcomes.isEmpty()) {
      outcomes.add(
          Subject.ofCircuit(FACTS, study.circuit().netlist())
              .satisfied(
                  "No clamp holds more conductors than it may; the fullest holds %s."
                      .formatted(most),
                  new Measure(most, UNIT),
                  new Measure(perClamp.value(), UNIT),
                  Basis.of(perClamp)));
    }
    return outcomes;
  }

  private Outcome crowded(Terminal terminal, List<Wire> wires, double limit) {
    Wire last = wires.get(wires.size() - 1);
    var finding =
        Subject.of(FACTS, last.endAt(terminal).mark(), terminal.toString())
            .violated(
                "%s holds %s conductors".formatted(terminal, wires.size()),
                String.format(
                    Locale.ROOT,
                    "%s conductors end on %s, which has room for %.0f: %.0f too many.",
                    wires.size(),
                    terminal,
                    limit,
                    wires.size() - limit),
                "the last of %s".formatted(wires.size()))
            .measured(new Measure(wires.size(), UNIT), new Measure(limit, UNIT));
    wires.forEach(wire -> finding.alsoAt(wire.endAt(terminal).mark(), "ends here as well"));
    return finding.todo(
        "Take %s to a terminal strip with bridged clamps and share the conductors out there, or run"
                .formatted(terminal)
            + " one of them on from where another ends.",
        Basis.of(perClamp));
  }
}
