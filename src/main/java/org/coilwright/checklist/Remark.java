package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;

/**
 * Something about a filled-in sheet that is not as it should be.
 *
 * @param where as printed: {@code Row 5.3}
 * @param name of the row, wire or place; what a machine goes by
 * @param sentence what is so
 * @param means what a reading outside its band probably means; empty if nothing is known
 */
public record Remark(Kind kind, String where, String name, String sentence, List<String> means) {
  private static final int MOST_GUESSES = 4;

  /** Copies the list. */
  public Remark {
    means = List.copyOf(means);
  }

  static Remark of(Kind kind, String where, String name, String sentence) {
    return new Remark(kind, where, name, sentence, List.of());
  }

  /** What it probably means, a line each, no more of them than somebody tries out. */
  public List<String> guesses(Texts texts) {
    List<String> lines = new ArrayList<>();
    for (String guess : means.subList(0, Math.min(MOST_GUESSES, means.size()))) {
      lines.add(texts.of(lines.isEmpty() ? "record.probably" : "record.or", guess));
    }
    if (means.size() > MOST_GUESSES) {
      lines.add(texts.of("record.more", String.valueOf(means.size() - MOST_GUESSES)));
    }
    return List.copyOf(lines);
  }

  /** What is wrong. The worst first. */
  public enum Kind {
    /** The netlist of the sheet must not be energised. */
    STOP("stop"),
    /** The netlist of the sheet has a finding to be mended that nobody accepted. */
    FIX("fix"),
    /** A reading lies outside its band, or a row was marked FAIL. */
    OUTSIDE("outside"),
    /** Two things on the sheet cannot both be so. */
    CONTRADICTION("contradiction"),
    /** Can be read in two ways, and is asked about. */
    UNCLEAR("unclear"),
    /** Not done or not filled in. */
    MISSING("missing");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    /** As printed. */
    public String word() {
      return word;
    }
  }
}
