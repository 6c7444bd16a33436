package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.checklist.Expected.Band;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Mistake;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.solve.Probing;
import org.coilwright.table.Cited;

/**
 * Every wire from end to end, as the wiring list has them. Thermostats and cut-outs are open: a
 * closed one would hide a wire on its other pin.
 */
final class ContinuityRows {
  private final DeadTests tests;
  private final Anatomy anatomy;
  private final Bands bands;
  private final DeadReadings readings;
  private final DeadState state;
  private final Texts texts;

  ContinuityRows(DeadTests tests) {
    this.tests = tests;
    this.anatomy = tests.anatomy();
    this.bands = tests.bands();
    this.readings = tests.readings();
    this.state = tests.state();
    this.texts = tests.texts();
  }

  /**
   * One row for each wire; of several between the same pins, for the first.
   *
   * @param protective rows of protective conductors: one that is a single wire takes its place
   */
  List<Row> rows(List<Row> protective) {
    Map<Set<Terminal>, Row> measured = new HashMap<>();
    protective.forEach(row -> row.probing().ifPresent(p -> measured.put(pins(p), row)));
    List<Branch.Conductor> wires = anatomy.circuit().branches(Branch.Conductor.class);
    List<String> names = WireRows.names(wires);
    Set<Set<Terminal>> done = new HashSet<>();
    List<Row> rows = new ArrayList<>();
    for (int i = 0; i < wires.size(); i++) {
      Terminal from = wires.get(i).wire().from().value();
      Terminal to = wires.get(i).wire().to().value();
      Probing plain = Probing.ohms(from, to);
      if (!from.equals(to) && done.add(pins(plain))) {
        Row known = measured.get(pins(plain));
        rows.add(
            (known == null ? row(wires.get(i), from, to) : known)
                .ofWire(names.get(i), WireRows.number(wires.get(i), i)));
      }
    }
    return rows;
  }

  /** How the thermostats and cut-outs are brought to open. */
  String opening() {
    return anatomy.parts(Part.Thermal.class).stream()
        .filter(thermal -> thermal.form() == Part.ContactForm.NC)
        .map(
            thermal ->
                texts.of(
                    thermal.isCutOut() ? "opening.cut-out" : "opening.thermostat", thermal.name()))
        .collect(Collectors.joining(", "));
  }

  static Set<Terminal> pins(Probing probing) {
    Set<Terminal> pins = new HashSet<>(probing.plus());
    pins.addAll(probing.minus());
    return pins;
  }

  private Row row(Branch.Conductor wire, Terminal from, Terminal to) {
    Probing plain = state.still(Probing.ohms(from, to)).operating(state.opened());
    Band band = bands.read(readings.drawn(plain));
    Probing probing = telling(plain, band);
    Band told = told(wire, probing, band);
    Grounds grounds =
        bands
            .series(List.of(wire))
            .map(Bands.Reasoned::grounds)
            .orElseGet(
                () ->
                    Reasons.of(
                        texts.of("how.length-unknown"), bands.figure("checklist.wire-ohms")));
    Row row =
        Row.of(
            texts,
            "continuity",
            Names.of(Names.wire(wire.wire()), "continuity"),
            told,
            grounds,
            called(wire),
            from,
            to);
    boolean shortWire = !told.equals(band) && !anatomy.carries(wire.from()).equals(Anatomy.PE);
    return readings.reading(shortWire ? row.answered(Manner.COMPARED) : row, probing);
  }

  /** With the lead turned so that a diode hides nothing, where it matters. */
  private Probing telling(Probing plain, Band band) {
    boolean nearDiode =
        readings.hasDiodes()
            && pins(plain).stream()
                .flatMap(pin -> anatomy.circuit().find(pin).stream())
                .anyMatch(node -> !anatomy.onMains(node));
    if (!nearDiode) {
      return plain;
    }
    Probing best = plain;
    long most = shown(plain, band);
    for (Probing turned : List.of(plain.toward(), plain.exchanged().toward())) {
      long shown = shown(turned, band);
      if (shown > most && readings.fits(turned, band)) {
        best = turned;
        most = shown;
      }
    }
    return best;
  }

  private long shown(Probing probing, Band band) {
    return tests.mistakes().felt(probing).stream()
        .filter(mistake -> readings.shows(probing, mistake, band))
        .count();
  }

  /** The limit that an ordinary multimeter reads, where it finds the same mistakes. */
  private Band told(Branch.Conductor wire, Probing probing, Band band) {
    Cited<Double> plainLimit = bands.figure("checklist.short-wire-ohms");
    double most = band.max().orElse(0);
    if (band.min().orElse(0) > 0 || most >= plainLimit.value() || most <= 0) {
      return band;
    }
    Band wide = Band.atMost(plainLimit.value(), "Ω");
    List<Mistake> felt = tests.mistakes().felt(probing);
    boolean earth = anatomy.carries(wire.from()).equals(Anatomy.PE);
    return !earth && readings.showsAlike(probing, felt, band, wide) ? wide : band;
  }

  /** By number, run and colour: what can be seen on it. */
  private String called(Branch.Conductor wire) {
    String run = wire.run().map(r -> texts.of("wire.in-run", r.name())).orElse("");
    String colour =
        wire.wire()
            .colour()
            .map(c -> texts.of("wire.in-colour", WireRows.colour(texts, c.text())))
            .orElse("");
    // Without a number of its own: its place in the netlist changes when other wires are added.
    return wire.wire()
        .number()
        .map(number -> texts.of("wire.numbered", number.text(), run, colour))
        .orElseGet(() -> texts.of("wire.without-number", run, colour));
  }

  /** Letters of what is done before a wire is measured: E and the plus sign. */
  static String letters(Row row, Anatomy anatomy) {
    Optional<Probing> probing = row.probing();
    if (probing.isEmpty()) {
      return "";
    }
    boolean earth =
        anatomy.loads().stream().anyMatch(load -> probing.get().apart().contains(load.name()));
    String lead = probing.get().directed() ? "+" + probing.get().plus().get(0).pin() : "";
    return (earth ? "E" : "") + lead;
  }
}
