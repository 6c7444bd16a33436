package org.coilwright.rules;

import java.util.List;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;

/** What can be on together draws more, steadily, than the supply gives. */
final class SupplyOverloaded implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("supply.overloaded", Weight.STOP, "supply overloaded")
          .what(
              "Adds up what coils, lamps, resistors and loads draw from a direct-voltage output in"
                  + " every reachable state, at the highest supply and the least coil resistance,"
                  + " and raises the state that asks for more than the output's `limit:`.")
          .why(
              "An overloaded supply lets its voltage sink or switches off: relays chatter or drop"
                  + " out, and the controller on the same supply may restart with its contacts in"
                  + " any position.")
          .remedy("Use a supply with a higher limit, or coils that draw less.")
          .blind(
              "What the device itself or parts outside the netlist draw from the same output, and"
                  + " a limit that falls with air temperature.")
          .sources("relay-technical-information", "circuit-theory")
          .consequenceOf(
              "wiring.short-circuit",
              "wiring.self-joined",
              "coil.wrong-current-kind",
              "coil.reversed")
          .carriedBy("suppression.underrated");

  private static final SupplyBudget.Question QUESTION =
      new SupplyBudget.Question(
          SupplyBudget::steady,
          "%s is overloaded",
          "It is asked for %s at worst and gives %s: short by %s.",
          "Feed the coils from a supply that gives at least %s, or choose coils that draw less.",
          "%s is asked for %s at worst and gives %s.");

  private final PowerSides sides;
  private final Cited<Double> tolerance;

  SupplyOverloaded(PowerSides sides) {
    this.sides = sides;
    tolerance = sides.tables().figure("coil.resistance-tolerance");
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return ByShaft.open(study, sides, SupplyBudget.ask(study, FACTS, tolerance, QUESTION));
  }
}
