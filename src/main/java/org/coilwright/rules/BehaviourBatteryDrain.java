package org.coilwright.rules;

import java.util.List;
import org.coilwright.behaviour.Battery;
import org.coilwright.behaviour.Forecast;
import org.coilwright.behaviour.Settings;
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
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** One start may take the battery down to its floor. */
final class BehaviourBatteryDrain implements Rule {
  private static final List<String> KEYS =
      List.of("plant.battery.capacity", "plant.battery.discharge", "plant.battery.floor");

  private static final RuleFacts FACTS =
      RuleFacts.of("behaviour.battery-drain", Weight.FIX, "one start drains the battery")
          .what(
              "Takes the worst case of one start: the sun is gone as soon as the contact has closed"
                  + " and stays closed for `shortest-run`, with the battery just above `stop:"
                  + " battery-below`. What the load then takes from the battery must not reach the"
                  + " battery's floor. Without `battery-below` nothing keeps it from the floor.")
          .why("The house then has nothing left for the evening and buys from the grid.")
          .remedy("Shorten `shortest-run`, or raise `stop: battery-below`.")
          .blind("What the house takes from the battery in the same time; losses of the battery.")
          .sources("physics-textbook");

  private final Tables tables;
  private final Basis basis;

  BehaviourBatteryDrain(Tables tables) {
    this.tables = tables;
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
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
    if (set.battery().isEmpty()) {
      return List.of();
    }
    Battery battery = set.battery().get();
    Settings settings = set.settings();
    double stop = settings.batteryBelowFraction().orElse(0);
    double reserve = Forecast.reserveWh(battery, stop);
    double drain = Forecast.drainWh(battery, set.watts(), settings.shortestRunSeconds());
    Mark stopMark =
        SetOutput.mark(
            set.written().stop().flatMap(Switching.Stop::batteryBelow),
            set.written().stop().map(Switching.Stop::mark).orElse(set.written().mark()));
    if (!Comparison.exceeds(stop, battery.floorFraction())) {
      return List.of(untilTheFloor(set, set.subject(FACTS, stopMark), battery));
    }
    Subject subject = set.subject(FACTS, set.shortestRunMark());
    Printed.Pair pair = Printed.pair(drain, reserve, Dimension.ENERGY);
    Measure value = new Measure(drain, "Wh");
    Measure limit = new Measure(reserve, "Wh");
    if (Comparison.exceeds(drain, reserve)) {
      return List.of(
          subject
              .violated(
                  "one start of %s can drain the battery".formatted(set.output()),
                  "In %s it may take %s out of the battery, and from %s down to its floor there are %s: too much by %s."
                      .formatted(
                          Printed.span(settings.shortestRunSeconds()),
                          pair.value(),
                          Printed.percent(stop),
                          pair.limit(),
                          pair.apart()),
                  "takes up to " + pair.value())
              .alsoAt(stopMark, "leaves " + pair.limit() + " above the floor")
              .alsoAt(set.batteryMark(), "floor at " + Printed.percent(battery.floorFraction()))
              .measured(value, limit)
              .change(
                  set.written().shortestRun(),
                  Printed.spanAtMost(settings.shortestRunSeconds() * reserve / drain))
              .todo(
                  "Set `shortest-run` to %s or less, or raise `battery-below`."
                      .formatted(
                          Printed.spanAtMost(settings.shortestRunSeconds() * reserve / drain)),
                  basis));
    }
    return List.of(
        subject.satisfied(
            "One start of %s takes at most %s out of the battery, and %s lie between %s and its floor."
                .formatted(set.output(), pair.value(), pair.limit(), Printed.percent(stop)),
            value,
            limit,
            basis));
  }

  private Outcome untilTheFloor(SetOutput set, Subject subject, Battery battery) {
    return subject
        .violated(
            "nothing stops %s before the battery is empty".formatted(set.output()),
            "The meter shows no import while the battery feeds %s, and no level above its floor (%s) opens the contact."
                .formatted(set.loads().names(), Printed.percent(battery.floorFraction())),
            "no level above the floor")
        .alsoAt(set.batteryMark(), "floor at " + Printed.percent(battery.floorFraction()))
        .todo(
            "Set `stop: battery-below` to more than %s."
                .formatted(Printed.percent(battery.floorFraction())),
            basis);
  }
}
