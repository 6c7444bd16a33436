package org.coilwright.rules;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Fault;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** One earth fault in the control circuit starts a load, or keeps it from being stopped. */
final class FaultEarthStartsLoad implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("fault.earth-starts-load", Weight.STOP, "earth fault starts a load")
          .what(
              "Joins each conductor of the control circuits to earth, one at a time, and computes"
                  + " every position again; raised where a load is then on when it should be off.")
          .why(
              "A core that is pinched against metal then closes the coil's circuit through earth:"
                  + " the contact that should switch the load is bridged.")
          .remedy(
              "Put the contacts that switch a coil on the side of the supply that is not joined to"
                  + " earth, and the coil straight on the other side.")
          .blind(
              "Two earth faults at once, which matter where the control circuit has no joint to"
                  + " earth; earth faults of the load's own wires.")
          .sources("circuit-theory", "motor-control-handbook")
          .consequenceOf("poles.neutral-only", "poles.load-not-switched");

  private final Basis basis;

  FaultEarthStartsLoad(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    KeptOn.all(study, EnumSet.of(Fault.Kind.EARTHED)).forEach(kept -> outcomes.add(check(kept)));
    return outcomes;
  }

  private Outcome check(KeptOn kept) {
    String name = kept.name();
    if (!kept.held().isEmpty()) {
      return kept.finding(
              FACTS, kept.held(), "an earth fault turns %s on".formatted(name), "is on then")
          .todo(
              "Put the contacts that switch the coil on the side of the supply that is not joined to earth, and the coil straight on the other.",
              basis);
    }
    return kept.open(FACTS)
        .orElseGet(
            () ->
                Subject.of(FACTS, kept.load().head().mark(), name)
                    .satisfied(
                        "No single earth fault in the control circuits leaves %s on when it should be off."
                            .formatted(name),
                        basis));
  }
}
