package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.checklist.Checklist.FindingEntry;
import org.coilwright.checklist.Checklist.Instrument;
import org.coilwright.checklist.Checklist.OpenPoint;
import org.coilwright.checklist.Checklist.Signer;
import org.coilwright.checklist.Checklist.WireRow;
import org.coilwright.checklist.Judgement.RowResult;
import org.coilwright.checklist.Judgement.State;
import org.coilwright.checklist.Remark.Kind;

/** Judges a filled-in sheet against the checklist it was printed from. */
public final class Judge {
  private final Checklist checklist;
  private final Texts texts;
  private final FilledIn filledIn;
  private final List<Remark> remarks = new ArrayList<>();
  private final List<RowResult> rows = new ArrayList<>();

  private Judge(Checklist checklist, FilledIn filledIn) {
    this.checklist = checklist;
    this.texts = checklist.texts();
    this.filledIn = filledIn;
  }

  /** Judges a sheet that looks as it was printed. */
  public static Judgement of(Checklist checklist, FilledIn filledIn, Diagnosis diagnosis) {
    return of(checklist, filledIn, diagnosis, List.of());
  }

  /**
   * Judges. Pure: nothing is guessed, nothing is put right.
   *
   * @param oddities where the file no longer looks like what was printed
   */
  public static Judgement of(
      Checklist checklist, FilledIn filledIn, Diagnosis diagnosis, List<Oddity> oddities) {
    Judge judge = new Judge(checklist, filledIn);
    judge.odd(oddities);
    judge.disputed();
    judge.front();
    judge.steps(diagnosis);
    new OrderJudge(checklist, filledIn).judge(judge.remarks::add);
    judge.signOff();
    return new Judgement(judge.rows, judge.remarks);
  }

  private void odd(List<Oddity> oddities) {
    Map<String, Blank> blanks =
        Blanks.all(checklist).stream().collect(Collectors.toMap(Blank::name, blank -> blank));
    for (Oddity oddity : oddities) {
      Optional<Blank> blank = Optional.ofNullable(blanks.get(oddity.name()));
      String where = blank.map(b -> b.tip(texts)).orElseGet(() -> texts.of("judge.file"));
      remark(Kind.UNCLEAR, where, oddity.name(), oddity.sentence(texts));
    }
  }

  private void disputed() {
    for (Blank blank : Blanks.all(checklist)) {
      if (filledIn.disputed().contains(blank.name())) {
        remark(Kind.UNCLEAR, blank.tip(texts), blank.name(), texts.of("judge.disputed"));
      }
    }
  }

  private void front() {
    for (Instrument instrument : checklist.instruments()) {
      List<Blank> blanks = Blanks.instrument(instrument);
      need(blanks, instrument.text(), instrument.name(), "make", "number", "calibrated");
    }
    for (FindingEntry finding : checklist.findings()) {
      finding(finding);
    }
    for (Checklist.AcceptedEntry accepted : checklist.accepted()) {
      if (filledIn.text(Blanks.initials(accepted)).isEmpty()) {
        remark(
            Kind.MISSING,
            texts.of("judge.accepted", accepted.at()),
            accepted.name(),
            texts.of("judge.accepted-initials"));
      }
    }
    for (OpenPoint point : checklist.openPoints()) {
      need(
          List.of(Blanks.found(point), Blanks.initials(point)),
          texts.of("judge.point", point.number()),
          point.name(),
          "found",
          "initials");
    }
    List<WireRow> open =
        checklist.wires().stream().filter(w -> !filledIn.isTicked(Blanks.wired(w))).toList();
    for (WireRow wire : open) {
      remark(
          Kind.MISSING,
          texts.of("judge.wire", wire.number()),
          wire.name(),
          texts.of("judge.not-wired", wire.from(), wire.to()));
    }
  }

  private void finding(FindingEntry finding) {
    String where = texts.of("judge.finding", finding.weight(), finding.rule(), finding.at());
    boolean acceptable =
        checklist.accepted().stream()
            .anyMatch(
                a -> a.rule().equals(finding.rule()) && a.at().equals(finding.at()) && !a.counts());
    // A tick does not mend the netlist: every row and band of the sheet is still that of the fault.
    if (finding.weight().equals("STOP")) {
      remark(Kind.STOP, where, finding.name(), texts.of("judge.stop", finding.headline()));
    } else if (finding.weight().equals("FIX") && !acceptable) {
      remark(Kind.FIX, where, finding.name(), texts.of("judge.fix", finding.headline()));
    }
  }

  /** What a reading outside probably means depends on the rows that came out as expected. */
  private Set<String> met() {
    return checklist.steps().stream()
        .filter(Section.class::isInstance)
        .flatMap(step -> ((Section) step).lines().stream())
        .flatMap(line -> line.rows().stream().map(row -> judged(line, row)))
        .filter(result -> result.state() == State.MET)
        .map(result -> result.row().name())
        .collect(Collectors.toUnmodifiableSet());
  }

  private RowResult judged(TestLine line, TestRow row) {
    return new RowJudge(texts, filledIn, Diagnosis.none(), Set.of(), line, row).judge();
  }

  private void steps(Diagnosis diagnosis) {
    Set<String> met = met();
    for (Step step : checklist.steps()) {
      if (step instanceof Section section) {
        if (Blanks.takingTemperature(checklist.steps()).equals(Optional.of(section))) {
          new DayTemperature(filledIn, texts).remark().ifPresent(remarks::add);
        }
        for (TestLine line : section.lines()) {
          for (TestRow row : line.rows()) {
            RowJudge judge = new RowJudge(texts, filledIn, diagnosis, met, line, row);
            rows.add(judge.judge());
            remarks.addAll(judge.remarks());
          }
        }
        if (section.confirm() && !filledIn.isTicked(Blanks.confirmed(section))) {
          remark(
              Kind.MISSING,
              texts.of("judge.section", section.number()),
              section.name(),
              texts.of("judge.not-confirmed"));
        }
        need(
            List.of(Blanks.time(section), Blanks.initials(section)),
            texts.of("judge.section", section.number()),
            section.name(),
            "time",
            "initials");
      } else if (step instanceof Hold hold) {
        hold(hold);
      }
    }
  }

  private void hold(Hold hold) {
    String where = texts.of("judge.hold", hold.title());
    for (int i = 0; i < hold.conditions().size(); i++) {
      String condition = hold.conditions().get(i);
      if (!filledIn.isTicked(Blanks.condition(hold, i + 1, condition))) {
        remark(Kind.MISSING, where, hold.name(), texts.of("judge.condition", condition));
      }
    }
    List<Blank> blanks = Blanks.hold(hold);
    need(List.of(blanks.get(0), blanks.get(2)), where, hold.name(), "name", "time");
  }

  private void signOff() {
    for (Signer signer : checklist.signers()) {
      List<Blank> blanks = Blanks.signer(signer);
      need(blanks.subList(0, 3), signer.text(), signer.name(), "name", "licence", "date");
    }
  }

  /** One remark for all that is not filled in of what belongs together. */
  private void need(List<Blank> blanks, String where, String name, String... parts) {
    List<String> missing = new ArrayList<>();
    for (int i = 0; i < blanks.size(); i++) {
      if (filledIn.isEmpty(blanks.get(i))) {
        missing.add(texts.of("judge.part." + parts[i]));
      }
    }
    if (!missing.isEmpty()) {
      remark(Kind.MISSING, where, name, texts.of("judge.need", String.join(", ", missing)));
    }
  }

  private void remark(Kind kind, String where, String name, String sentence) {
    remarks.add(Remark.of(kind, where, name, sentence));
  }
}
