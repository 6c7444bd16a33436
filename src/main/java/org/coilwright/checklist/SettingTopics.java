package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.checklist.Expected.Seen;
import org.coilwright.checklist.Expected.Setting;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Switching;
import org.coilwright.netlist.Written;

/** Settings are read back, not trusted. */
final class SettingTopics {
  private final Anatomy anatomy;

  SettingTopics(Anatomy anatomy) {
    this.anatomy = anatomy;
  }

  List<Topic> topics() {
    List<Topic> topics = new ArrayList<>();
    List<Row> devices = new ArrayList<>();
    for (Part.Thermal thermal : anatomy.parts(Part.Thermal.class)) {
      add(
          devices,
          "setting",
          "Read the setting of " + thermal.name(),
          thermal.opensAt(),
          thermal.name());
      add(
          devices,
          "reset",
          "Read the kind of reset of " + thermal.name(),
          thermal.reset(),
          thermal.name());
    }
    if (Condition.OUTPUT.holds(anatomy)) {
      devices.add(
          Row.dead(
              Names.of("notice", "starts-by-itself"),
              "Fix the notice that the load starts by itself",
              "on the enclosure and at the load",
              new Seen(Expected.State.FITTED),
              "the circuit is not handed over without it.",
              Reasons.ofNetlist("a controller's output starts the load")));
    }
    topics.add(topic("devices and notices", devices));
    Optional<Switching> switching = anatomy.netlist().switching();
    switching.ifPresent(s -> topics.add(topic("controller", controller(s))));
    switching.flatMap(SettingTopics::falseStart).ifPresent(topics::add);
    return topics;
  }

  /** What a battery that settles slowly is seen by: nothing but the controller acts in it. */
  private static Optional<Topic> falseStart(Switching switching) {
    boolean battery = switching.plant().flatMap(Switching.Plant::battery).isPresent();
    if (!battery || switching.start().isEmpty()) {
      return Optional.empty();
    }
    String output = switching.output().map(Written::value).orElse("the output");
    String step =
        switching
            .plant()
            .flatMap(Switching.Plant::largestStep)
            .map(w -> " (" + w.text() + ")")
            .orElse("");
    Row row =
        Row.dead(
            Names.of(output, "false-start"),
            "Turn the largest other load%s off while the battery feeds it".formatted(step),
            "and watch " + output,
            new Seen(Expected.State.STAYS_OPEN),
            "lengthen the time that the start is confirmed for, and do it again.",
            Reasons.ofNetlist("there is no surplus in the evening; a start would be a false one"));
    return Optional.of(
        new Topic(
            Section.Stage.SETTINGS,
            "false start",
            "Covers on, everything on; after dark, battery above its limit, contact open.",
            List.of(row)));
  }

  private static Topic topic(String title, List<Row> rows) {
    return new Topic(Section.Stage.SETTINGS, title, "Covers on.", rows);
  }

  private List<Row> controller(Switching switching) {
    String output = switching.output().map(Written::value).orElse("the output");
    List<Row> rows = new ArrayList<>();
    switching
        .start()
        .ifPresent(
            start -> {
              add(
                  rows,
                  "start-threshold",
                  "Read the start threshold of " + output,
                  start.exportAbove(),
                  output);
              add(
                  rows,
                  "start-confirm",
                  "Read how long it must last for " + output,
                  start.confirm(),
                  output);
            });
    switching
        .stop()
        .ifPresent(
            stop -> {
              add(
                  rows,
                  "stop-threshold",
                  "Read the stop threshold of " + output,
                  stop.importAbove(),
                  output);
              add(rows, "stop-confirm", "Read the stop delay of " + output, stop.confirm(), output);
              add(
                  rows,
                  "battery-limit",
                  "Read the battery limit of " + output,
                  stop.batteryBelow(),
                  output);
            });
    add(
        rows,
        "shortest-run",
        "Read the shortest run of " + output,
        switching.shortestRun(),
        output);
    add(
        rows,
        "longest-per-day",
        "Read the longest time per day of " + output,
        switching.longestPerDay(),
        output);
    for (Written<String> window : switching.alwaysOn()) {
      add(
          rows,
          "window-" + window.text(),
          "Read the fixed window of " + output,
          Optional.of(window),
          output);
    }
    return rows;
  }

  private static void add(
      List<Row> rows, String test, String action, Optional<? extends Written<?>> value, String at) {
    value.ifPresent(
        v ->
            rows.add(
                Row.dead(
                    Names.of(at, test),
                    action,
                    "at " + at,
                    new Setting(v.text()),
                    "set it as listed, then read it back again.",
                    Reasons.ofNetlist("as written in the netlist"))));
  }
}
