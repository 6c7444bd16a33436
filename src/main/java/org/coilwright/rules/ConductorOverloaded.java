package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Weight;
import org.coilwright.sizing.PowerSide.Demand;
import org.coilwright.solve.Study;

/** A line wire carries more load current than it may as it is laid. */
final class ConductorOverloaded implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("conductor.overloaded", Weight.STOP, "wire overloaded by its load")
          .what(
              "Holds the load's worst current against what each line wire may carry as it is laid;"
                  + " with gauges 125 % of the nominal current before the factors of air and of"
                  + " other circuits, and 100 % after them. In air as warm as its insulation stands"
                  + " it carries nothing."
                  + " A motor whose plate current is not written is open: its power is that at its"
                  + " shaft, and it takes more.")
          .why("The insulation ages in months and fails where the wire is warmest.")
          .remedy("Take thicker wire, or lay it cooler or apart.")
          .blind(
              "Insulation that is not written, which counts as PVC 70 °C, with gauges 75 °C; clamps"
                  + " whose temperature is not written; bundles inside a panel.")
          .sources("iec-60364-5-52-tables", "nec", "iec-60335-1")
          .consequenceOf("conductor.unprotected")
          .carriedBy("load.wrong-voltage");

  private final PowerSides sides;

  ConductorOverloaded(PowerSides sides) {
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
      if (!stretch.neutral() && !stretch.loads().isEmpty()) {
        Optional<Demand> demand = stretch.demand();
        outcomes.add(
            stretch.cause(Stretch.names(stretch.loads())),
            demand
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
