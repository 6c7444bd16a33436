package org.coilwright.rules;

import java.util.List;
import org.coilwright.behaviour.Forecast;
import org.coilwright.behaviour.Plant;
import org.coilwright.behaviour.Settings;
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

/**
 * The load's own step crosses the stop threshold, so that the contact opens and closes by itself.
 */
final class BehaviourCycles implements Rule {
  private static final List<String> KEYS =
      List.of(
          "start.export-above",
          "plant.battery.discharge",
          "plant.battery.charge",
          "plant.battery.settles-in",
          "plant.battery.floor");

  private static final RuleFacts FACTS =
      RuleFacts.of("behaviour.cycles", Weight.FIX, "switches on and off by itself")
          .what(
              "Closes the contact on the least surplus that closes it and looks whether its own"
                  + " load then shows as import above `stop: import-above`: for good, once the"
                  + " battery has settled, or for longer than `stop: for` and `shortest-run` while"
                  + " it settles.")
          .why(
              "The contact opens, the surplus is back, the contact closes: again and again, until"
                  + " its life is used up.")
          .remedy(
              "Raise `start: export-above` or `stop: import-above`, so that both together are at"
                  + " least the power of the load; lengthen `stop: for`.")
          .blind(
              "Slow cycles over the battery's level, clouds, and a thermostat that opens and"
                  + " closes; a rehearsal shows the first two.")
          .sources("physics-textbook", "common-practice")
          .consequenceOf("behaviour.start-below-load");

  private final Tables tables;
  private final Basis basis;

  BehaviourCycles(Tables tables) {
    this.tables = tables;
    basis = Basis.of(FACTS, tables, Standing.COMMON_PRACTICE);
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
    Settings settings = set.settings();
    Plant plant = set.scene().plant();
    Subject subject = set.subject(FACTS, set.exportMark());
    if (settings.importAboveWatts().isEmpty()) {
      return List.of(
          subject.satisfied(
              "%s does not stop on import, so its own load cannot stop it.".formatted(set.output()),
              basis));
    }
    double stops = settings.importAboveWatts().getAsDouble();
    double lasting = Math.max(0, Forecast.lastingImport(settings, plant));
    double passing = Forecast.passingImportSeconds(settings, plant);
    double waits = Math.max(settings.stopAfterSeconds(), settings.shortestRunSeconds());
    Printed.Pair pair = Printed.pair(lasting, stops, Dimension.POWER);
    if (Comparison.exceeds(lasting, stops)) {
      return List.of(
          finding(
                  set,
                  subject,
                  "Closed on %s of export, %s leaves %s of import, and it stops above %s: too much by %s."
                      .formatted(
                          start(set),
                          set.loads().names(),
                          pair.value(),
                          pair.limit(),
                          pair.apart()))
              .measured(new Measure(lasting, "W"), new Measure(stops, "W"))
              .change(
                  set.written().start().flatMap(Switching.Start::exportAbove),
                  Printed.atLeast(set.watts(), Dimension.POWER))
              .todo(
                  "Set `export-above` to %s or more."
                      .formatted(Printed.atLeast(set.watts(), Dimension.POWER)),
                  basis));
    }
    if (Comparison.exceeds(passing, waits)) {
      return List.of(
          finding(
                  set,
                  subject,
                  "Closed on %s of export, %s shows as import above %s for %s until the battery has taken it over, and it may stop after %s."
                      .formatted(
                          start(set),
                          set.loads().names(),
                          pair.limit(),
                          Printed.span(passing),
                          Printed.span(waits)))
              .measured(new Measure(waits, "s"), new Measure(passing, "s"))
              .change(
                  set.written().stop().flatMap(Switching.Stop::confirm),
                  Printed.spanAtLeast(passing))
              .todo(
                  "Set `stop: for` to %s or more.".formatted(Printed.spanAtLeast(passing)), basis));
    }
    return List.of(
        subject.satisfied(
            "Closed on %s of export, %s leaves %s of import, and %s stops above %s."
                .formatted(
                    start(set), set.loads().names(), pair.value(), set.output(), pair.limit()),
            new Measure(lasting, "W"),
            new Measure(stops, "W"),
            basis));
  }

  private static Subject.Finding finding(SetOutput set, Subject subject, String numbers) {
    Subject.Finding finding =
        subject.violated(
            "%s switches on and off by itself".formatted(set.output()),
            numbers,
            "starts above " + start(set));
    set.written()
        .stop()
        .flatMap(Switching.Stop::importAbove)
        .ifPresent(w -> finding.alsoAt(w.mark(), "stops on its own load"));
    return finding.alsoAt(set.loadMark(), "draws " + Printed.of(set.watts(), Dimension.POWER));
  }

  private static String start(SetOutput set) {
    return Printed.of(set.settings().exportAboveWatts().orElseThrow(), Dimension.POWER);
  }
}
