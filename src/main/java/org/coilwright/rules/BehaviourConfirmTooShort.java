package org.coilwright.rules;

import java.util.List;
import org.coilwright.behaviour.Battery;
import org.coilwright.behaviour.Forecast;
import org.coilwright.behaviour.Rehearsal;
import org.coilwright.behaviour.Run;
import org.coilwright.behaviour.Situation;
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
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** The surplus that a slow battery feigns after a load has stopped starts the contact. */
final class BehaviourConfirmTooShort implements Rule {
  private static final List<String> KEYS =
      List.of(
          "start.export-above",
          "plant.largest-step",
          "plant.battery.discharge",
          "plant.battery.charge",
          "plant.battery.settles-in");

  private static final RuleFacts FACTS =
      RuleFacts.of(
              "behaviour.confirm-too-short", Weight.FIX, "confirm time too short: false starts")
          .what(
              "When the largest other load stops at once, the battery goes on giving what nobody"
                  + " takes any more, and the meter sees export until it has settled. `start: for`"
                  + " must be at least as long as that export stays above `export-above`, by the"
                  + " longer of a straight and an exponential way of settling.")
          .why(
              "The contact closes although there is no surplus, as it does when an oven is switched"
                  + " off in the evening, and the load then heats from the battery.")
          .remedy("Lengthen `start: for`, or raise `export-above`.")
          .blind(
              "Two loads that stop one right after the other, a battery that settles more slowly"
                  + " than `settles-in` says, and a meter that reports late.")
          .sources("common-practice", "physics-textbook");

  private final Tables tables;
  private final Cited<Double> margin;
  private final Basis basis;

  BehaviourConfirmTooShort(Tables tables) {
    this.tables = tables;
    margin = tables.figure("behaviour.settling-margin");
    basis =
        new Basis(
            List.of(
                tables.source("common-practice").cite()
                    + ": a battery settles in a straight line, or to 95 % within its settling"
                    + " time"),
            Standing.COMMON_PRACTICE);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return SetOutput.ask(study, tables, FACTS, KEYS, this::judge);
  }

  private List<Outcome> judge(SetOutput set) {
    Subject subject = set.subject(FACTS, set.confirmMark());
    if (set.battery().isEmpty()) {
      return List.of(
          subject.satisfied(
              "No battery is written, so none can give surplus that is not there.", basis));
    }
    Battery battery = set.battery().get();
    double above = set.settings().exportAboveWatts().orElseThrow();
    double confirm = set.settings().startAfterSeconds();
    double tooMuch = Forecast.overshootWatts(set.scene().largestStepWatts(), battery);
    double lasts = Forecast.secondsAbove(tooMuch, above, battery.settlesInSeconds());
    Measure value = new Measure(confirm, "s");
    Measure limit = new Measure(lasts, "s");
    if (!Comparison.fallsShort(confirm, lasts)) {
      return List.of(
          subject.satisfied(
              lasts == 0
                  ? "A battery that gives up to %s too much cannot reach the %s at which %s starts."
                      .formatted(power(tooMuch), power(above), set.output())
                  : "%s starts after %s; what a battery gives too much is gone below %s after %s."
                      .formatted(
                          set.output(), Printed.span(confirm), power(above), Printed.span(lasts)),
              value,
              limit,
              basis));
    }
    return List.of(
        falseStart(set, subject, battery, lasts)
            .measured(value, limit)
            .change(
                set.written().start().flatMap(Switching.Start::confirm),
                Printed.span(enough(lasts, battery)))
            .todo(
                "Set `start: for` to %s or more: %s × %s, as a settling time is only about so long, and longer for a cold or old battery (common practice, no source)."
                    .formatted(
                        Printed.span(enough(lasts, battery)),
                        Printed.of(margin.value(), Dimension.COUNT),
                        Printed.span(Math.max(lasts, battery.settlesInSeconds()))),
                basis));
  }

  private static Subject.Finding falseStart(
      SetOutput set, Subject subject, Battery battery, double lasts) {
    double above = set.settings().exportAboveWatts().orElseThrow();
    double after = set.settings().startAfterSeconds();
    String confirm = after == 0 ? "at once" : "after " + Printed.span(after);
    double step = set.scene().largestStepWatts();
    Subject.Finding finding =
        subject
            .violated(
                "%s starts falsely when %s stops".formatted(set.output(), power(step)),
                "The battery then goes on giving up to %s too much: above %s for %s, and the contact closes %s."
                    .formatted(
                        power(Forecast.overshootWatts(step, battery)),
                        power(above),
                        Printed.span(lasts),
                        confirm),
                "closes " + confirm)
            .alsoAt(set.batteryMark(), "settles in " + Printed.span(battery.settlesInSeconds()));
    set.written()
        .plant()
        .flatMap(Switching.Plant::largestStep)
        .ifPresent(w -> finding.alsoAt(w.mark(), "can stop at once"));
    return finding.detail(cost(set));
  }

  /** What one such evening costs, from a rehearsal of it. */
  private static String cost(SetOutput set) {
    Situation evening = Situation.eveningStep(set.scene());
    List<Run> falseStarts =
        Rehearsal.run(evening.feed(), evening.begin(set.scene().plant()), set.settings(), null)
            .falseStarts();
    if (falseStarts.isEmpty()) {
      return "An evening rehearsed second by second shows none: it lasts but a moment, or it takes"
          + " a battery that is charging.";
    }
    double fromBattery = falseStarts.stream().mapToDouble(Run::batteryWh).sum();
    double fromGrid = falseStarts.stream().mapToDouble(Run::gridWh).sum();
    String grid =
        fromGrid < 1
            ? ""
            : " and %s from the grid".formatted(Printed.of(fromGrid, Dimension.ENERGY));
    return "Rehearsed from nine until midnight: %s with %s from the battery%s. A start is false if there was no true surplus in all of the confirm time."
        .formatted(
            falseStarts.size() == 1 ? "1 false start" : falseStarts.size() + " false starts",
            Printed.of(fromBattery, Dimension.ENERGY),
            grid);
  }

  /** In full seconds: a remedy is not cut to the last tenth. */
  private double enough(double lasts, Battery battery) {
    return Math.ceil(margin.value() * Math.max(lasts, battery.settlesInSeconds()));
  }

  private static String power(double watts) {
    return Printed.of(watts, Dimension.POWER);
  }
}
