package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.coilwright.behaviour.Battery;
import org.coilwright.behaviour.Scene;
import org.coilwright.behaviour.Settings;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Switching;
import org.coilwright.netlist.Written;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.solve.Study;
import org.coilwright.solve.SwitchedLoads;
import org.coilwright.table.Tables;

/**
 * The output that the settings act on, with what hangs on it.
 *
 * @param output such as {@code U1.heat}
 * @param loads at least one
 */
record SetOutput(Study study, Switching written, String output, SwitchedLoads loads, Scene scene) {

  /**
   * Asks one question of the settings; none if the netlist has no settings. Whatever is missing of
   * {@code keys}, or of the load, is undecided without being asked.
   *
   * @param keys below {@code switching.}, such as {@code plant.largest-step}
   */
  static List<Outcome> ask(
      Study study,
      Tables tables,
      RuleFacts rule,
      List<String> keys,
      Function<SetOutput, List<Outcome>> question) {
    Optional<Switching> written = study.circuit().netlist().switching();
    return written.map(s -> ask(study, tables, rule, keys, question, s)).orElse(List.of());
  }

  private static List<Outcome> ask(
      Study study,
      Tables tables,
      RuleFacts rule,
      List<String> keys,
      Function<SetOutput, List<Outcome>> question,
      Switching switching) {
    if (switching.output().isEmpty()) {
      return List.of(
          Subject.of(rule, switching.mark(), "switching")
              .undecided("switching.output", "Which output the settings act on is not written."));
    }
    Written<String> output = switching.output().get();
    Subject subject = Subject.of(rule, output.mark(), output.value());
    SwitchedLoads loads = SwitchedLoads.of(study, output.value());
    if (loads.loads().isEmpty()) {
      return List.of(
          subject.undecided(
              "a load on " + output.value(),
              "What the settings of %s switch cannot be told: no load comes on with it."
                  .formatted(output.value())));
    }
    Optional<String> unknown = loads.unknownPower();
    if (unknown.isPresent()) {
      return List.of(
          subject.undecided(
              unknown.get(), "What %s switches cannot be told.".formatted(output.value())));
    }
    Scene scene = Scene.of(switching, loads.watts(), tables);
    List<Outcome> missing = new ArrayList<>();
    for (String key : keys) {
      if (scene.missing().contains("switching." + key)) {
        missing.add(
            subject.undecided(
                "switching." + key,
                "Whether the settings of %s suit the plant is open.".formatted(output.value())));
      }
    }
    return missing.isEmpty()
        ? question.apply(new SetOutput(study, switching, output.value(), loads, scene))
        : missing;
  }

  /** The subject of an outcome: the output first, then its loads. */
  Subject subject(RuleFacts rule, Mark mark) {
    List<String> at = new ArrayList<>(List.of(output));
    loads.loads().forEach(load -> at.add(load.name()));
    return new Subject(rule, mark, List.copyOf(at));
  }

  Settings settings() {
    return scene.settings();
  }

  double watts() {
    return loads.watts();
  }

  Optional<Battery> battery() {
    return scene.plant().battery();
  }

  /** Where the battery is written; the settings as a whole if it is not. */
  Mark batteryMark() {
    return written
        .plant()
        .flatMap(Switching.Plant::battery)
        .map(Switching.Battery::mark)
        .orElse(written.mark());
  }

  /** Where the first load is written. */
  Mark loadMark() {
    Part load = loads.loads().get(0);
    return load instanceof Part.Heater heater && heater.power().isPresent()
        ? heater.power().get().mark()
        : load.head().mark();
  }

  Mark startMark() {
    return written.start().map(Switching.Start::mark).orElse(written.mark());
  }

  /** Where the start threshold is written; the settings as a whole if it is not. */
  Mark exportMark() {
    return mark(written.start().flatMap(Switching.Start::exportAbove), startMark());
  }

  /** Where the confirm time is written; the start if it is not. */
  Mark confirmMark() {
    return mark(written.start().flatMap(Switching.Start::confirm), startMark());
  }

  Mark shortestRunMark() {
    return mark(written.shortestRun(), written.mark());
  }

  static Mark mark(Optional<? extends Written<?>> value, Mark otherwise) {
    return value.isPresent() ? value.get().mark() : otherwise;
  }
}
