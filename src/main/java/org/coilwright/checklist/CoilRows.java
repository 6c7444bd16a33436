package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.checklist.Expected.Band;
import org.coilwright.checklist.Expected.Seen;
import org.coilwright.circuit.Branch;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Quantity;
import org.coilwright.solve.CoilLimits;
import org.coilwright.solve.CoilReading;
import org.coilwright.solve.State;

/** A coil with the load still off: without current, with it, and without again. */
final class CoilRows {
  private final Anatomy anatomy;
  private final Texts texts;
  private final StateWords words;

  CoilRows(Anatomy anatomy, Texts texts) {
    this.anatomy = anatomy;
    this.texts = texts;
    this.words = new StateWords(anatomy, texts);
  }

  /** The control supplies themselves. */
  List<Row> supplies() {
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
    List<String> columns = anatomy.columnsOf(relay.name());
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
              .inLine(line(relay), words.of(off.get(), columns)));
    }
    Optional<State> on = anatomy.stateWith(relay.name(), true);
    if (on.isPresent()) {
      CoilReading reading = anatomy.study().coil(relay.name(), on.get());
      String position = words.of(on.get(), columns) + alsoIn(relay.name(), on.get());
      if (reading.highest() > 0 && reading.highest() >= reading.lowest()) {
        rows.add(
            row(
                    relay,
                    anatomy.elvCoil(relay) ? "coil-voltage-on-plus" : "coil-voltage-on",
                    Band.between(Math.max(0, reading.lowest()), reading.highest(), unit),
                    computed(reading, limits),
                    plus(relay, reading))
                .inLine(line(relay), position));
      }
      rows.add(
          row(
                  relay,
                  "pulls-in",
                  new Seen(Expected.State.PULLS_IN),
                  Reasons.ofNetlist(texts.of("how.pulled-in")))
              .inLine(line(relay), new Seen(Expected.State.PULLS_IN).text(texts)));
      if (off.isPresent()) {
        rows.add(
            row(
                    relay,
                    "lets-go",
                    new Seen(Expected.State.LETS_GO),
                    Reasons.ofNetlist(texts.of("how.let-go")))
                .inLine(line(relay), new Seen(Expected.State.LETS_GO).text(texts)));
      }
    }
    // a line begins with a reading: what is only seen has no boxes for others
    boolean shared = !rows.isEmpty() && rows.get(0).form().manner() == Manner.READ;
    return rows.stream()
        .map(r -> r.live(live))
        .map(r -> shared ? r : r.inLine("", r.form().label()))
        .toList();
  }

  private static String line(Part.Relay relay) {
    return relay.name() + ".coil";
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
    return others.isEmpty() ? "" : "; " + texts.of("when.also-in", String.join(", ", others));
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
