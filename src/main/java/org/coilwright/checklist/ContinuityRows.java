package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.checklist.Expected.Band;
import org.coilwright.circuit.Branch;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.solve.Probing;

/** Every wire from end to end, one row each. */
final class ContinuityRows {
  private final Anatomy anatomy;
  private final Bands bands;
  private final DeadReadings readings;
  private final Texts texts;

  ContinuityRows(DeadTests tests) {
    this.anatomy = tests.anatomy();
    this.bands = tests.bands();
    this.readings = tests.readings();
    this.texts = tests.texts();
  }

  /**
   * One row for each wire, but for those that are measured already.
   *
   * @param before rows that come before
   * @param atThermals the wires of thermostats and cut-outs, these open: closed, such a contact
   *     would hide a wire on its other pin; or all other wires
   */
  List<Row> rows(List<Row> before, boolean atThermals) {
    Set<Set<Terminal>> done = new HashSet<>();
    before.forEach(row -> row.probing().ifPresent(p -> done.add(pins(p))));
    List<Row> rows = new ArrayList<>();
    for (Branch.Conductor wire : anatomy.circuit().branches(Branch.Conductor.class)) {
      Terminal from = wire.wire().from().value();
      Terminal to = wire.wire().to().value();
      Probing probing = Probing.ohms(from, to);
      boolean here = (isThermal(from) || isThermal(to)) == atThermals;
      if (here && !from.equals(to) && done.add(pins(probing))) {
        rows.add(row(wire, from, to, atThermals ? probing.operating(opened()) : probing));
      }
    }
    return rows;
  }

  private boolean isThermal(Terminal pin) {
    return opened().containsKey(pin.part());
  }

  /** Thermostats and cut-outs that are closed when cold, brought to open. */
  private Map<String, Boolean> opened() {
    Map<String, Boolean> opened = new HashMap<>();
    for (Part.Thermal thermal : anatomy.parts(Part.Thermal.class)) {
      if (thermal.form() == Part.ContactForm.NC) {
        opened.put(thermal.name(), false);
      }
    }
    return opened;
  }

  /** How these are brought to open. */
  String opening() {
    return anatomy.parts(Part.Thermal.class).stream()
        .filter(thermal -> thermal.form() == Part.ContactForm.NC)
        .map(
            thermal ->
                texts.of(
                    thermal.isCutOut() ? "opening.cut-out" : "opening.thermostat", thermal.name()))
        .collect(Collectors.joining(", "));
  }

  private static Set<Terminal> pins(Probing probing) {
    Set<Terminal> pins = new HashSet<>(probing.plus());
    pins.addAll(probing.minus());
    return pins;
  }

  private Row row(Branch.Conductor wire, Terminal from, Terminal to, Probing probing) {
    Band band = bands.read(readings.drawn(probing));
    Grounds grounds =
        bands
            .series(List.of(wire))
            .map(Bands.Reasoned::grounds)
            .orElseGet(
                () ->
                    Reasons.of(
                        texts.of("how.length-unknown"), bands.figure("checklist.wire-ohms")));
    return readings.reading(
        Row.of(
            texts,
            "continuity",
            Names.of(Names.wire(wire.wire()), "continuity"),
            band,
            grounds,
            called(wire),
            from,
            to),
        probing);
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
}
