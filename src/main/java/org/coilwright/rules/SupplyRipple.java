package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
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

/** A direct supply pulses more than a relay's coil is made for. */
final class SupplyRipple implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("supply.ripple", Weight.FIX, "supply that pulses under a coil")
          .what(
              "Holds the ripple that is written for a direct supply with a relay's coil on it,"
                  + " peak to peak, against the most that coils for direct voltage are made for.")
          .why(
              "Between the pulses the armature lets go and chatters, and at their crests coil,"
                  + " contact and whatever else hangs on the supply get more than its voltage"
                  + " says.")
          .remedy("Take a smoothed supply.")
          .blind("A ripple that is not written; what a relay's own data sheet allows.")
          .sources("relay-technical-information");

  private final double tolerance;
  private final Cited<Double> most;

  SupplyRipple(Tables tables) {
    tolerance = tables.figure("coil.resistance-tolerance").value();
    most = tables.figure("supply.coil-ripple");
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<FedCoil> coils = CoilWiring.of(study, tolerance).fed();
    List<Outcome> outcomes = new ArrayList<>();
    for (DirectSupply supply : DirectSupply.of(study.circuit())) {
      List<FedCoil> own =
          coils.stream()
              .filter(c -> c.direct().filter(supply.source()::equals).isPresent())
              .toList();
      if (!own.isEmpty()) {
        supply.output().ripple().ifPresent(r -> outcomes.add(judge(supply, r, own.get(0))));
      }
    }
    return outcomes;
  }

  private Outcome judge(DirectSupply supply, Written<Quantity> ripple, FedCoil coil) {
    double has = ripple.value().high();
    Subject subject = Subject.of(FACTS, ripple.mark(), supply.part());
    Measure value = new Measure(has, Dimension.RATIO.baseUnit());
    Measure limit = new Measure(most.value(), Dimension.RATIO.baseUnit());
    String text =
        "The %s output of %s has %s of ripple; coils are made for at most %s."
            .formatted(
                supply.inWords(), supply.part(), ripple.text(), Printed.percent(most.value()));
    if (!Comparison.exceeds(has, most.value())) {
      return subject.satisfied(text, value, limit, Basis.of(most));
    }
    return subject
        .violated("%s pulses".formatted(supply.part()), text, "more than a coil is made for")
        .alsoAt(coil.coil().mark(), "hangs on it")
        .measured(value, limit)
        .change(ripple.mark(), Printed.percent(most.value()))
        .todo(
            "Take a supply of at most %s ripple in place of %s, or one that feeds the coils alone."
                .formatted(Printed.percent(most.value()), supply.part()),
            Basis.of(most));
  }
}
