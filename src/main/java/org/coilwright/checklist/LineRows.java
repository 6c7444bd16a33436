package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.coilwright.checklist.Expected.Band;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.solve.Probing;
import org.coilwright.solve.Span;

/**
 * The line from the incoming terminals to a load, read dead from end to end: with the incoming loop
 * and the protective conductor it gives the loop at the load, and no load is live for that.
 */
final class LineRows {
  private final DeadTests tests;
  private final Anatomy anatomy;

  LineRows(DeadTests tests) {
    this.tests = tests;
    this.anatomy = tests.anatomy();
  }

  List<Row> rows() {
    List<Row> rows = new ArrayList<>();
    for (Part load : anatomy.loads()) {
      row(load).ifPresent(rows::add);
    }
    return rows;
  }

  private Optional<Row> row(Part load) {
    for (Part.Mains mains : anatomy.parts(Part.Mains.class)) {
      for (String line : mains.pins()) {
        for (String pin : anatomy.livePins(load)) {
          Terminal from = new Terminal(mains.name(), line);
          Terminal to = new Terminal(load.name(), pin);
          boolean wired = anatomy.wired(mains.name(), line) && anatomy.wired(load.name(), pin);
          Probing probing =
              DeadState.without(
                  tests.state().still(Probing.ohms(from, to)).operating(tests.state().heldIn()),
                  Set.of(load.name()));
          if (wired && line.startsWith("L")) {
            Span drawn = tests.readings().drawn(probing);
            if (!drawn.isOpen() && !Double.isInfinite(drawn.high()) && anatomy.earthed(load)) {
              return Optional.of(row(load, from, to, probing, tests.bands().read(drawn)));
            }
          }
        }
      }
    }
    return Optional.empty();
  }

  private Row row(Part load, Terminal from, Terminal to, Probing probing, Band band) {
    Texts texts = tests.texts();
    Row row =
        Row.of(
            texts,
            "line-resistance",
            Names.of(load.name(), "line-resistance"),
            band,
            Reasons.of(
                texts.of("how.line-resistance"), tests.bands().figure("checklist.probe-ohms")),
            load.name(),
            from,
            to);
    return tests.readings().reading(row, probing);
  }
}
