package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.checklist.Coverage.Entry;
import org.coilwright.checklist.Coverage.Fate;
import org.coilwright.checklist.Expected.Band;
import org.coilwright.circuit.Mistake;
import org.coilwright.solve.Span;

/** Counts which mistake shows at which step of a finished plan. */
final class Coverages {
  private final WiringMistakes mistakes;
  private final DeadReadings readings;
  private final Texts texts;
  private final MistakeWords words;
  private final Plan plan;

  Coverages(DeadTests tests, Plan plan) {
    this.mistakes = tests.mistakes();
    this.readings = tests.readings();
    this.texts = tests.texts();
    this.words = new MistakeWords(tests.anatomy().circuit(), texts);
    this.plan = plan;
  }

  Coverage coverage() {
    List<Row> rows = plan.rows().stream().map(Plan.Placed::row).toList();
    List<List<Mistake>> byRow = new ArrayList<>();
    rows.forEach(row -> byRow.add(new ArrayList<>()));
    List<Mistake> left = new ArrayList<>();
    List<Integer> first = mistakes.first(rows);
    for (int i = 0; i < first.size(); i++) {
      List<Mistake> together = first.get(i) < 0 ? left : byRow.get(first.get(i));
      together.add(mistakes.all().get(i));
    }
    List<Entry> entries = new ArrayList<>();
    List<Plan.Placed> placed = plan.rows();
    for (int row = 0; row < rows.size(); row++) {
      for (Mistake mistake : byRow.get(row)) {
        entries.add(shown(placed.get(row), mistake));
      }
    }
    for (Mistake mistake : left) {
      entries.add(byEye(mistake));
    }
    for (Mistake mistake : mistakes.harmless()) {
      entries.add(new Entry(words.of(mistake), Fate.HARMLESS, "", "", "", ""));
    }
    return new Coverage(entries);
  }

  private Entry shown(Plan.Placed placed, Mistake mistake) {
    Row row = placed.row();
    String reading =
        row.expected() instanceof Band band && row.probing().isPresent()
            ? text(readings.shown(row.probing().get(), mistake, band), band.unit())
            : "";
    return new Entry(
        words.of(mistake),
        row.live() ? Fate.WITH_MAINS : Fate.BEFORE_MAINS,
        placed.printed().number(),
        placed.printed().name(),
        row.expected().text(texts),
        reading);
  }

  private Entry byEye(Mistake mistake) {
    return plan.rows().stream()
        .filter(placed -> placed.row().watched().contains(mistake))
        .findFirst()
        .map(
            placed ->
                new Entry(
                    words.of(mistake),
                    Fate.BY_EYE,
                    placed.printed().number(),
                    placed.printed().name(),
                    "",
                    ""))
        .orElseThrow(() -> new IllegalStateException("no caution for: " + words.of(mistake)));
  }

  private String text(Span shown, String unit) {
    if (shown.isOpen()) {
      return "open";
    }
    return Double.isInfinite(shown.high())
        ? Band.atLeast(shown.low(), unit).text(texts)
        : Band.between(shown.low(), shown.high(), unit).text(texts);
  }
}
