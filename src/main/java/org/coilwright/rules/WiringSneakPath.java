package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.circuit.Circuit;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.solve.Trouble.SneakPath;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A load or coil gets current by a path through another load or coil. */
final class WiringSneakPath implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("wiring.sneak-path", Weight.STOP, "current through another coil or load")
          .what(
              "Looks, in every position of the contacts, for a coil or load whose current also runs"
                  + " through another one.")
          .why(
              "The two share the voltage: a coil pulls in half or at the wrong time, a load runs at"
                  + " a fraction of its power where nobody expects it to be live.")
          .remedy("Give each coil and each load its own way to both sides of its supply.")
          .blind(
              "Coils or loads in series on purpose: the format has no word for it, so they are"
                  + " raised too.")
          .sources("circuit-theory")
          .meansWiredOtherwise();

  private final Basis basis;

  WiringSneakPath(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    Troubles.alike(study, SneakPath.class, s -> List.of(s.victim(), s.through()))
        .forEach(alike -> outcomes.add(sneaking(study, alike)));
    outcomes.addAll(Troubles.unexplored(FACTS, study));
    if (outcomes.isEmpty()) {
      outcomes.add(
          Subject.ofCircuit(FACTS, study.circuit().netlist())
              .satisfied("No coil or load takes its current through another one.", basis));
    }
    return outcomes;
  }

  private Outcome sneaking(Study study, List<SneakPath> alike) {
    Circuit circuit = study.circuit();
    SneakPath first = alike.get(0);
    String victim = first.victim();
    String through = first.through();
    return Subject.of(FACTS, Where.part(circuit, victim), victim, through)
        .violated(
            "%s gets current through %s".formatted(victim, through),
            "%s, %s has %s across it, by way of %s: %s."
                .formatted(
                    Troubles.with(study, alike),
                    victim,
                    Printed.volts(first.volts()),
                    through,
                    first.path().inWords()),
            "fed through %s".formatted(through))
        .alsoAt(Where.part(circuit, through), "in the way of the current to %s".formatted(victim))
        .todo(
            "Give %s its own return (or feed) up to the supply, so that %s is not in its way."
                .formatted(victim, through),
            basis);
  }
}
