package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Comparison;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
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
    List<Outcome> outcomes = new ArrayList<>();
    for (DirectSupply supply : DirectSupply.of(study.circuit())) {
      SupplyBudget budget = SupplyBudget.of(study, supply, tolerance);
      if (!budget.consumers().isEmpty()) {
        outcomes.addAll(check(budget));
      }
    }
    return outcomes;
  }

  private List<Outcome> check(SupplyBudget budget) {
    List<Outcome> unknown = budget.unknown(FACTS);
    return unknown.isEmpty() ? List.of(compare(budget)) : unknown;
  }

  private Outcome compare(SupplyBudget budget) {
    String supply = budget.supply().part();
    Written<Quantity> limit = budget.supply().output().limit().orElseThrow();
    double most = limit.value().low();
    SupplyBudget.Most pickUp = budget.pickUp();
    Printed.Pair pair = Printed.pair(pickUp.amps(), most, Dimension.CURRENT);
    Measure value = new Measure(pickUp.amps(), "A");
    Measure held = new Measure(most, "A");
    Basis basis = Basis.of(tolerance);
    Subject subject = new Subject(FACTS, limit.mark(), pickUp.at(supply));
    if (Comparison.exceeds(pickUp.amps(), most)) {
      Subject.Finding finding =
          subject.violated(
              "%s is too small for the pick-up".formatted(supply),
              "It is asked for %s while coils pull in and gives %s: short by %s."
                  .formatted(pair.value(), pair.limit(), pair.apart()),
              "gives at most " + pair.limit());
      budget.show(finding, pickUp);
      return finding
          .detail(pickUp.how() + ".")
          .measured(value, held)
          .todo(
              "Use a supply that gives at least %s, or let the coils come on one after another."
                  .formatted(Printed.atLeast(pickUp.amps(), Dimension.CURRENT)),
              basis);
    }
    return budget
        .unexplored(FACTS)
        .orElseGet(
            () ->
                subject.satisfied(
                    "%s is asked for %s at worst while coils pull in and gives %s."
                        .formatted(supply, pair.value(), pair.limit()),
                    value,
                    held,
                    basis));
  }
}
