package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.coilwright.checklist.Remark.Kind;

/** Judges the order of the work: nobody goes past a hold point that is not signed. */
final class OrderJudge {
  private final Checklist checklist;
  private final Texts texts;
  private final FilledIn filledIn;

  OrderJudge(Checklist checklist, FilledIn filledIn) {
    this.checklist = checklist;
    this.texts = checklist.texts();
    this.filledIn = filledIn;
  }

  void judge(Consumer<Remark> remarks) {
    holds(remarks);
    times(remarks);
  }

  private void holds(Consumer<Remark> remarks) {
    List<Step> steps = checklist.steps();
    for (int i = 0; i < steps.size(); i++) {
      if (steps.get(i) instanceof Hold hold) {
        List<TestLine> before = lines(steps.subList(0, i));
        List<TestLine> after = lines(steps.subList(i + 1, steps.size()));
        if (!isSigned(hold)) {
          List<String> begun =
              after.stream()
                  .filter(line -> RowJudge.isBegun(filledIn, line))
                  .map(line -> line.first().called(texts))
                  .toList();
          if (!begun.isEmpty()) {
            remark(remarks, hold, "judge.hold-unsigned", begun);
          }
        } else {
          List<String> open =
              before.stream()
                  .filter(line -> !isMarked(line))
                  .map(line -> line.first().called(texts))
                  .toList();
          if (!open.isEmpty()) {
            remark(remarks, hold, "judge.hold-open", open);
          }
        }
      }
    }
  }

  /** Either of a name with its date, or a signature. */
  private boolean isSigned(Hold hold) {
    List<Blank> blanks = Blanks.hold(hold);
    return filledIn.text(blanks.get(0)).isPresent() || filledIn.isSigned(blanks.get(1));
  }

  /** Ticked as it should be; what is listed may be written down instead. */
  private boolean isMarked(TestLine line) {
    TestRow first = line.first();
    return filledIn.isTicked(Blanks.pass(first))
        || (first.manner() == Manner.LISTED && filledIn.text(Blanks.reading(first)).isPresent());
  }

  private static List<TestLine> lines(List<Step> steps) {
    List<TestLine> lines = new ArrayList<>();
    for (Step step : steps) {
      if (step instanceof Section section) {
        lines.addAll(section.lines());
      }
    }
    return lines;
  }

  private void remark(Consumer<Remark> remarks, Hold hold, String key, List<String> rows) {
    remarks.accept(
        Remark.of(
            Kind.CONTRADICTION,
            texts.of("judge.hold", hold.title()),
            hold.name(),
            texts.of(key, String.join(", ", RowRanges.of(rows)))));
  }

  private record Dated(String where, String written, Moment moment) {}

  private void times(Consumer<Remark> remarks) {
    Optional<Dated> last = Optional.empty();
    for (Step step : checklist.steps()) {
      Blank blank;
      String where;
      if (step instanceof Section section) {
        blank = Blanks.time(section);
        where = texts.of("judge.section", section.number());
      } else if (step instanceof Hold hold) {
        blank = Blanks.hold(hold).get(2);
        where = texts.of("judge.hold", hold.title());
      } else {
        continue;
      }
      Optional<String> written = filledIn.text(blank);
      if (written.isEmpty()) {
        continue;
      }
      Optional<Moment> moment = Moment.of(written.get());
      if (moment.isEmpty()) {
        remarks.accept(
            Remark.of(
                Kind.UNCLEAR, where, blank.name(), texts.of("judge.time-unclear", written.get())));
        continue;
      }
      if (last.isPresent() && moment.get().isBefore(last.get().moment())) {
        remarks.accept(
            Remark.of(
                Kind.CONTRADICTION,
                where,
                blank.name(),
                texts.of(
                    "judge.time-backwards",
                    written.get(),
                    last.get().where(),
                    last.get().written())));
      }
      last = Optional.of(new Dated(where, written.get(), moment.get()));
    }
  }
}
