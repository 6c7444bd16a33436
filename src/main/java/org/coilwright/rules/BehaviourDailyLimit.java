package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
import org.coilwright.behaviour.Forecast;
import org.coilwright.behaviour.Water;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
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
import org.coilwright.table.Tables;

/** The longest time per day is too short to heat the water. */
final class BehaviourDailyLimit implements Rule {
  private static final List<String> KEYS = List.of("water.litres", "water.from", "water.to");

  private static final RuleFacts FACTS =
      RuleFacts.of("behaviour.daily-limit", Weight.FIX, "longest time per day too short")
          .what(
              "Holds `longest-per-day` against the time that all loads on the output together need"
                  + " to heat the water from `from` to `to`: mass times heat capacity times"
                  + " difference, divided by power.")
          .why(
              "The water stays lukewarm however much sun there is, and lukewarm water breeds"
                  + " germs.")
          .remedy("Lengthen `longest-per-day`, or take a stronger element.")
          .blind(
              "What is lost through the insulation and what is drawn off meanwhile, which makes it"
                  + " longer; water that is still warm from the day before, which makes it"
                  + " shorter.")
          .sources("physics-textbook");

  private final Tables tables;

  BehaviourDailyLimit(Tables tables) {
    this.tables = tables;
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    Optional<Switching> switching = study.circuit().netlist().switching();
    if (switching.isEmpty() || switching.get().longestPerDay().isEmpty()) {
      return List.of();
    }
    return SetOutput.ask(study, tables, FACTS, KEYS, this::judge);
  }

  private List<Outcome> judge(SetOutput set) {
    Mark mark = SetOutput.mark(set.written().longestPerDay(), set.written().mark());
    Subject subject = set.subject(FACTS, mark);
    Optional<Water> water = set.scene().plant().water();
    if (water.isEmpty()) {
      return heatsWater(set)
          ? List.of(
              subject.undecided(
                  "switching.water",
                  "Whether the longest time per day suffices to heat the water is open."))
          : List.of();
    }
    double needs = Forecast.heatingSeconds(water.get(), set.watts());
    double longest = set.settings().longestPerDaySeconds().orElseThrow();
    String energy = Printed.of(Forecast.heatingWh(water.get()), Dimension.ENERGY);
    Basis basis = Basis.of(tables.figure("behaviour.water-heat-capacity"));
    Measure value = new Measure(longest, "s");
    Measure limit = new Measure(needs, "s");
    if (!Comparison.fallsShort(longest, needs)) {
      return List.of(
          subject.satisfied(
              "%s takes %s to put %s into the water, and %s may be closed for %s a day."
                  .formatted(
                      set.loads().names(),
                      Printed.span(needs),
                      energy,
                      set.output(),
                      Printed.span(longest)),
              value,
              limit,
              basis));
    }
    Subject.Finding finding =
        subject
            .violated(
                "%s is not closed long enough to heat the water".formatted(set.output()),
                "The water needs %s, for which %s takes %s; the contact may be closed for %s a day: short by %s."
                    .formatted(
                        energy,
                        set.loads().names(),
                        Printed.span(needs),
                        Printed.span(longest),
                        Printed.span(needs - longest)),
                "at most %s a day".formatted(Printed.span(longest)))
            .measured(value, limit);
    set.written().water().ifPresent(w -> finding.alsoAt(w.mark(), "needs " + energy));
    return List.of(
        finding
            .alsoAt(set.loadMark(), "draws " + Printed.of(set.watts(), Dimension.POWER))
            .change(set.written().longestPerDay(), Printed.spanAtLeast(needs))
            .todo(
                "Set `longest-per-day` to %s or more.".formatted(Printed.spanAtLeast(needs)),
                basis));
  }

  private static boolean heatsWater(SetOutput set) {
    return set.loads().loads().stream()
        .anyMatch(load -> load instanceof Part.Heater heater && heater.vessel().isPresent());
  }
}
