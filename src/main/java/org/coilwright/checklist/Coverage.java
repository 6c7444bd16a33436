package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Every single wiring mistake, and the step at which it shows.
 *
 * @param entries one a mistake: first what shows, in the order of the steps, then what only the eye
 *     can find, then what is electrically the same
 * @param added rows that were chosen for what the others do not show
 */
public record Coverage(List<Entry> entries, Added added) {
  /** Of a circuit without wires. */
  public static final Coverage NONE = new Coverage(List.of(), new Added(0, 0, true));

  /**
   * How the rows were chosen.
   *
   * @param rows how many
   * @param tried out of so many measurements, each of which shows something else
   * @param fewest no fewer of these would do; if false, fewer might
   */
  public record Added(int rows, int tried, boolean fewest) {}

  /** Copies the list. */
  public Coverage {
    entries = List.copyOf(entries);
  }

  /** What becomes of a mistake. */
  public enum Fate {
    /** Some reading surely leaves its band before the mains is applied. */
    BEFORE_MAINS("before mains"),
    /** Some reading surely leaves its band, but only with the mains on. */
    WITH_MAINS("with the mains on"),
    /** No reading surely tells it; a caution stands at the step of the wire. */
    BY_EYE("by eye only"),
    /** The wires join the same pins as before. */
    HARMLESS("electrically the same");

    private final String text;

    Fate(String text) {
      this.text = text;
    }

    /** As printed. */
    public String text() {
      return text;
    }
  }

  /**
   * A mistake.
   *
   * @param mistake in plain words
   * @param step number of the first row that it shows at, or of the one with the caution; empty if
   *     it is harmless
   * @param row that row's name
   * @param expected what that row must read; empty where nothing is read
   * @param reading what it may read with the mistake, the instrument's error allowed for
   */
  public record Entry(
      String mistake, Fate fate, String step, String row, String expected, String reading) {}

  /** How many of them end like this. */
  public long count(Fate fate) {
    return entries.stream().filter(e -> e.fate() == fate).count();
  }

  /** How many join or part something. */
  public long mistakes() {
    return entries.size() - count(Fate.HARMLESS);
  }

  /** How many mistakes show first at each step, in order; steps at which none does are left out. */
  public Map<String, Long> perStep() {
    Map<String, Long> perStep = new LinkedHashMap<>();
    for (Entry entry : entries) {
      if (entry.fate() == Fate.BEFORE_MAINS || entry.fate() == Fate.WITH_MAINS) {
        perStep.merge(entry.step(), 1L, Long::sum);
      }
    }
    return Collections.unmodifiableMap(perStep);
  }

  /** The last step at which a mistake shows first; empty if none shows. */
  public String lastStep() {
    String last = "";
    for (Entry entry : entries) {
      if (entry.fate() == Fate.BEFORE_MAINS || entry.fate() == Fate.WITH_MAINS) {
        last = entry.step();
      }
    }
    return last;
  }

  /** How many rows were added, in one sentence; empty if none was needed. */
  public String choice(Texts texts) {
    return added.rows() == 0
        ? ""
        : texts.of(
            added.fewest() ? "coverage.added-fewest" : "coverage.added",
            added.rows(),
            added.tried());
  }

  /** The figure in one sentence; empty if there is no wire to mistake. */
  public String sentence(Texts texts) {
    if (entries.isEmpty()) {
      return "";
    }
    long before = count(Fate.BEFORE_MAINS);
    long shown = before + count(Fate.WITH_MAINS);
    String key =
        shown == 0
            ? "coverage.none-shown"
            : before == shown ? "coverage.shown" : "coverage.shown-live";
    List<String> parts = new ArrayList<>();
    parts.add(texts.of(key, mistakes(), shown, lastStep(), before));
    if (count(Fate.BY_EYE) > 0) {
      parts.add(texts.of("coverage.by-eye", count(Fate.BY_EYE)));
    }
    if (count(Fate.HARMLESS) > 0) {
      parts.add(texts.of("coverage.harmless", count(Fate.HARMLESS)));
    }
    return texts.of("coverage", String.join("; ", parts));
  }
}
