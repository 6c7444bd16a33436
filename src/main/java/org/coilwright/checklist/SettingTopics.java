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
    Optional<Switching> switching = anatomy.netlist().switching();
    switching.ifPresent(s -> devices.addAll(controller(s)));
    switching.flatMap(this::falseStart).ifPresent(devices::add);
    devices.addAll(handingOver());
    topics.add(
        new Topic(
            List.of("devices-and-notices", "controller", "false-start"),
            Section.Stage.SETTINGS,
            texts.of("section.settings"),
            texts.of("begin.covers-on"),
            devices));
    return topics;
  }

  /** What a battery that settles slowly is seen by: nothing but the controller acts in it. */
  private Optional<Row> falseStart(Switching switching) {
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
    return Optional.of(
        Row.of(
            texts,
            "false-start",
            Names.of(subject(switching), "false-start"),
            new Seen(Expected.State.STAYS_OPEN),
            Reasons.ofNetlist(texts.of("how.false-start")),
            output(switching),
            step));
  }

  /** Labels, and what the user is shown and given. */
  private List<Row> handingOver() {
    List<Row> rows = new ArrayList<>();
    if (Condition.OUTPUT.holds(anatomy)) {
      rows.add(
          seen("notice", "starts-by-itself", Expected.State.FITTED, texts.of("how.output-starts")));
    }
    if (Condition.SEVERAL_SUPPLIES.holds(anatomy)) {
      rows.add(
          seen(
              "notice-supplies",
              "several-supplies",
              Expected.State.FITTED,
              texts.of("how.handing-over")));
    }
    rows.add(handed("hand-user"));
    rows.add(handed("hand-papers"));
    rows.add(handed("hand-next"));
    return rows;
  }

  private Row handed(String kind) {
    return seen(kind, kind, Expected.State.HANDED_OVER, texts.of("how.handing-over"));
  }

  private Row seen(String kind, String test, Expected.State state, String how) {
    return Row.of(texts, kind, Names.of("notice", test), new Seen(state), Reasons.ofNetlist(how));
  }

  /** The same in every language. */
  private static String subject(Switching switching) {
    return switching.output().map(Written::value).orElse("output");
  }

  private String output(Switching switching) {
    return switching.output().map(Written::value).orElse(texts.of("the-output"));
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
                        of)
                    .answered(Manner.COMPARED)
                    .inLine("", texts.of("setting." + kind, of))));
  }
}
