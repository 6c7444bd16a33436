package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.checklist.Expected.Band;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Mistake;
import org.coilwright.circuit.Mistakes;
import org.coilwright.solve.MistakeIndex;
import org.coilwright.solve.Probing;

/** Every single wiring mistake of a circuit, and which rows it shows at. */
final class WiringMistakes {
  private final DeadReadings readings;
  private final List<Mistake> all;
  private final List<Mistake> harmless;

  private final MistakeIndex index;
  private final IdentityHashMap<Mistake, Integer> places = new IdentityHashMap<>();

  // What was asked already: the same rows are gone through until none is left to add.
  private final IdentityHashMap<Probing, Map<Integer, Seen>> asked = new IdentityHashMap<>();

  private enum Seen {
    NOT_ASKED,
    SHOWS,
    HIDDEN
  }

  WiringMistakes(Circuit circuit, DeadReadings readings) {
    this.readings = readings;
    List<Mistake> possible = Mistakes.of(circuit);
    Set<Mistake> same = Mistakes.harmless(circuit, possible);
    this.harmless = possible.stream().filter(same::contains).toList();
    this.all = possible.stream().filter(m -> !same.contains(m)).toList();
    this.index = readings.index(all);
    all.forEach(m -> places.put(m, places.size()));
  }

  /** Those that join or part something. */
  List<Mistake> all() {
    return all;
  }

  /** Those after which the wires join the same pins as before. */
  List<Mistake> harmless() {
    return harmless;
  }

  /** By place: whether a mistake that a row's measurement can feel shows at it, as far as asked. */
  private Map<Integer, Seen> asked(Row row) {
    if (row.probing().isEmpty() || !(row.expected() instanceof Band)) {
      return Map.of();
    }
    return asked.computeIfAbsent(
        row.probing().get(),
        probing -> {
          Map<Integer, Seen> felt = new LinkedHashMap<>();
          readings.felt(probing, index).forEach(place -> felt.put(place, Seen.NOT_ASKED));
          return felt;
        });
  }

  /** True if the reading of this row surely leaves its band. */
  private boolean shows(Row row, int mistake, Map<Integer, Seen> known) {
    if (!known.containsKey(mistake)) {
      return false;
    }
    Seen seen = known.getOrDefault(mistake, Seen.NOT_ASKED);
    if (seen == Seen.NOT_ASKED) {
      boolean shows =
          row.expected() instanceof Band band
              && readings.shows(row.probing().orElseThrow(), all.get(mistake), band);
      seen = shows ? Seen.SHOWS : Seen.HIDDEN;
      known.put(mistake, seen);
    }
    return seen == Seen.SHOWS;
  }

  /**
   * Where each mistake shows first.
   *
   * @return for each of {@link #all}, the place of the first row that it shows at; -1 if there is
   *     none
   */
  List<Integer> first(List<Row> rows) {
    List<Integer> first = new ArrayList<>(Collections.nCopies(all.size(), -1));
    for (int row = 0; row < rows.size(); row++) {
      Map<Integer, Seen> known = asked(rows.get(row));
      for (int mistake : List.copyOf(known.keySet())) {
        if (first.get(mistake) < 0 && shows(rows.get(row), mistake, known)) {
          first.set(mistake, row);
        }
      }
    }
    return first;
  }

  /** The first of these rows that a mistake shows at. */
  Optional<Row> first(List<Row> rows, Mistake mistake) {
    int number = place(mistake);
    return rows.stream().filter(row -> shows(row, number, asked(row))).findFirst();
  }

  private int place(Mistake mistake) {
    Integer place = places.get(mistake);
    return place == null ? all.indexOf(mistake) : place;
  }

  /** Of these mistakes, by their places in the list, those that a measurement may feel. */
  List<Integer> felt(Probing probing, Map<Integer, Integer> those) {
    return readings.felt(probing, index).stream()
        .flatMap(place -> Optional.ofNullable(those.get(place)).stream())
        .toList();
  }

  /** By its place among {@link #all}, where each of these stands in its own list. */
  Map<Integer, Integer> places(List<Mistake> those) {
    Map<Integer, Integer> in = new HashMap<>();
    those.forEach(mistake -> in.put(place(mistake), in.size()));
    return in;
  }

  /** Those that a measurement may feel. */
  List<Mistake> felt(Probing probing) {
    return readings.felt(probing, index).stream().map(all::get).toList();
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
