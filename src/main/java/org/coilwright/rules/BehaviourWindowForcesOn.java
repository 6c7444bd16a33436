package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.behaviour.Battery;
import org.coilwright.behaviour.Forecast;
import org.coilwright.behaviour.Settings.Window;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A fixed window heats whether or not there is surplus. */
final class BehaviourWindowForcesOn implements Rule {
  private static final List<String> KEYS =
      List.of("plant.battery.capacity", "plant.battery.discharge", "plant.battery.floor");

  private static final RuleFacts FACTS =
      RuleFacts.of("behaviour.window-forces-on", Weight.NOTE, "fixed window heats without surplus")
          .what(
              "Tells for each window of `always-on` how much energy the load may take in it, not"
                  + " longer than `longest-per-day`, and how much of that comes from the battery"
                  + " and from the grid on a day without sun.")
          .why(
              "In a window the contact is closed whether or not there is surplus, and neither"
                  + " import nor an empty battery opens it.")
          .remedy("Shorten the window, or strike it out if hot water by the clock is not needed.")
          .blind("What a thermostat saves once the water is hot.")
          .sources("physics-textbook");

  private final Tables tables;
  private final Basis basis;

  BehaviourWindowForcesOn(Tables tables) {
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
    List<Outcome> outcomes = new ArrayList<>();
    for (Written<String> written : set.written().alwaysOn()) {
      Window.parse(written.value()).ifPresent(w -> outcomes.add(forced(set, written, w)));
    }
    if (outcomes.isEmpty()) {
      outcomes.add(
          set.subject(FACTS, set.written().mark())
              .satisfied(
                  "No fixed window closes %s without surplus.".formatted(set.output()), basis));
    }
    return outcomes;
  }

  private Outcome forced(SetOutput set, Written<String> written, Window window) {
    double longest = set.settings().longestPerDaySeconds().orElse(window.seconds());
    double seconds = Math.min(window.seconds(), longest);
    double energy = Forecast.wattHours(set.watts(), seconds);
    double fromBattery = set.battery().map(b -> fromBattery(b, set, seconds)).orElse(0.0);
    String all = Printed.of(energy, Dimension.ENERGY);
    return set.subject(FACTS, written.mark())
        .violated(
            "%s is closed from %s to %s whatever the sun does"
                .formatted(set.output(), window.fromWords(), window.toWords()),
            "%s then takes up to %s, without sun %s."
                .formatted(set.loads().names(), all, sources(energy, fromBattery)),
            "closed for " + Printed.span(seconds))
        .alsoAt(set.loadMark(), "takes up to " + all)
        .measured(new Measure(energy, "Wh"), new Measure(0, "Wh"))
        .todo(
            "Keep it if water must be hot by the clock; otherwise shorten it or strike it out.",
            basis);
  }

  private static String sources(double energy, double fromBattery) {
    if (fromBattery == 0) {
      return "all of it from the grid";
    }
    String empty = "all of it from the grid if the battery is empty";
    if (!Comparison.exceeds(energy, fromBattery)) {
      return "all of it from a full battery, and " + empty;
    }
    return "%s from a full battery and %s from the grid, and %s"
        .formatted(
            Printed.of(fromBattery, Dimension.ENERGY),
            Printed.of(energy - fromBattery, Dimension.ENERGY),
            empty);
  }

  private static double fromBattery(Battery battery, SetOutput set, double seconds) {
    return Math.min(
        Forecast.drainWh(battery, set.watts(), seconds), Forecast.reserveWh(battery, 1));
  }
}
