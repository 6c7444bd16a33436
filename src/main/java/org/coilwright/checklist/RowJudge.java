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
  private final TestLine line;
  private final TestRow row;
  private final List<Remark> remarks = new ArrayList<>();

  /**
   * For one row.
   *
   * @param met names of the rows that came out as expected, as far as they are known
   * @param line the line it stands in
   */
  RowJudge(
      Texts texts,
      FilledIn filledIn,
      Diagnosis diagnosis,
      Set<String> met,
      TestLine line,
      TestRow row) {
    this.texts = texts;
    this.filledIn = filledIn;
    this.diagnosis = diagnosis;
    this.met = Set.copyOf(met);
    this.line = line;
    this.row = row;
  }

  List<Remark> remarks() {
    return remarks;
  }

  /** True if somebody wrote or ticked anything in the line. */
  static boolean isBegun(FilledIn filledIn, TestLine line) {
    return Blanks.line(line).stream().anyMatch(blank -> !filledIn.isEmpty(blank));
  }

  RowResult judge() {
    if (!isBegun(filledIn, line)) {
      boolean act = row.manner().isDone();
      remark(
          Kind.MISSING,
          act ? texts.of("judge.not-done-else", row.otherwise()) : texts.of("judge.not-done"));
      return new RowResult(row, Optional.empty(), OptionalDouble.empty(), State.OPEN);
    }
    Optional<String> written = written(row);
    Optional<Compared> compared = written.map(text -> Compared.of(text, expected(), texts));
    State state =
        switch (row.manner()) {
          case LISTED -> listed(written.orElse(""), compared);
          case DONE, SWITCHED -> done();
          case SEEN -> line.ticksAlone(row) ? ticked() : boxed("", Optional.empty());
          case COMPARED -> boxed("", Optional.empty());
          case READ -> read(written, compared);
        };
    return new RowResult(
        row, written, compared.map(Compared::value).orElse(OptionalDouble.empty()), state);
  }

  private Optional<String> written(TestRow of) {
    return Blanks.isRead(of) ? filledIn.text(Blanks.reading(of)) : Optional.empty();
  }

  private State read(Optional<String> written, Optional<Compared> compared) {
    if (written.isEmpty()) {
      remark(Kind.MISSING, texts.of("judge.no-reading"));
    }
    return boxed(written.orElse(""), compared);
  }

  /** Ticked as the one listed, or else written down. */
  private State listed(String written, Optional<Compared> compared) {
    boolean pass = filledIn.isTicked(Blanks.pass(row));
    Optional<Place> place = compared.map(Compared::place);
    if (place.equals(Optional.of(Place.UNCLEAR))) {
      remark(Kind.UNCLEAR, texts.of("judge.unclear", written, compared.get().why()));
      return State.OPEN;
    } else if (place.equals(Optional.of(Place.OUTSIDE))) {
      outside(written, compared.get());
      if (pass) {
        remark(Kind.CONTRADICTION, texts.of("judge.outside-pass", written, expectedText()));
      }
      return State.NOT_MET;
    }
    return State.MET;
  }

  private State done() {
    if (!filledIn.isTicked(Blanks.pass(row))) {
      remark(Kind.MISSING, texts.of("judge.not-done-else", row.otherwise()));
    }
    if (row.manner() == Manner.SWITCHED && filledIn.text(Blanks.initials(row)).isEmpty()) {
      remark(Kind.MISSING, texts.of("judge.no-initials"));
    }
    return filledIn.isTicked(Blanks.pass(row)) ? State.MET : State.OPEN;
  }

  /** Told by a tick of its own; the box for what is not met is that of the line. */
  private State ticked() {
    if (filledIn.isTicked(Blanks.pass(row))) {
      return State.MET;
    } else if (filledIn.isTicked(Blanks.fail(line.first()))) {
      remark(Kind.OUTSIDE, texts.of("judge.fail", row.otherwise()));
      return State.NOT_MET;
    }
    remark(Kind.MISSING, texts.of("judge.not-ticked"));
    return State.OPEN;
  }

  /** By the two boxes of its line, and by its reading where it has one. */
  private State boxed(String written, Optional<Compared> compared) {
    boolean pass = filledIn.isTicked(Blanks.pass(line.first()));
    boolean fail = filledIn.isTicked(Blanks.fail(line.first()));
    if (row.equals(line.first())) {
      if (pass && fail) {
        remark(Kind.CONTRADICTION, texts.of("judge.both"));
      } else if (!pass && !fail) {
        remark(Kind.MISSING, texts.of("judge.neither"));
      }
    }
    Optional<Place> place = compared.map(Compared::place);
    if (place.equals(Optional.of(Place.UNCLEAR))) {
      remark(Kind.UNCLEAR, texts.of("judge.unclear", written, compared.get().why()));
      if (fail) {
        remark(Kind.OUTSIDE, texts.of("judge.fail", row.otherwise()));
      }
      return fail ? State.NOT_MET : State.OPEN;
    } else if (place.equals(Optional.of(Place.OUTSIDE))) {
      outside(written, compared.get());
      if (pass && !fail) {
        remark(Kind.CONTRADICTION, texts.of("judge.outside-pass", written, expectedText()));
      }
      return State.NOT_MET;
    } else if (fail && !pass && !(place.isPresent() && failsElsewhere())) {
      remark(Kind.OUTSIDE, texts.of("judge.fail", row.otherwise()));
      if (place.equals(Optional.of(Place.WITHIN))) {
        remark(Kind.CONTRADICTION, texts.of("judge.within-fail", written, expectedText()));
      }
      return State.NOT_MET;
    }
    boolean decided = (pass && !fail) || (fail && !pass);
    return decided && (place.isPresent() || !Blanks.isRead(row)) ? State.MET : State.OPEN;
  }

  /** True if another row of the line explains why the box for what is not met is ticked. */
  private boolean failsElsewhere() {
    return line.rows().stream()
        .filter(other -> !other.equals(row))
        .anyMatch(
            other ->
                line.ticksAlone(other) ? !filledIn.isTicked(Blanks.pass(other)) : !isWithin(other));
  }

  private boolean isWithin(TestRow other) {
    return written(other)
        .map(text -> Compared.of(text, atTemperature(other), texts).place() == Place.WITHIN)
        .orElse(false);
  }

  private void outside(String written, Compared compared) {
    remarks.add(
        new Remark(
            Kind.OUTSIDE,
            where(),
            row.name(),
            texts.of("judge.outside", written, expectedText(), row.otherwise()),
            means(compared)));
  }

  /** At the temperature that somebody wrote down, if it narrows the band. */
  private Expected expected() {
    return atTemperature(row);
  }

  private Expected atTemperature(TestRow of) {
    return of.expected() instanceof Expected.Band band && celsius().isPresent()
        ? band.at(celsius().getAsDouble())
        : of.expected();
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
    return texts.of(row.wire().isEmpty() ? "judge.row" : "judge.wire", row.number());
  }
}
