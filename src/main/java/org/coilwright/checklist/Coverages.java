package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
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
    Map<Row, List<Mistake>> byRow = new HashMap<>();
    List<Mistake> left = new ArrayList<>();
    List<Row> rows = plan.rows().stream().map(Plan.Placed::row).toList();
    for (Mistake mistake : mistakes.all()) {
      Optional<Row> first = mistakes.first(rows, mistake);
      first.ifPresentOrElse(
          row -> byRow.computeIfAbsent(row, r -> new ArrayList<>()).add(mistake),
          () -> left.add(mistake));
    }
    List<Entry> entries = new ArrayList<>();
    for (Plan.Placed placed : plan.rows()) {
      for (Mistake mistake : byRow.getOrDefault(placed.row(), List.of())) {
        entries.add(shown(placed, mistake));
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
