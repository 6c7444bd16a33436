package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.coilwright.checklist.Expected.Seen;
import org.coilwright.checklist.Expected.State;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;

/** What is done before anything is switched on, the isolating first. */
final class DeadTopics {
  private final Anatomy anatomy;
  private final Bands bands;
  private final Texts texts;
  private final DeadTests tests;
  private final DeadState state;
  private Coverage.Added added = Coverage.NONE.added();

  DeadTopics(DeadTests tests) {
    this.anatomy = tests.anatomy();
    this.bands = tests.bands();
    this.texts = tests.texts();
    this.tests = tests;
    this.state = tests.state();
  }

  /** All that is left on a sheet that stops. */
  Topic isolate() {
    return topic(
        List.of("isolate"),
        texts.of("begin.nothing-on"),
        new IsolationRows(anatomy, bands, texts).rows());
  }

  List<Topic> topics() {
    String dead = texts.of("begin.dead");
    List<Row> parts = new ArrayList<>(new MarkingRows(anatomy, texts).rows());
    parts.addAll(new InspectionRows(anatomy, texts).rows());
    ColdRows cold = new ColdRows(tests);
    List<Row> wires = wires(cold);
    List<Row> read = new ArrayList<>();
    read.addAll(cold.coils());
    read.addAll(cold.diodes());
    read.addAll(cold.elements());
    read.addAll(cold.thermals());
    List<Row> insulation = new InsulationRows(tests).rows();
    List<Row> lines = new LineRows(tests).rows();
    List<Row> before = new ArrayList<>(wires);
    before.addAll(read);
    before.addAll(insulation);
    before.addAll(lines);
    NeighbourRows search = new NeighbourRows(tests);
    read.addAll(search.rows(before));
    added = search.added();
    read.addAll(setBack("parts", read));
    List<Topic> topics = new ArrayList<>();
    topics.add(isolate());
    topics.add(topic(List.of("markings"), dead, parts));
    topics.add(
        topic(
            List.of("wires", "wiring", "protective-conductor", "thermal-wires"),
            dead + " " + texts.of("begin.off", off()),
            wires));
    topics.add(
        topic(
            List.of("parts", "coils", "diodes", "loads", "thermals", "neighbours"),
            texts.of("begin.parts"),
            read));
    List<Row> tested = new ArrayList<>(lines);
    tested.addAll(insulation);
    topics.add(topic(List.of("insulation"), dead, held(tested)));
    return new EyeCautions(tests)
        .at(
            topics,
            tests.mistakes().left(topics.stream().flatMap(t -> t.rows().stream()).toList()));
  }

  /** Breakers, fuses and residual-current devices by name. */
  private String off() {
    String names =
        anatomy.netlist().parts().values().stream()
            .filter(p -> p instanceof Part.Protective || p instanceof Part.Fuse)
            .map(Part::name)
            .collect(Collectors.joining(", "));
    return names.isEmpty() ? texts.of("begin.no-breakers") : texts.of("begin.named-off", names);
  }

  /** The wiring list between what is taken off for it and what is put back. */
  private List<Row> wires(ColdRows cold) {
    ContinuityRows continuity = new ContinuityRows(tests);
    List<Row> protective = cold.protective();
    List<Row> listed = continuity.rows(protective);
    List<Row> rows = new ArrayList<>();
    String neutrals =
        state.neutralsOff().stream().map(n -> n + ".N").collect(Collectors.joining(", "));
    if (!neutrals.isEmpty()) {
      rows.add(done("neutral-off", "neutral", State.OFF, neutrals));
    }
    String opening = continuity.opening();
    if (!opening.isEmpty()) {
      rows.add(done("thermals-open", "thermals", State.READY, opening));
    }
    String loads =
        state.earthedLoads().stream().map(Terminal::toString).collect(Collectors.joining(", "));
    if (!loads.isEmpty()) {
      rows.add(done("earth-off", "protective-conductor", State.OFF, loads));
    }
    rows.addAll(listed);
    Set<String> names = listed.stream().map(Row::name).collect(Collectors.toSet());
    protective.stream().filter(row -> !names.contains(row.name())).forEach(rows::add);
    rows.addAll(cold.protectiveAgain());
    if (!opening.isEmpty()) {
      String all = String.join(", ", state.opened().keySet());
      rows.add(done("thermals-back", "thermals", State.SET_BACK, all));
    }
    return rows;
  }

  /** What rows move or lift is put back at the end of their section. */
  private List<Row> setBack(String key, List<Row> rows) {
    Set<String> lifted = new TreeSet<>();
    Set<String> moved = new TreeSet<>();
    for (Row row : rows) {
      row.probing().ifPresent(p -> p.lifted().forEach(pin -> lifted.add(pin.toString())));
      row.probing().ifPresent(p -> moved.addAll(p.operated().keySet()));
    }
    List<Row> back = new ArrayList<>();
    if (!lifted.isEmpty()) {
      back.add(done("wires-back", key, State.BACK, String.join(", ", lifted)));
    }
    if (!moved.isEmpty()) {
      back.add(done("moved-back", key, State.SET_BACK, String.join(", ", moved)));
    }
    return back;
  }

  /** Readings with everything held in and the electronics off, and all of it put back. */
  private List<Row> held(List<Row> readings) {
    if (readings.isEmpty()) {
      return List.of();
    }
    Map<String, Boolean> heldIn = state.heldIn();
    List<Row> rows = new ArrayList<>();
    String electronics = electronics();
    if (!electronics.isEmpty()) {
      rows.add(done("electronics-off", "electronics", State.OFF, electronics));
    }
    if (!heldIn.isEmpty()) {
      rows.add(done("hold-in", "contacts", State.READY, String.join(", ", heldIn.keySet())));
    }
    rows.addAll(readings);
    if (!heldIn.isEmpty()) {
      rows.add(done("let-go", "contacts", State.SET_BACK, String.join(", ", heldIn.keySet())));
    }
    String back =
        Stream.of(electronics, String.join(", ", neutralPins()))
            .filter(text -> !text.isEmpty())
            .collect(Collectors.joining("; "));
    if (!back.isEmpty()) {
      rows.add(done("electronics-back", "electronics", State.BACK, back));
    }
    return rows;
  }

  private List<String> neutralPins() {
    return state.neutralsOff().stream().map(n -> n + ".N").toList();
  }

  /** Every wired pin of what a test voltage would destroy, by name. */
  private String electronics() {
    List<String> parts = new ArrayList<>();
    for (Part part : anatomy.netlist().parts().values()) {
      boolean sensitive = part instanceof Part.Controller || part instanceof Part.DcSupply;
      boolean suppressor =
          part instanceof Part.Diode
              || part instanceof Part.Varistor
              || part instanceof Part.Snubber;
      Set<String> pins = new LinkedHashSet<>();
      for (String pin : part.pins()) {
        if (anatomy.wired(part.name(), pin)) {
          pins.add(pin);
        }
      }
      boolean coil = part instanceof Part.Relay relay && relay.coil().suppression().isPresent();
      if (coil && part instanceof Part.Relay relay) {
        pins.retainAll(Set.of(relay.coil().first(), relay.coil().second()));
      }
      if (!pins.isEmpty() && (sensitive || suppressor || coil)) {
        String key = sensitive ? "electronics.wires" : "electronics.bridged";
        parts.add(texts.of(key, part.name(), String.join(", ", pins)));
      }
    }
    return String.join("; ", parts);
  }

  private Row done(String kind, String subject, State state, Object... arguments) {
    return done(texts, kind, subject, state, arguments);
  }

  /** A row in which something is taken off, moved or put back. */
  static Row done(Texts texts, String kind, String subject, State state, Object... arguments) {
    return Row.of(
            texts,
            kind,
            Names.of(subject, kind),
            new Seen(state),
            Reasons.ofNetlist(texts.of("how.put-back")),
            arguments)
        .answered(Manner.DONE);
  }

  /** How many rows were chosen for mistakes that the others do not show. */
  Coverage.Added added() {
    return added;
  }

  private Topic topic(List<String> keys, String beginWith, List<Row> rows) {
    return new Topic(keys, Section.Stage.DEAD, texts.of("section." + keys.get(0)), beginWith, rows);
  }
}
