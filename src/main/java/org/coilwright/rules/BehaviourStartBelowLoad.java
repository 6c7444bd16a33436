package org.coilwright.rules;

import java.util.List;
import org.coilwright.netlist.Switching;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** Starts on less surplus than the load draws. */
final class BehaviourStartBelowLoad implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("behaviour.start-below-load", Weight.FIX, "starts on less than the load draws")
          .what(
              "Holds `start: export-above` against what all loads on the output take together at"
                  + " nominal figures.")
          .why("What the surplus does not cover comes from the battery or from the grid.")
          .remedy("Raise `export-above` to at least the power of the load.")
          .blind(
              "Mains above its nominal voltage and the tolerance of the element, with which it"
                  + " takes more; a load that takes less than its rated power most of the time.")
          .sources("physics-textbook");

  private final Tables tables;
  private final Basis basis;

  BehaviourStartBelowLoad(Tables tables) {
    this.tables = tables;
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return SetOutput.ask(study, tables, FACTS, List.of("start.export-above"), this::judge);
  }

  private List<Outcome> judge(SetOutput set) {
    double starts = set.settings().exportAboveWatts().orElseThrow();
    Subject subject = set.subject(FACTS, set.exportMark());
    Printed.Pair pair = Printed.pair(starts, set.watts(), Dimension.POWER);
    Measure value = new Measure(starts, "W");
    Measure limit = new Measure(set.watts(), "W");
    if (Comparison.fallsShort(starts, set.watts())) {
      return List.of(
          subject
              .violated(
                  "%s starts on too little surplus".formatted(set.output()),
                  "It starts above %s and %s draws %s: up to %s comes from battery or grid."
                      .formatted(pair.value(), set.loads().names(), pair.limit(), pair.apart()),
                  "starts above " + pair.value())
              .alsoAt(set.loadMark(), "draws " + pair.limit())
              .measured(value, limit)
              .change(
                  set.written().start().flatMap(Switching.Start::exportAbove),
                  Printed.atLeast(set.watts(), Dimension.POWER))
              .todo(
                  "Set `export-above` to %s or more."
                      .formatted(Printed.atLeast(set.watts(), Dimension.POWER)),
                  basis));
    }
    return List.of(
        subject.satisfied(
            "%s starts above %s of export and %s draws %s."
                .formatted(set.output(), pair.value(), set.loads().names(), pair.limit()),
            value,
            limit,
            basis));
  }
}
