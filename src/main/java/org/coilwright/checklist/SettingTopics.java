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
  private final Texts texts;

  SettingTopics(Anatomy anatomy, Texts texts) {
    this.anatomy = anatomy;
    this.texts = texts;
  }

  List<Topic> topics() {
    List<Topic> topics = new ArrayList<>();
    List<Row> devices = new ArrayList<>();
    for (Part.Thermal thermal : anatomy.parts(Part.Thermal.class)) {
      String name = thermal.name();
      add(devices, "setting", Names.of(name, "setting"), thermal.opensAt(), name);
      add(devices, "reset", Names.of(name, "reset"), thermal.reset(), name);
    }
    if (Condition.OUTPUT.holds(anatomy)) {
      devices.add(
          Row.of(
              texts,
              "notice",
              Names.of("notice", "starts-by-itself"),
              new Seen(Expected.State.FITTED),
              Reasons.ofNetlist(texts.of("how.output-starts"))));
    }
    topics.add(topic("devices-and-notices", devices));
    Optional<Switching> switching = anatomy.netlist().switching();
    switching.ifPresent(s -> topics.add(topic("controller", controller(s))));
    switching.flatMap(this::falseStart).ifPresent(topics::add);
    return topics;
  }

  /** What a battery that settles slowly is seen by: nothing but the controller acts in it. */
  private Optional<Topic> falseStart(Switching switching) {
    boolean battery = switching.plant().flatMap(Switching.Plant::battery).isPresent();
    if (!battery || switching.start().isEmpty()) {
      return Optional.empty();
    }
    String step =
        switching
            .plant()
            .flatMap(Switching.Plant::largestStep)
            .map(w -> " (" + texts.figure(w.text()) + ")")
            .orElse("");
    Row row =
        Row.of(
            texts,
            "false-start",
            Names.of(subject(switching), "false-start"),
            new Seen(Expected.State.STAYS_OPEN),
            Reasons.ofNetlist(texts.of("how.false-start")),
            output(switching),
            step);
    return Optional.of(
        Topic.of(
            "false-start",
            Section.Stage.SETTINGS,
            texts.of("section.false-start"),
            texts.of("begin.after-dark"),
            List.of(row)));
  }

  /** The same in every language. */
  private static String subject(Switching switching) {
    return switching.output().map(Written::value).orElse("output");
  }

  private String output(Switching switching) {
    return switching.output().map(Written::value).orElse(texts.of("the-output"));
  }

  private Topic topic(String key, List<Row> rows) {
    return Topic.of(
        key, Section.Stage.SETTINGS, texts.of("section." + key), texts.of("begin.covers-on"), rows);
  }

  private List<Row> controller(Switching switching) {
    List<Row> rows = new ArrayList<>();
    switching
        .start()
        .ifPresent(
            start -> {
              setting(rows, "start-threshold", start.exportAbove(), switching);
              setting(rows, "start-confirm", start.confirm(), switching);
            });
    switching
        .stop()
        .ifPresent(
            stop -> {
              setting(rows, "stop-threshold", stop.importAbove(), switching);
              setting(rows, "stop-confirm", stop.confirm(), switching);
              setting(rows, "battery-limit", stop.batteryBelow(), switching);
            });
    setting(rows, "shortest-run", switching.shortestRun(), switching);
    setting(rows, "longest-per-day", switching.longestPerDay(), switching);
    for (Written<String> window : switching.alwaysOn()) {
      String name = Names.of(subject(switching), "window", window.text());
      add(rows, "fixed-window", name, Optional.of(window), output(switching));
    }
    return rows;
  }

  private void setting(
      List<Row> rows, String kind, Optional<? extends Written<?>> value, Switching switching) {
    add(rows, kind, Names.of(subject(switching), kind), value, output(switching));
  }

  private void add(
      List<Row> rows, String kind, String name, Optional<? extends Written<?>> value, String of) {
    value.ifPresent(
        v ->
            rows.add(
                Row.of(
                    texts,
                    "read-" + kind,
                    name,
                    new Setting(texts.figure(v.text())),
                    Reasons.ofNetlist(texts.of("how.as-written")),
                    of)));
  }
}
