package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.coilwright.checklist.Expected.Band;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Mistake;
import org.coilwright.circuit.Mistakes;
import org.coilwright.solve.Probing;

/** Every single wiring mistake of a circuit, and which rows it shows at. */
final class WiringMistakes {
  private final DeadReadings readings;
  private final List<Mistake> all;
  private final List<Mistake> harmless;

  // What was asked already: the same rows are gone through until none is left to add.
  private final IdentityHashMap<Probing, BitSet> asked = new IdentityHashMap<>();
  private final IdentityHashMap<Probing, BitSet> showing = new IdentityHashMap<>();

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
  private boolean shows(Row row, int mistake) {
    if (row.probing().isEmpty() || !(row.expected() instanceof Band band)) {
      return false;
    }
    Probing probing = row.probing().get();
    BitSet known = asked.computeIfAbsent(probing, p -> new BitSet());
    BitSet yes = showing.computeIfAbsent(probing, p -> new BitSet());
    if (!known.get(mistake)) {
      known.set(mistake);
      yes.set(mistake, readings.shows(probing, all.get(mistake), band));
    }
    return yes.get(mistake);
  }

  /**
   * Where each mistake shows first.
   *
   * @return for each of {@link #all}, the place of the first row that it shows at; -1 if there is
   *     none
   */
  List<Integer> first(List<Row> rows) {
    List<Integer> first = new ArrayList<>();
    for (int mistake = 0; mistake < all.size(); mistake++) {
      int found = -1;
      for (int row = 0; row < rows.size() && found < 0; row++) {
        found = shows(rows.get(row), mistake) ? row : -1;
      }
      first.add(found);
    }
    return first;
  }

  /** The first of these rows that a mistake shows at. */
  Optional<Row> first(List<Row> rows, Mistake mistake) {
    int number = all.indexOf(mistake);
    return rows.stream().filter(row -> shows(row, number)).findFirst();
  }

  /** Those that show at none of these rows. */
  List<Mistake> left(List<Row> rows) {
    List<Integer> first = first(rows);
    List<Mistake> left = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      if (first.get(i) < 0) {
        left.add(all.get(i));
      }
    }
    return left;
  }
}
