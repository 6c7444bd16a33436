package org.coilwright.rules;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.behaviour.Rehearsal;
import org.coilwright.behaviour.Run;
import org.coilwright.behaviour.Settings;
import org.coilwright.behaviour.Situation;
import org.coilwright.netlist.Mark;
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
import org.coilwright.table.Tables;

/** Settings without a false start that heat from the battery all the same. */
final class BehaviourFromBattery implements Rule {
  private static final List<String> KEYS =
      List.of(
          "start.export-above",
          "plant.pv-peak",
          "plant.base-load",
          "plant.battery.capacity",
          "plant.battery.discharge",
          "plant.battery.charge",
          "plant.battery.settles-in",
          "plant.battery.floor");

  private static final RuleFacts FACTS =
      RuleFacts.of("behaviour.from-battery", Weight.FIX, "heats from the battery")
          .what(
              "Rehearses the built-in days with a steady sun and adds what the load takes from the"
                  + " battery in all starts on surplus, fixed windows left aside. More than a tenth"
                  + " of all that it takes in them is too much. Then tries higher levels of `stop:"
                  + " battery-below`.")
          .why(
              "Once closed the contact stays closed: the battery feeds the load after the sun has"
                  + " gone, the meter sees no import, and the house buys in the night.")
          .remedy("Raise `stop: battery-below`, or lower `longest-per-day`.")
          .blind(
              "Days on which clouds come and go: the battery bridges each of them whatever the"
                  + " settings, so the share of the built-in one is told and not judged; losses of"
                  + " the battery; other days than the built-in ones.")
          .sources("common-practice", "physics-textbook")
          .consequenceOf(
              "behaviour.confirm-too-short",
              "behaviour.start-below-load",
              "behaviour.cycles",
              "behaviour.battery-drain");

  private final Tables tables;
  private final Cited<Double> share;

  BehaviourFromBattery(Tables tables) {
    this.tables = tables;
    share = tables.figure("behaviour.battery-share");
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return SetOutput.ask(study, tables, FACTS, KEYS, set -> judge(set).stream().toList());
  }

  /** What a situation came to, Wh; windows are no starts on surplus. */
  private record Day(String name, double battery, double all) {
    static Day of(Situation situation, SetOutput set, Settings settings) {
      List<Run> runs =
          Rehearsal.run(situation.feed(), situation.begin(set.scene().plant()), settings, null)
              .runs()
              .stream()
              .filter(run -> !run.byWindow())
              .toList();
      return new Day(
          situation.name(),
          runs.stream().mapToDouble(Run::batteryWh).sum(),
          runs.stream().mapToDouble(Run::wattHours).sum());
    }

    double share() {
      return all > 0 ? battery / all : 0;
    }
  }

  private static Day worst(SetOutput set, List<Situation> days, Settings settings) {
    return days.stream()
        .map(s -> Day.of(s, set, settings))
        .max(Comparator.comparingDouble(Day::share))
        .orElseThrow();
  }

  private Optional<Outcome> judge(SetOutput set) {
    if (set.battery().isEmpty()) {
      return Optional.empty();
    }
    Mark stop =
        SetOutput.mark(
            set.written().stop().flatMap(Switching.Stop::batteryBelow),
            set.written().stop().map(Switching.Stop::mark).orElse(set.written().mark()));
    Subject subject = set.subject(FACTS, stop);
    List<Situation> days = Situation.steadyDays(set.scene());
    Day worst = worst(set, days, set.settings());
    if (worst.all() == 0) {
      return Optional.of(
          subject.unsettled(
              "start of %s on a rehearsed day".formatted(set.output()),
              "Whether %s heats from the battery is open: on no built-in day did its contact close, so nothing was tried."
                  .formatted(set.output()),
              "Set `export-above` below what pv-peak can export, or rehearse a measured day with"
                  + " coilwright rehearse --day."));
    }
    Printed.Pair pair = Printed.pair(worst.share(), share.value(), Dimension.RATIO);
    Measure value = new Measure(worst.share(), "");
    Measure limit = new Measure(share.value(), "");
    if (!Comparison.exceeds(worst.share(), share.value())) {
      return Optional.of(
          subject.satisfied(
              "On the worst day with a steady sun (%s) %s of what %s takes on surplus come from the battery%s."
                  .formatted(worst.name(), pair.value(), set.loads().names(), clouds(set)),
              value,
              limit,
              Basis.of(share)));
    }
    OptionalDouble level = level(set, days);
    return Optional.of(
        subject
            .violated(
                "%s heats from the battery".formatted(set.output()),
                "Rehearsed on the day \"%s\", %s of %s come from the battery: %s, and %s are taken as the most."
                    .formatted(
                        worst.name(),
                        Printed.of(worst.battery(), Dimension.ENERGY),
                        Printed.of(worst.all(), Dimension.ENERGY),
                        pair.value(),
                        pair.limit()),
                "stops too late")
            .alsoAt(set.batteryMark(), "gives " + Printed.of(worst.battery(), Dimension.ENERGY))
            .alsoAt(set.loadMark(), "takes " + Printed.of(worst.all(), Dimension.ENERGY))
            .measured(value, limit)
            .change(
                set.written().stop().flatMap(Switching.Stop::batteryBelow),
                level.isPresent() ? Printed.percent(level.getAsDouble()) : "")
            .todo(cure(set, days, level), Basis.of(share)));
  }

  /** What a day of passing clouds comes to, which no setting can help; empty if nothing is on. */
  private static String clouds(SetOutput set) {
    Day day = Day.of(Situation.brokenCloud(set.scene()), set, set.settings());
    return day.all() > 0
        ? "; on one with clouds that come and go it would be %s, which is not judged"
            .formatted(Printed.percent(day.share()))
        : "";
  }

  /** The lowest level of charge that keeps the battery out of it, tried in the same days. */
  private OptionalDouble level(SetOutput set, List<Situation> days) {
    double step = tables.figure("behaviour.battery-step").value();
    double highest = tables.figure("behaviour.battery-highest").value();
    double now = set.settings().batteryBelowFraction().orElse(0);
    for (double level = step; !Comparison.exceeds(level, highest); level += step) {
      if (Comparison.exceeds(level, now)) {
        Day then = worst(set, days, set.settings().withBatteryBelow(level));
        if (then.all() > 0 && !Comparison.exceeds(then.share(), share.value())) {
          return OptionalDouble.of(level);
        }
      }
    }
    return OptionalDouble.empty();
  }

  private String cure(SetOutput set, List<Situation> days, OptionalDouble level) {
    if (level.isEmpty()) {
      return "No `stop: battery-below` up to %s cures it: raise `export-above`, or lower `longest-per-day`."
          .formatted(Printed.percent(tables.figure("behaviour.battery-highest").value()));
    }
    Day then = worst(set, days, set.settings().withBatteryBelow(level.getAsDouble()));
    return "Set `stop: battery-below` to %s: then %s of %s come from the battery (%s)."
        .formatted(
            Printed.percent(level.getAsDouble()),
            Printed.of(then.battery(), Dimension.ENERGY),
            Printed.of(then.all(), Dimension.ENERGY),
            then.name());
  }
}
