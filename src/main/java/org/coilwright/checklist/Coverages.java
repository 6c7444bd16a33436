package org.coilwright.checklist;

import java.util.ArrayList;
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
  /** What a person calls a thousandth: nobody reads 0.000024 kΩ. */
  private static final Map<String, String> SMALLER = Map.of("MΩ", "kΩ", "kΩ", "Ω");

  private static final double THOUSAND = 1000;

  private final DeadTests tests;
  private final WiringMistakes mistakes;
  private final DeadReadings readings;
  private final Texts texts;
  private final MistakeWords words;
  private final Plan plan;
  private final Coverage.Added added;

  Coverages(DeadTests tests, Plan plan, Coverage.Added added) {
    this.added = added;
    this.tests = tests;
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
    List<Entry> unseen = new ArrayList<>();
    List<LiveReadings.Shown> live = new ArrayList<>();
    List<Mistake> shownLive = new ArrayList<>();
    for (Mistake mistake : left) {
      Optional<LiveReadings.Shown> shown =
          left.size() > LiveReadings.MOST
              ? Optional.empty()
              : new LiveReadings(tests).first(placed, mistake);
      if (shown.isPresent()) {
        live.add(shown.get());
        shownLive.add(mistake);
      } else {
        unseen.add(byEye(mistake));
      }
    }
    for (Plan.Placed row : placed) {
      for (int i = 0; i < live.size(); i++) {
        if (live.get(i).placed().equals(row)) {
          entries.add(entry(row, shownLive.get(i), text(live.get(i).volts(), unit(row))));
        }
      }
    }
    entries.addAll(unseen);
    for (Mistake mistake : mistakes.harmless()) {
      entries.add(new Entry(words.of(mistake), Fate.HARMLESS, "", "", "", ""));
    }
    return new Coverage(entries, added);
  }

  private Entry shown(Plan.Placed placed, Mistake mistake) {
    Row row = placed.row();
    String reading =
        row.expected() instanceof Band band && row.probing().isPresent()
            ? text(readings.shown(row.probing().get(), mistake, band), band.unit())
            : "";
    return entry(placed, mistake, reading);
  }

  private Entry entry(Plan.Placed placed, Mistake mistake, String reading) {
    return new Entry(
        words.of(mistake),
        placed.row().live() ? Fate.WITH_MAINS : Fate.BEFORE_MAINS,
        placed.printed().called(tests.texts()),
        placed.printed().name(),
        placed.row().expected().text(texts),
        reading);
  }

  private static String unit(Plan.Placed placed) {
    return placed.row().expected().unit();
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
                    placed.printed().called(tests.texts()),
                    placed.printed().name(),
                    "",
                    ""))
        .orElseThrow(() -> new IllegalStateException("no caution for: " + words.of(mistake)));
  }

  private String text(Span shown, String unit) {
    if (shown.isOpen()) {
      return "open";
    }
    if (shown.high() == 0) {
      return "0 " + unit;
    }
    boolean bounded = !Double.isInfinite(shown.high());
    String smaller = SMALLER.getOrDefault(unit, "");
    if (!smaller.isEmpty() && bounded && shown.high() < 1) {
      return text(new Span(shown.low() * THOUSAND, shown.high() * THOUSAND), smaller);
    }
    return Double.isInfinite(shown.high())
        ? Band.atLeast(shown.low(), unit).text(texts)
        : Band.between(shown.low(), shown.high(), unit).text(texts);
  }
}
