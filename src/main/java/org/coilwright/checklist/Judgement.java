package org.coilwright.checklist;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a filled-in sheet says, row by row, and what is not as it should be.
 *
 * @param rows every test row, in order
 * @param remarks in the order of the page; none if the sheet is complete and every reading within
 *     its band
 */
public record Judgement(List<RowResult> rows, List<Remark> remarks) {
  /** Copies the lists. */
  public Judgement {
    rows = List.copyOf(rows);
    remarks = List.copyOf(remarks);
  }

  /** True if nothing is missing, unclear, outside or contradictory. */
  public boolean isComplete() {
    return remarks.isEmpty();
  }

  /** How many remarks are of a kind. */
  public long count(Remark.Kind kind) {
    return remarks.stream().filter(r -> r.kind() == kind).count();
  }

  /** How many rows came to this. */
  public long count(State state) {
    return rows.stream().filter(r -> r.state() == state).count();
  }

  /** True if the netlist of the sheet holds what must not be energised, whatever was tested. */
  public boolean isStopped() {
    return count(Remark.Kind.STOP) > 0;
  }

  /** The verdict in a sentence or two. */
  public String sentence(Texts texts) {
    if (isComplete()) {
      return texts.of("judge.complete", String.valueOf(rows.size()));
    }
    String sheet =
        texts.of(
            "judge.incomplete",
            counted(Remark.Kind.OUTSIDE),
            counted(Remark.Kind.CONTRADICTION),
            counted(Remark.Kind.UNCLEAR),
            counted(Remark.Kind.MISSING));
    long stops = count(Remark.Kind.STOP);
    long fixes = count(Remark.Kind.FIX);
    return (stops == 0 ? "" : texts.of("judge.has-stops", stops) + " ")
        + (fixes == 0 ? "" : texts.of("judge.has-fixes", fixes) + " ")
        + (stops + fixes == 0 ? "" : texts.of("judge.print-again") + " ")
        + sheet;
  }

  private String counted(Remark.Kind kind) {
    return String.valueOf(count(kind));
  }

  /**
   * A row and what came of it.
   *
   * @param written its reading as written
   * @param value the reading in the row's unit, where it is a number
   */
  public record RowResult(
      TestRow row, Optional<String> written, OptionalDouble value, State state) {}

  /** What came of a row. */
  public enum State {
    /** As expected. */
    MET("met"),
    /** Not as expected. */
    NOT_MET("not met"),
    /** Nothing, or not enough to tell. */
    OPEN("open");

    private final String word;

    State(String word) {
      this.word = word;
    }

    /** As printed. */
    public String word() {
      return word;
    }
  }
}
