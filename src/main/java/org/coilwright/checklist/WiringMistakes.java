package org.coilwright.checklist;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.coilwright.checklist.Expected.Band;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Mistake;
import org.coilwright.circuit.Mistakes;

/** Every single wiring mistake of a circuit, and which rows it shows at. */
final class WiringMistakes {
  private final DeadReadings readings;
  private final List<Mistake> all;
  private final List<Mistake> harmless;

  WiringMistakes(Circuit circuit, DeadReadings readings) {
    this.readings = readings;
    List<Mistake> possible = Mistakes.of(circuit);
    Set<Mistake> same = Mistakes.harmless(circuit, possible);
    this.harmless = possible.stream().filter(same::contains).toList();
    this.all = possible.stream().filter(m -> !same.contains(m)).toList();
  }

  /** Those that join or part something. */
  List<Mistake> all() {
    return all;
  }

  /** Those after which the wires join the same pins as before. */
  List<Mistake> harmless() {
    return harmless;
  }

  /** True if the reading of this row surely leaves its band. */
  boolean shows(Row row, Mistake mistake) {
    return row.probing().isPresent()
        && row.expected() instanceof Band band
        && readings.shows(row.probing().get(), mistake, band);
  }

  /** The first of these rows that a mistake shows at. */
  Optional<Row> first(List<Row> rows, Mistake mistake) {
    return rows.stream().filter(row -> shows(row, mistake)).findFirst();
  }

  /** Those that show at none of these rows. */
  List<Mistake> left(List<Row> rows) {
    return all.stream().filter(m -> first(rows, m).isEmpty()).toList();
  }
}
