// Over 250 lines: one thing that can come back after the other.
package org.coilwright.checklist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.checklist.Judgement.State;
import org.coilwright.checklist.Remark.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class JudgeTest {
  private static final Checklist SHEET = Checked.example("guest-house-cylinder");
  private static final TestRow READ =
      SHEET.rows().stream()
          .filter(r -> r.manner() == Manner.READ && r.expected() instanceof Expected.Band)
          .filter(r -> ((Expected.Band) r.expected()).shownMin() > 1)
          .filter(r -> ((Expected.Band) r.expected()).shownMax().isPresent())
          .findFirst()
          .orElseThrow();
  private static final TestRow SEEN =
      SHEET.rows().stream().filter(r -> r.manner() == Manner.SEEN).findFirst().orElseThrow();
  private static final Hold FIRST_HOLD =
      (Hold) SHEET.steps().stream().filter(Hold.class::isInstance).findFirst().orElseThrow();

  private static Judgement judged(Fillings fillings) {
    return Judge.of(SHEET, fillings.filledIn(), Diagnosis.none());
  }

  private static Fillings complete() {
    return Fillings.complete(SHEET);
  }

  private static Remark only(Fillings fillings) {
    List<Remark> remarks = judged(fillings).remarks();
    assertEquals(1, remarks.size(), remarks::toString);
    return remarks.get(0);
  }

  @ParameterizedTest
  @ValueSource(strings = {"wash-room-tub", "guest-house-cylinder", "cabin-water-heater"})
  void a_sheet_filled_in_as_it_should_be_is_complete(String example) {
    Checklist sheet = Checked.example(example);
    Judgement judgement = Judge.of(sheet, Fillings.complete(sheet).filledIn(), Diagnosis.none());
    assertEquals(List.of(), judgement.remarks());
    assertTrue(judgement.isComplete());
    assertEquals(sheet.rows().size(), judgement.count(State.MET));
    assertTrue(judgement.sentence(sheet.texts()).startsWith("Complete"));
  }

  /** A tick under "mended" mends nothing: rows and bands are still those of the fault. */
  @Test
  void a_stop_or_fix_in_the_netlist_keeps_the_sheet_from_complete_whatever_is_ticked() {
    Checklist sheet = Checked.example("attic-mistakes");
    Judgement judgement = Judge.of(sheet, Fillings.complete(sheet).filledIn(), Diagnosis.none());
    assertFalse(judgement.isComplete());
    assertTrue(judgement.isStopped());
    assertEquals(
        sheet.findings().stream().filter(f -> f.weight().equals("STOP")).count(),
        judgement.count(Kind.STOP));
    assertTrue(judgement.count(Kind.FIX) > 0);
    assertEquals(
        judgement.remarks().size(), judgement.count(Kind.STOP) + judgement.count(Kind.FIX));
    assertTrue(
        judgement.sentence(sheet.texts()).startsWith("NOT TO BE ENERGISED: "),
        judgement.sentence(sheet.texts()));
  }

  @Test
  void a_fix_alone_keeps_the_sheet_from_complete_until_it_is_accepted() throws IOException {
    String netlist =
        Files.readString(Path.of("wiring-examples/wash-room-tub.yaml"))
            .replace("W1: {length: 14 m", "W1: {length: 4000 m");
    Checklist fix = Checked.text(netlist);
    Judgement judgement = Judge.of(fix, Fillings.complete(fix).filledIn(), Diagnosis.none());
    assertEquals(List.of(Kind.FIX), judgement.remarks().stream().map(Remark::kind).toList());
    assertFalse(judgement.isStopped());
    Checklist accepted =
        Checked.text(
            netlist + "\naccepted: [{rule: coil.too-low, at: K1, because: x, by: N. N.}]\n");
    judgement = Judge.of(accepted, Fillings.complete(accepted).filledIn(), Diagnosis.none());
    assertEquals(List.of(), judgement.remarks());
  }

  @Test
  void an_empty_sheet_lacks_every_row_wire_hold_and_signer() {
    Judgement judgement = Judge.of(SHEET, FilledIn.NOTHING, Diagnosis.none());
    assertEquals(SHEET.rows().size(), judgement.count(State.OPEN));
    Set<String> names = judgement.remarks().stream().map(Remark::name).collect(Collectors.toSet());
    SHEET.rows().forEach(row -> assertTrue(names.contains(row.name()), row::name));
    SHEET.wires().forEach(wire -> assertTrue(names.contains(wire.name()), wire::name));
    SHEET.signers().forEach(signer -> assertTrue(names.contains(signer.name()), signer::name));
    assertTrue(names.contains(FIRST_HOLD.name()));
    assertTrue(judgement.remarks().stream().allMatch(r -> r.kind() == Kind.MISSING));
  }

  /** Whatever single place is emptied, it is missed. */
  @Test
  void no_place_can_be_left_empty_unnoticed() {
    Set<String> free = Set.of("sign-off.remarks");
    for (Blank blank : Blanks.all(SHEET)) {
      boolean optional =
          free.contains(blank.name())
              || blank.kind() == Blank.Kind.SIGNATURE
              || blank.name().endsWith(".fail")
              // only what was mended, and only what is not the part listed, is written there
              || blank.name().startsWith("again-")
              || blank.name().endsWith(".marking.reading");
      Fillings spoilt = complete().noText(blank).noTick(blank);
      assertEquals(optional, judged(spoilt).isComplete(), blank::name);
    }
  }

  @Test
  void pass_beside_a_reading_outside_is_told_as_both_and_with_its_meaning() {
    Fillings fillings = complete().text(Blanks.reading(READ), "1 Ω");
    List<Remark> remarks =
        Judge.of(
                SHEET,
                fillings.filledIn(),
                (row, value, met) ->
                    row.equals(READ.name()) && value == 1 ? List.of("Two wires touch.") : List.of())
            .remarks();
    List<Remark> of = remarks.stream().filter(r -> r.name().equals(READ.name())).toList();
    assertEquals(List.of(Kind.OUTSIDE, Kind.CONTRADICTION), of.stream().map(Remark::kind).toList());
    assertEquals(List.of("Two wires touch."), of.get(0).means());
    String sentence = of.get(0).sentence();
    assertTrue(sentence.endsWith(": " + READ.otherwise()), sentence);
  }

  /** 1250 Ω fits a coil of 1035 to 1265 Ω at 20 °C, and none of 954 to 1165 Ω at 0 °C. */
  @ParameterizedTest
  @CsvSource({
    "0 °C, 1250 Ω, false",
    "0 °C, 960 Ω, true",
    "20, 1250 Ω, true",
    "'20,5 °C', 990 Ω, false",
    "40, 1350 Ω, true"
  })
  void a_coil_is_judged_at_the_temperature_on_the_day(String day, String ohms, boolean within) {
    Fillings fillings =
        complete().text(Blanks.temperature(), day).text(Blanks.reading(coil()), ohms);
    List<Remark> remarks = judged(fillings).remarks();
    assertEquals(within, remarks.isEmpty(), remarks::toString);
    assertTrue(
        within || remarks.get(0).sentence().contains(" at " + (day.startsWith("0") ? "0" : "20.5")),
        remarks::toString);
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "warm", "120 °C", "15 or 20"})
  void without_a_temperature_a_coil_is_judged_by_its_wide_band_and_that_is_said(String day) {
    Fillings fillings =
        complete().text(Blanks.reading(coil()), "1310 Ω").noText(Blanks.temperature());
    if (!day.isEmpty()) {
      fillings.text(Blanks.temperature(), day);
    }
    assertEquals("site.temperature", only(fillings).name());
    assertEquals(day.isEmpty() ? Kind.MISSING : Kind.UNCLEAR, only(fillings).kind());
    fillings.text(Blanks.reading(coil()), "1320 Ω");
    assertTrue(
        judged(fillings).remarks().stream()
            .anyMatch(r -> r.sentence().contains("(temperature not stated)")));
  }

  private static TestRow coil() {
    return SHEET.rows().stream()
        .filter(row -> row.name().equals("K1.coil-resistance"))
        .findFirst()
        .orElseThrow();
  }

  @Test
  void fail_beside_a_reading_outside_is_told_as_outside() {
    Fillings fillings =
        complete()
            .text(Blanks.reading(READ), "1 Ω")
            .noTick(Blanks.pass(READ))
            .tick(Blanks.fail(READ));
    assertTrue(
        judged(fillings).remarks().stream()
            .anyMatch(r -> r.kind() == Kind.OUTSIDE && r.name().equals(READ.name())));
    assertEquals(1, judged(fillings).count(State.NOT_MET));
  }

  @Test
  void fail_beside_a_reading_within_is_a_contradiction() {
    Fillings fillings = complete().noTick(Blanks.pass(READ)).tick(Blanks.fail(READ));
    assertTrue(
        judged(fillings).remarks().stream()
            .anyMatch(r -> r.kind() == Kind.CONTRADICTION && r.name().equals(READ.name())));
  }

  @Test
  void both_boxes_ticked_is_a_contradiction() {
    Fillings fillings = complete().tick(Blanks.fail(SEEN));
    assertTrue(
        judged(fillings).remarks().stream()
            .anyMatch(r -> r.kind() == Kind.CONTRADICTION && r.name().equals(SEEN.name())));
  }

  @Test
  void an_ambiguous_reading_is_asked_about_and_not_guessed() {
    Judgement judgement = judged(complete().text(Blanks.reading(READ), "1,234"));
    assertTrue(
        judgement.remarks().stream()
            .anyMatch(r -> r.kind() == Kind.UNCLEAR && r.name().equals(READ.name())));
    assertEquals(1, judgement.count(State.OPEN));
  }

  @Test
  void a_box_that_looks_otherwise_than_the_file_says_is_asked_about() {
    assertEquals(Kind.UNCLEAR, only(complete().disputed(Blanks.pass(SEEN))).kind());
  }

  @Test
  void rows_behind_a_hold_that_nobody_signed_are_a_contradiction() {
    Fillings fillings = complete().noText(Blanks.hold(FIRST_HOLD).get(0));
    List<Remark> remarks = judged(fillings).remarks();
    assertTrue(
        remarks.stream()
            .anyMatch(r -> r.kind() == Kind.CONTRADICTION && r.name().equals(FIRST_HOLD.name())));
  }

  @Test
  void a_hold_signed_before_the_rows_above_it_are_met_is_a_contradiction() {
    TestRow first = SHEET.rows().get(0);
    Fillings fillings = complete().noTick(Blanks.pass(first));
    assertTrue(
        judged(fillings).remarks().stream()
            .anyMatch(
                r ->
                    r.kind() == Kind.CONTRADICTION
                        && r.name().equals(FIRST_HOLD.name())
                        && r.sentence().contains(first.number())));
  }

  @Test
  void a_hold_signed_after_the_work_behind_it_is_a_contradiction() {
    Fillings fillings = complete().text(Blanks.hold(FIRST_HOLD).get(2), "2026-03-06 08:00");
    Remark remark = only(fillings);
    assertEquals(Kind.CONTRADICTION, remark.kind());
    assertTrue(remark.sentence().contains("2026-03-06 08:00"), remark.sentence());
  }

  @Test
  void every_row_not_met_counts_as_outside() {
    for (Fillings fillings :
        List.of(
            complete().text(Blanks.reading(READ), "1 Ω"),
            complete().noTick(Blanks.pass(READ)).tick(Blanks.fail(READ)),
            complete()
                .text(Blanks.reading(READ), "1,234")
                .noTick(Blanks.pass(READ))
                .tick(Blanks.fail(READ)))) {
      assertEquals(1, judged(fillings).count(State.NOT_MET));
      assertEquals(1, judged(fillings).count(Kind.OUTSIDE));
      assertTrue(judged(fillings).sentence(SHEET.texts()).contains(" 1 outside"));
    }
  }

  @Test
  void no_more_guesses_are_told_than_somebody_tries() {
    Remark remark =
        new Remark(Kind.OUTSIDE, "Row 1.1", "a", "b", List.of("A.", "B.", "C.", "D.", "E.", "F."));
    assertEquals(
        List.of("Probably: A.", "or: B.", "or: C.", "or: D.", "and 2 more"),
        remark.guesses(Texts.english()));
  }

  @Test
  void numbers_that_follow_on_are_written_as_a_range() {
    assertEquals(
        List.of("Row 1.9–1.11", "Row 2.1", "Row 2.2", "End of section 2", "Wire 1–3", "Wire x"),
        RowRanges.of(
            List.of(
                "Row 1.9",
                "Row 1.10",
                "Row 1.11",
                "Row 2.1",
                "Row 2.2",
                "End of section 2",
                "Wire 1",
                "Wire 2",
                "Wire 3",
                "Wire x")));
    assertEquals(List.of(), RowRanges.of(List.of()));
  }

  @Test
  void no_judgement_says_that_a_circuit_is_without_danger() {
    for (Texts texts : List.of(Texts.english(), Texts.in("de"))) {
      texts
          .patterns()
          .forEach(
              (key, text) -> {
                if (key.startsWith("judge.") || key.startsWith("record.")) {
                  assertFalse(text.matches("(?i).*\\b(safe|passed|approved|ok|sicher)\\b.*"), text);
                }
              });
    }
  }
}
