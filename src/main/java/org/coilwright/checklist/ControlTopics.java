package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.checklist.Expected.Band;
import org.coilwright.checklist.Expected.Seen;
import org.coilwright.circuit.Branch;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Quantity;
import org.coilwright.solve.CoilLimits;
import org.coilwright.solve.CoilReading;
import org.coilwright.solve.State;

/** What is done with the control supply on and the load still off. */
final class ControlTopics {
  private final Anatomy anatomy;
  private final Texts texts;
  private final StateWords words;

  ControlTopics(Anatomy anatomy, Texts texts) {
    this.anatomy = anatomy;
    this.texts = texts;
    this.words = new StateWords(anatomy, texts);
  }

  List<Topic> topics() {
    List<Row> rows = new ArrayList<>(supplies());
    List<Topic> topics = new ArrayList<>();
    if (!rows.isEmpty()) {
      topics.add(
          Topic.of(
              "control-supply", stage(), texts.of("section.control-supply"), beginWith(), rows));
    }
    for (Part.Relay relay : anatomy.parts(Part.Relay.class)) {
      if (anatomy.elvCoil(relay)) {
        topics.add(
            Topic.of(
                "elv-coil",
                stage(),
                texts.of("section.coil-of", relay.name()),
                beginWith(),
                coil(relay, !anatomy.inputs().isEmpty())));
      }
    }
    return topics;
  }

  /** Only where nothing takes the mains to make the control supply is there no mains about. */
  private Section.Stage stage() {
    return anatomy.inputs().isEmpty() ? Section.Stage.ELV : Section.Stage.CONTROL;
  }

  /** What is off, and what a person may touch by mistake because it is not. */
  private String beginWith() {
    Set<String> loadOnly = anatomy.loadOnlyProtection();
    List<String> loads = anatomy.loads().stream().map(Part::name).toList();
    List<String> parts = new ArrayList<>();
    if (!loads.isEmpty()) {
      parts.add(
          loadOnly.isEmpty()
              ? texts.of("begin.loads-lifted", String.join(", ", loads))
              : texts.of("begin.locked-off", String.join(", ", loadOnly)));
    }
    Set<String> live = anatomy.controlProtection();
    if (!anatomy.inputs().isEmpty()) {
      parts.add(
          live.isEmpty()
              ? texts.of("begin.mains-behind-isolator")
              : texts.of("begin.mains-behind", String.join(", ", live)));
    }
    return parts.isEmpty() ? texts.of("begin.control-only") : String.join(" ", parts);
  }

  private List<Row> supplies() {
    List<Row> rows = new ArrayList<>();
    for (Branch.Source source : anatomy.directSources()) {
      Optional<Quantity> volts = source.volts();
      if (volts.isPresent() && volts.get().high() > 0) {
        rows.add(
            Row.of(
                    texts,
                    "control-supply",
                    Names.of(source.part(), "supply-voltage"),
                    supply(volts.get()),
                    Reasons.ofNetlist(texts.of("how.supply-as-stated", source.part())),
                    source.part(),
                    source.to(),
                    source.from())
                .live(!anatomy.inputs().isEmpty()));
      }
    }
    return rows;
  }

  private static Band supply(Quantity volts) {
    return Band.between(volts.low(), volts.high(), "V DC");
  }

  /** Off, on, off again; the same for coils on either side. */
  List<Row> coil(Part.Relay relay, boolean live) {
    List<Row> rows = new ArrayList<>();
    String unit = anatomy.elvCoil(relay) ? "V DC" : "V AC";
    Optional<CoilLimits> limits = anatomy.study().limits(relay.name());
    Optional<State> off = anatomy.stateWith(relay.name(), false);
    if (off.isPresent() && limits.isPresent()) {
      rows.add(
          row(
                  relay,
                  "coil-voltage-off",
                  Band.atMost(limits.get().release().value(), unit),
                  Reasons.of(limits.get().releaseReason(), limits.get().release()))
              .when(words.of(off.get()) + "."));
    }
    Optional<State> on = anatomy.stateWith(relay.name(), true);
    if (on.isPresent()) {
      CoilReading reading = anatomy.study().coil(relay.name(), on.get());
      String condition = words.of(on.get()) + "." + alsoIn(relay.name(), on.get());
      if (reading.highest() > 0 && reading.highest() >= reading.lowest()) {
        rows.add(
            row(
                    relay,
                    anatomy.elvCoil(relay) ? "coil-voltage-on-plus" : "coil-voltage-on",
                    Band.between(Math.max(0, reading.lowest()), reading.highest(), unit),
                    computed(reading, limits),
                    plus(relay, reading))
                .when(condition));
      }
      rows.add(
          row(
                  relay,
                  "pulls-in",
                  new Seen(Expected.State.PULLS_IN),
                  Reasons.ofNetlist(texts.of("how.pulled-in")))
              .when(condition));
      if (off.isPresent()) {
        rows.add(
            row(
                    relay,
                    "lets-go",
                    new Seen(Expected.State.LETS_GO),
                    Reasons.ofNetlist(texts.of("how.let-go")))
                .when(words.of(off.get()) + "."));
      }
    }
    return rows.stream().map(r -> r.live(live)).toList();
  }

  private Row row(
      Part.Relay relay, String kind, Expected expected, Grounds grounds, String... more) {
    List<Object> arguments =
        new ArrayList<>(List.of(relay.name(), relay.coil().first(), relay.coil().second()));
    arguments.addAll(List.of(more));
    String test = kind.equals("coil-voltage-on-plus") ? "coil-voltage-on" : kind;
    return Row.of(
        texts, kind, Names.of(relay.name(), test), expected, grounds, arguments.toArray());
  }

  /** Relays that pull in along with this one. */
  private String alsoIn(String relay, State state) {
    List<String> others =
        state.pulledIn().entrySet().stream()
            .filter(e -> e.getValue() && !e.getKey().equals(relay))
            .map(Map.Entry::getKey)
            .toList();
    return others.isEmpty() ? "" : " " + texts.of("when.also-in", String.join(", ", others));
  }

  private static String plus(Part.Relay relay, CoilReading reading) {
    return reading.volts() < 0 ? relay.coil().second() : relay.coil().first();
  }

  private Grounds computed(CoilReading reading, Optional<CoilLimits> limits) {
    String how = texts.of("how.corners", reading.lowestCorner(), reading.highestCorner());
    return limits
        .map(l -> Reasons.of(how, l.operate(), l.highest()))
        .orElseGet(() -> Reasons.ofNetlist(how));
  }
}
