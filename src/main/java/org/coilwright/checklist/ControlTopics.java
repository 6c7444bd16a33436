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

  ControlTopics(Anatomy anatomy) {
    this.anatomy = anatomy;
  }

  List<Topic> topics() {
    List<Row> rows = new ArrayList<>(supplies());
    List<Topic> topics = new ArrayList<>();
    if (!rows.isEmpty()) {
      topics.add(new Topic(Section.Stage.ELV, "control supply", beginWith(), rows));
    }
    for (Part.Relay relay : anatomy.parts(Part.Relay.class)) {
      if (anatomy.elvCoil(relay)) {
        topics.add(
            new Topic(
                Section.Stage.ELV,
                "coil of " + relay.name(),
                beginWith(),
                coil(relay, !anatomy.inputs().isEmpty())));
      }
    }
    return topics;
  }

  /** What is off, and what a person may touch by mistake because it is not. */
  private String beginWith() {
    Set<String> loadOnly = anatomy.loadOnlyProtection();
    List<String> loads = anatomy.loads().stream().map(Part::name).toList();
    StringBuilder words = new StringBuilder();
    if (!loads.isEmpty()) {
      words.append(
          loadOnly.isEmpty()
              ? "Wires of " + String.join(", ", loads) + " lifted and covered."
              : String.join(", ", loadOnly) + " locked off.");
    }
    Set<String> live = anatomy.controlProtection();
    if (!anatomy.inputs().isEmpty()) {
      words
          .append(words.isEmpty() ? "" : " ")
          .append("The control supply itself needs the mains: what lies behind ")
          .append(live.isEmpty() ? "the isolator" : String.join(", ", live))
          .append(" is live at mains voltage.");
    }
    return words.isEmpty() ? "Only the control supply on." : words.toString();
  }

  private List<Row> supplies() {
    List<Row> rows = new ArrayList<>();
    for (Branch.Source source : anatomy.directSources()) {
      Optional<Quantity> volts = source.volts();
      if (volts.isPresent() && volts.get().high() > 0) {
        rows.add(
            Row.dead(
                    Names.of(source.part(), "supply-voltage"),
                    "Measure the control supply of " + source.part(),
                    "between " + source.to() + " (plus) and " + source.from() + " (minus)",
                    supply(volts.get()),
                    "switch off; a wrong supply, a wrong terminal or too much load.",
                    Reasons.ofNetlist("voltage and tolerance as stated for " + source.part()))
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
    String where =
        "between "
            + relay.name()
            + "."
            + relay.coil().first()
            + " and "
            + relay.name()
            + "."
            + relay.coil().second();
    Optional<CoilLimits> limits = anatomy.study().limits(relay.name());
    Optional<State> off = anatomy.stateWith(relay.name(), false);
    if (off.isPresent() && limits.isPresent()) {
      rows.add(
          new Row(
              Names.of(relay.name(), "coil-voltage-off"),
              anatomy.inWords(off.get()) + ".",
              "Measure the coil voltage of " + relay.name(),
              where,
              Band.atMost(limits.get().release().value(), unit),
              "look for leakage, a sneak path or a wrong wire.",
              live,
              Reasons.of(limits.get().releaseReason(), limits.get().release())));
    }
    Optional<State> on = anatomy.stateWith(relay.name(), true);
    if (on.isPresent()) {
      CoilReading reading = anatomy.study().coil(relay.name(), on.get());
      String condition = anatomy.inWords(on.get()) + "." + alsoIn(relay.name(), on.get());
      if (reading.highest() > 0 && reading.highest() >= reading.lowest()) {
        rows.add(
            new Row(
                Names.of(relay.name(), "coil-voltage-on"),
                condition,
                "Measure the coil voltage of " + relay.name(),
                where + (anatomy.elvCoil(relay) ? plus(relay, reading) : ""),
                Band.between(Math.max(0, reading.lowest()), reading.highest(), unit),
                "measure again at the supply; compare the run's length and size.",
                live,
                computed(reading, limits)));
      }
      rows.add(
          new Row(
              Names.of(relay.name(), "pulls-in"),
              condition,
              "Watch the armature of " + relay.name(),
              "",
              new Seen(Expected.State.PULLS_IN),
              "switch off; do not let it chatter.",
              live,
              Reasons.ofNetlist("pulled in in this position")));
      if (off.isPresent()) {
        rows.add(
            new Row(
                Names.of(relay.name(), "lets-go"),
                anatomy.inWords(off.get()) + ".",
                "Watch the armature of " + relay.name() + " again",
                "",
                new Seen(Expected.State.LETS_GO),
                "look for leakage, a suppressor that is reversed or a stuck armature.",
                live,
                Reasons.ofNetlist("let go in this position")));
      }
    }
    return rows;
  }

  /** Relays that pull in along with this one. */
  private static String alsoIn(String relay, State state) {
    List<String> others =
        state.pulledIn().entrySet().stream()
            .filter(e -> e.getValue() && !e.getKey().equals(relay))
            .map(Map.Entry::getKey)
            .toList();
    return others.isEmpty() ? "" : " " + String.join(", ", others) + " in as well.";
  }

  private static String plus(Part.Relay relay, CoilReading reading) {
    String pin = reading.volts() < 0 ? relay.coil().second() : relay.coil().first();
    return ", plus at " + pin;
  }

  private static Grounds computed(CoilReading reading, Optional<CoilLimits> limits) {
    String how = "lowest: " + reading.lowestCorner() + "; highest: " + reading.highestCorner();
    return limits
        .map(l -> Reasons.of(how, l.operate(), l.highest()))
        .orElseGet(() -> Reasons.ofNetlist(how));
  }
}
