package org.coilwright.rules;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
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

/** One broken wire or lost supply leaves a load on. */
final class FaultBreakHoldsOn implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("fault.break-holds-on", Weight.STOP, "broken wire leaves a load on")
          .what(
              "Breaks each wire, takes each supply away and shorts each coil and each suppressor,"
                  + " one at a time, and computes every position again, with what the short takes"
                  + " away from other relays on the same supply; raised where a load is then on"
                  + " when it should be off.")
          .why(
              "A loose clamp or a blown control fuse is the commonest fault there is: it should end"
                  + " with the load off.")
          .remedy(
              "Let a load hang on contacts that a pulled-in coil holds closed, so that a break"
                  + " turns it off.")
          .blind(
              "Wires that break now and then, and two breaks at once; suppressors across a contact,"
                  + " which bridge it as a weld does.")
          .sources("circuit-theory", "motor-control-handbook");

  private static final Set<Fault.Kind> KINDS =
      EnumSet.of(
          Fault.Kind.WIRE_BROKEN,
          Fault.Kind.SUPPLY_LOST,
          Fault.Kind.COIL_SHORTED,
          Fault.Kind.SUPPRESSOR_SHORTED);

  private final Basis basis;

  FaultBreakHoldsOn(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    KeptOn.all(study, KINDS).forEach(kept -> outcomes.add(check(kept)));
    return outcomes;
  }

  /** A shorted suppressor across a contact does what the contact does when it welds. */
  private static boolean bridgesContact(Study study, Fault fault) {
    return fault.kind() == Fault.Kind.SUPPRESSOR_SHORTED
        && fault.at().stream()
            .flatMap(id -> study.circuit().branch(id).stream())
            .anyMatch(branch -> CoilWays.bridgesContact(study.circuit(), branch));
  }

  private Outcome check(KeptOn kept) {
    String name = kept.name();
    List<KeptOn.Held> held =
        kept.held().stream().filter(h -> !bridgesContact(kept.study(), h.fault())).toList();
    if (!held.isEmpty()) {
      return kept.finding(FACTS, held, "a break leaves %s on".formatted(name), "is on then")
          .todo(
              "Let %s hang on a contact that closes when its coil is energised, so that a break turns it off."
                  .formatted(name),
              basis);
    }
    return kept.open(FACTS)
        .orElseGet(
            () ->
                Subject.of(FACTS, kept.load().head().mark(), name)
                    .satisfied(
                        "No broken wire, lost supply or shorted coil leaves %s on when it should be off."
                            .formatted(name),
                        basis));
  }
}
