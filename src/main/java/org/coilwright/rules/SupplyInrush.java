package org.coilwright.rules;

import java.util.List;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** Coils that pull in together ask for more than the supply gives. */
final class SupplyInrush implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("supply.inrush", Weight.FIX, "supply too small for the pick-up")
          .what(
              "Adds up what a direct-voltage output gives when every coil that is on in a state"
                  + " pulls in at the same instant, as after a power cut, at the highest supply and"
                  + " the least coil resistance, and holds the largest sum against `limit:`.")
          .why(
              "The voltage sinks while the armatures move, the coils pull in halfway or chatter, and"
                  + " their contacts may weld.")
          .remedy(
              "Use a supply that gives the pick-up current, or let the coils come on one after"
                  + " another.")
          .blind(
              "Cold lamp filaments, the charging of capacitors in electronic parts, coils colder"
                  + " than their data sheet assumes, and supplies that give more than their limit"
                  + " for a moment.")
          .sources("transformer-sizing", "relay-technical-information", "circuit-theory")
          .consequenceOf("supply.overloaded", "wiring.short-circuit", "wiring.self-joined")
          .carriedBy("suppression.underrated");

  private static final SupplyBudget.Question QUESTION =
      new SupplyBudget.Question(
          SupplyBudget::pickUp,
          "%s is too small for the pick-up",
          "It is asked for %s while coils pull in and gives %s: short by %s.",
          "Use a supply that gives at least %s, or let the coils come on one after another.",
          "%s is asked for %s at worst while coils pull in and gives %s.");

  private final Cited<Double> tolerance;

  SupplyInrush(Tables tables) {
    tolerance = tables.figure("coil.resistance-tolerance");
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return SupplyBudget.ask(study, FACTS, tolerance, QUESTION);
  }
}
