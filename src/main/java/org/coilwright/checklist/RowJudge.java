package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.coilwright.checklist.Compared.Place;
import org.coilwright.checklist.Judgement.RowResult;
import org.coilwright.checklist.Judgement.State;
import org.coilwright.checklist.Remark.Kind;

/** Judges one row: its reading against its band, its boxes against its reading. */
final class RowJudge {
  private final Texts texts;
  private final FilledIn filledIn;
  private final Diagnosis diagnosis;
  private final Set<String> met;
  private final TestRow row;
  private final List<Remark> remarks = new ArrayList<>();

  /**
   * For one row.
   *
   * @param met names of the rows that came out as expected, as far as they are known
   */
  RowJudge(Texts texts, FilledIn filledIn, Diagnosis diagnosis, Set<String> met, TestRow row) {
    this.texts = texts;
    this.filledIn = filledIn;
    this.diagnosis = diagnosis;
    this.met = Set.copyOf(met);
    this.row = row;
  }

  List<Remark> remarks() {
    return remarks;
  }

  /** True if somebody wrote or ticked anything in the row. */
  static boolean isBegun(FilledIn filledIn, TestRow row) {
    return filledIn.isTicked(Blanks.pass(row))
        || filledIn.isTicked(Blanks.fail(row))
        || filledIn.text(Blanks.initials(row)).isPresent()
        || (Blanks.isRead(row) && filledIn.text(Blanks.reading(row)).isPresent());
  }

  RowResult judge() {
    if (!isBegun(filledIn, row)) {
      remark(Kind.MISSING, texts.of("judge.not-done"));
      return new RowResult(row, Optional.empty(), OptionalDouble.empty(), State.OPEN);
    }
    Optional<String> written =
        Blanks.isRead(row) ? filledIn.text(Blanks.reading(row)) : Optional.empty();
    Optional<Compared> compared = written.map(text -> Compared.of(text, expected(), texts));
    if (Blanks.isRead(row) && written.isEmpty()) {
      remark(Kind.MISSING, texts.of("judge.no-reading"));
    }
    State state = state(written.orElse(""), compared);
    if (filledIn.text(Blanks.initials(row)).isEmpty()) {
      remark(Kind.MISSING, texts.of("judge.no-initials"));
    }
    if (row.grounds().confirm() && !filledIn.isTicked(Blanks.confirmed(row))) {
      remark(Kind.MISSING, texts.of("judge.not-confirmed"));
    }
    return new RowResult(
        row, written, compared.map(Compared::value).orElse(OptionalDouble.empty()), state);
  }

  private State state(String written, Optional<Compared> compared) {
    boolean pass = filledIn.isTicked(Blanks.pass(row));
    boolean fail = filledIn.isTicked(Blanks.fail(row));
    if (pass && fail) {
      remark(Kind.CONTRADICTION, texts.of("judge.both"));
    } else if (!pass && !fail) {
      remark(Kind.MISSING, texts.of("judge.neither"));
    }
    Optional<Place> place = compared.map(Compared::place);
    String expected = expectedText();
    if (place.equals(Optional.of(Place.UNCLEAR))) {
      remark(Kind.UNCLEAR, texts.of("judge.unclear", written, compared.get().why()));
      if (fail) {
        remark(Kind.OUTSIDE, texts.of("judge.fail", row.otherwise()));
      }
      return fail ? State.NOT_MET : State.OPEN;
    } else if (place.equals(Optional.of(Place.OUTSIDE))) {
      remarks.add(
          new Remark(
              Kind.OUTSIDE,
              where(),
              row.name(),
              texts.of("judge.outside", written, expected, row.otherwise()),
              means(compared.get())));
      if (pass && !fail) {
        remark(Kind.CONTRADICTION, texts.of("judge.outside-pass", written, expected));
      }
      return State.NOT_MET;
    } else if (fail && !pass) {
      remark(Kind.OUTSIDE, texts.of("judge.fail", row.otherwise()));
      if (place.equals(Optional.of(Place.WITHIN))) {
        remark(Kind.CONTRADICTION, texts.of("judge.within-fail", written, expected));
      }
      return State.NOT_MET;
    }
    boolean met = pass && !fail && (place.isPresent() || !Blanks.isRead(row));
    return met ? State.MET : State.OPEN;
  }

  /** At the temperature that somebody wrote down, if it narrows the band. */
  private Expected expected() {
    return row.expected() instanceof Expected.Band band && celsius().isPresent()
        ? band.at(celsius().getAsDouble())
        : row.expected();
  }

  private OptionalDouble celsius() {
    return new DayTemperature(filledIn, texts).celsius();
  }

  private String expectedText() {
    String plain = expected().text(texts);
    return row.expected() instanceof Expected.Band band && band.winding().isPresent()
        ? texts.of("judge.at-temperature", plain, new DayTemperature(filledIn, texts).text())
        : plain;
  }

  private List<String> means(Compared compared) {
    return compared.value().isPresent()
        ? diagnosis.of(row.name(), compared.value().getAsDouble(), met)
        : List.of();
  }

  private void remark(Kind kind, String sentence) {
    remarks.add(Remark.of(kind, where(), row.name(), sentence));
  }

  private String where() {
    return texts.of("judge.row", row.number());
  }
}
