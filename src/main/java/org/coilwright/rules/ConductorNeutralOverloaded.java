package org.coilwright.rules;

import java.util.List;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;

/** A neutral carries more than it may. */
final class ConductorNeutralOverloaded implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("conductor.neutral-overloaded", Weight.STOP, "neutral overloaded")
          .what(
              "Adds what the loads of each line return through a neutral wire and holds the fullest"
                  + " line's sum against what the wire may carry. A star with neutral counts with a"
                  + " whole line current, which the neutral carries once an element has failed.")
          .why(
              "No device opens for the neutral: it burns unseen, and when it parts, voltages run"
                  + " off.")
          .remedy("Give each circuit its own neutral, or take thicker wire.")
          .blind("Harmonics of electronic loads, which add in the neutral.")
          .sources("iec-60364-5-52-tables", "nec", "circuit-theory")
          .consequenceOf("conductor.unprotected", "conductor.overloaded")
          .carriedBy("load.wrong-voltage");

  private final PowerSides sides;

  ConductorNeutralOverloaded(PowerSides sides) {
    this.sides = sides;
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    PowerSides.Seen seen = sides.of(study);
    PerCause outcomes = new PerCause();
    for (Stretch stretch : seen.stretches()) {
      if (stretch.neutral()) {
        outcomes.add(
            stretch.cause(Stretch.names(stretch.loads())),
            stretch
                .demand()
                .map(
                    d ->
                        stretch.inItsAir(
                            s -> WireLoad.judge(FACTS, s, seen.index(), d, sides.tables()),
                            sides.tables()))
                .orElseGet(() -> WireLoad.withoutPower(FACTS, stretch)));
      }
    }
    return ByShaft.open(study, sides, outcomes.outcomes());
  }
}
