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

  private final Cited<Double> tolerance;

  SupplyOverloaded(Tables tables) {
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
    SupplyBudget.Most steady = budget.steady();
    Printed.Pair pair = Printed.pair(steady.amps(), most, Dimension.CURRENT);
    Measure value = new Measure(steady.amps(), "A");
    Measure held = new Measure(most, "A");
    Basis basis = Basis.of(tolerance);
    Subject subject = new Subject(FACTS, limit.mark(), steady.at(supply));
    if (Comparison.exceeds(steady.amps(), most)) {
      Subject.Finding finding =
          subject.violated(
              "%s is overloaded".formatted(supply),
              "It is asked for %s at worst and gives %s: short by %s."
                  .formatted(pair.value(), pair.limit(), pair.apart()),
              "gives at most " + pair.limit());
      budget.show(finding, steady);
      return finding
          .detail(steady.how() + ".")
          .measured(value, held)
          .todo(
              "Feed the coils from a supply that gives at least %s, or choose coils that draw less."
                  .formatted(Printed.atLeast(steady.amps(), Dimension.CURRENT)),
              basis);
    }
    return budget
        .unexplored(FACTS)
        .orElseGet(
            () ->
                subject.satisfied(
                    "%s is asked for %s at worst and gives %s."
                        .formatted(supply, pair.value(), pair.limit()),
                    value,
                    held,
                    basis));
  }
}
