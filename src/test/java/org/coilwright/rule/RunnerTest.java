// Over 250 lines: a test for each way in which findings silence or accompany one another.
package org.coilwright.rule;

import static org.coilwright.cli.Samples.accepted;
import static org.coilwright.cli.Samples.facts;
import static org.coilwright.cli.Samples.netlist;
import static org.coilwright.cli.Samples.satisfied;
import static org.coilwright.cli.Samples.undecided;
import static org.coilwright.cli.Samples.violated;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.coilwright.cli.Samples;
import org.coilwright.netlist.Netlist;
import org.coilwright.rule.Outcome.Violated;
import org.coilwright.table.Standing;
import org.junit.jupiter.api.Test;

class RunnerTest {
  private static final RuleFacts HALF = facts("coil.half-pulled", Weight.STOP, List.of());
  private static final RuleFacts LOW =
      facts("coil.too-low", Weight.FIX, List.of("coil.half-pulled", "wiring.loose-end"));
  private static final RuleFacts LOOSE =
      facts("wiring.loose-end", Weight.FIX, List.of("coil.too-low")).meansWiredOtherwise();
  private static final RuleFacts STUCK = facts("coil.too-high", Weight.STOP, List.of());
  private static final RuleFacts UNUSED = facts("wiring.unused-part", Weight.NOTE, List.of());

  private static Report report(List<Outcome> outcomes, Netlist.Accepted... accepted) {
    return new Runner(List.of(), Samples.NOT_CHECKED, Samples.ACCEPTED_NOTHING)
        .assemble(netlist(accepted), outcomes);
  }

  private static List<String> ids(List<Violated> findings) {
    return findings.stream().map(f -> f.rule().id() + "@" + f.at().get(0)).toList();
  }

  @Test
  void findings_come_heaviest_first_then_in_file_order() {
    Report report =
        report(
            List.of(
                violated(UNUSED, 1, "X1"),
                violated(LOW, 5, "K3"),
                violated(LOW, 3, "K2"),
                violated(HALF, 4, "K1")));
    assertEquals(
        List.of(
            "coil.half-pulled@K1", "coil.too-low@K2", "coil.too-low@K3", "wiring.unused-part@X1"),
        ids(report.findings()));
    assertEquals(Verdict.STOP, report.verdict());
  }

  @Test
  void checks_that_wait_for_the_same_key_make_one_note_and_stay_undecided() {
    Report report =
        report(
            List.of(
                undecided(LOW, 4, "coil.range of K1", "K1"),
                undecided(HALF, 4, "coil.range of K1", "K1"),
                undecided(LOW, 5, "length of W1", "K2")));
    assertEquals(3, report.undecided().size());
    assertEquals(List.of("record.not-checked@K1", "record.not-checked@K2"), ids(report.findings()));
    Violated note = report.findings().get(0);
    assertTrue(note.headline().contains("coil.range of K1"), note.headline());
    assertTrue(note.detail().contains("coil.too-low, coil.half-pulled"), note.detail());
    assertEquals(Verdict.NOTE, report.verdict());
  }

  @Test
  void a_root_cause_silences_its_consequence_at_the_same_part_only() {
    Violated cause = violated(HALF, 4, "K1.A1");
    Violated same = violated(LOW, 4, "K1");
    Violated other = violated(LOW, 5, "K2");
    Report report = report(List.of(same, other, cause));
    assertEquals(List.of(cause, other), report.findings());
    assertEquals(Map.of(cause, List.of(same)), report.silenced());
  }

  @Test
  void a_root_cause_at_one_pin_does_not_silence_a_finding_at_another_pin() {
    Violated cause = violated(HALF, 4, "K1.A1");
    Violated samePin = violated(LOW, 4, "K1.A1");
    Violated otherPin = violated(LOW, 5, "K1.A2");
    Report report = report(List.of(samePin, otherPin, cause));
    assertEquals(List.of(cause, otherPin), report.findings());
    assertEquals(Map.of(cause, List.of(samePin)), report.silenced());
  }

  @Test
  void two_rules_that_name_each_other_still_leave_one_finding() {
    Report report = report(List.of(violated(LOW, 4, "K1"), violated(LOOSE, 5, "K1")));
    assertEquals(1, report.findings().size());
    assertEquals(1, report.silenced().getOrDefault(report.findings().get(0), List.of()).size());
  }

  @Test
  void a_chain_of_causes_ends_under_the_first_cause() {
    Violated half = violated(HALF, 3, "K1");
    RuleFacts after = facts("coil.too-high", Weight.FIX, List.of("coil.too-low"));
    Violated low = violated(LOW, 4, "K1");
    Violated late = violated(after, 5, "K1");
    Report report = report(List.of(late, low, half));
    assertEquals(List.of(half), report.findings());
    assertEquals(List.of(low, late), report.silenced().get(half));
  }

  @Test
  void a_lighter_finding_never_silences_a_heavier_one() {
    RuleFacts heavy = facts("coil.reversed", Weight.STOP, List.of("wiring.unused-part"));
    Report report = report(List.of(violated(UNUSED, 3, "K1"), violated(heavy, 4, "K1")));
    assertEquals(2, report.findings().size());
    assertEquals(Verdict.STOP, report.verdict());
  }

  @Test
  void a_lighter_root_that_carries_a_heavier_finding_weighs_as_much() {
    RuleFacts heavy =
        facts("wiring.intent-differs", Weight.STOP, List.of()).carriedBy("wiring.loose-end");
    Violated off = violated(heavy, 3, "E1", "K1", "K1.A2");
    Report report = report(List.of(off, violated(LOOSE, 5, "K1.A2"), violated(LOOSE, 9, "K1")));
    Violated shown = report.findings().get(0);
    assertEquals("wiring.loose-end", shown.rule().id());
    assertEquals(List.of("K1.A2"), shown.at());
    assertEquals(Weight.STOP, shown.weight());
    assertEquals(List.of(off), report.silenced().get(shown));
    assertEquals(Weight.FIX, report.findings().get(1).weight());
    assertEquals(Verdict.STOP, report.verdict());
  }

  @Test
  void a_finding_is_not_carried_by_one_about_another_pin_or_part() {
    RuleFacts heavy =
        facts("wiring.intent-differs", Weight.STOP, List.of()).carriedBy("wiring.loose-end");
    Report report = report(List.of(violated(heavy, 3, "E1", "K1.A2"), violated(LOOSE, 5, "K1.A1")));
    assertEquals(2, report.findings().size());
  }

  @Test
  void an_accepted_finding_does_not_hide_its_consequence() {
    Report report =
        report(
            List.of(violated(LOOSE, 3, "K1"), violated(LOW, 4, "K1")),
            accepted("wiring.loose-end", "K1"));
    assertTrue(ids(report.findings()).contains("coil.too-low@K1"));
    assertEquals(Verdict.FIX, report.verdict());
  }

  @Test
  void accepted_by_designation_or_by_pin() {
    Violated finding = violated(LOW, 4, "K1.A1");
    for (String at : List.of("K1", "K1.A1")) {
      Report report = report(List.of(finding), accepted("coil.too-low", at));
      assertTrue(report.accepted().containsKey(finding), at);
      assertEquals(List.of(finding), report.findings());
      assertEquals(Verdict.CLEAR, report.verdict());
    }
  }

  @Test
  void a_pin_of_another_part_or_a_wire_that_a_finding_names_is_a_place_to_accept_it_at() {
    Violated finding = violated(LOW, 4, "K2", "K1.A1", "W1");
    Report report = report(List.of(finding), accepted("coil.too-low", "K1.A1"));
    assertTrue(report.accepted().containsKey(finding));
  }

  @Test
  void an_entry_whose_rule_and_place_nobody_knows_is_told_so() {
    Violated note = report(List.of(), accepted("coil.to-low", "K9")).findings().get(0);
    assertEquals("There is no rule coil.to-low. Nothing here is called K9.", note.numbers());
  }

  @Test
  void an_accepted_stop_still_counts() {
    Report report = report(List.of(violated(HALF, 4, "K1")), accepted("coil.half-pulled", "K1"));
    assertEquals(Verdict.STOP, report.verdict());
  }

  @Test
  void accepting_one_part_does_not_cover_a_finding_that_only_touches_it() {
    Violated finding = violated(LOW, 4, "K2", "K1");
    Report report = report(List.of(finding), accepted("coil.too-low", "K1"));
    assertFalse(report.accepted().containsKey(finding));
  }

  @Test
  void an_entry_that_matches_nothing_is_noted_with_where_the_rule_was_raised() {
    Report report = report(List.of(violated(LOW, 4, "K1")), accepted("coil.too-low", "K9"));
    Violated note = report.findings().get(1);
    assertEquals("record.accepted-nothing", note.rule().id());
    assertTrue(note.numbers().contains("only at K1"), note.numbers());
  }

  @Test
  void what_was_satisfied_is_kept() {
    Report report = report(List.of(satisfied(LOW, Standing.PUBLISHED, "K1")));
    assertEquals(1, report.satisfied().size());
    assertEquals(Verdict.CLEAR, report.verdict());
  }

  @Test
  void a_load_that_both_only_hang_on_silences_nothing() {
    Violated cause = violated(HALF, 4, "K1", "E1");
    Violated other = violated(LOW, 5, "K2", "E1");
    assertEquals(List.of(cause, other), report(List.of(cause, other)).findings());
  }

  @Test
  void a_load_that_both_are_about_is_one_device() {
    Violated cause = violated(HALF, 4, "E1.N", "K1");
    Violated same = violated(LOW, 5, "E1", "K2");
    Report report = report(List.of(cause, same));
    assertEquals(Map.of(cause, List.of(same)), report.silenced());
  }

  @Test
  void a_run_silences_nothing_but_a_wire_in_it_does() {
    Violated cause = violated(HALF, 4, "W1", "wire 1", "wire 2");
    Violated otherWire = violated(LOW, 5, "W1", "wire 3");
    Violated sameWire = violated(LOW, 5, "W1", "wire 2");
    Report report = report(List.of(cause, otherWire, sameWire));
    assertEquals(List.of(cause, otherWire), report.findings());
    assertEquals(Map.of(cause, List.of(sameWire)), report.silenced());
  }

  @Test
  void of_findings_that_name_one_part_seven_are_shown_beside_others_and_the_rest_told_along() {
    List<Outcome> outcomes = new ArrayList<>();
    for (int i = 1; i <= 9; i++) {
      outcomes.add(violated(LOW, i, "K" + i, "E1"));
    }
    outcomes.add(violated(STUCK, 20, "E1"));
    outcomes.add(violated(LOW, 30, "K40"));
    outcomes.add(violated(UNUSED, 31, "E1"));
    Report report = report(outcomes);
    Violated first = report.findings().get(0);
    assertEquals("coil.too-high@E1", ids(List.of(first)).get(0));
    assertEquals(
        List.of("coil.too-low@K7", "coil.too-low@K8", "coil.too-low@K9"),
        ids(report.beside().getOrDefault(first, List.of())));
    assertEquals(9, report.findings().size());
    assertTrue(ids(report.findings()).contains("coil.too-low@K40"));
    assertTrue(ids(report.findings()).contains("wiring.unused-part@E1"));
  }

  @Test
  void findings_that_all_name_one_load_hang_together_whatever_each_is_about() {
    List<Outcome> outcomes = new ArrayList<>();
    for (int i = 1; i <= 11; i++) {
      outcomes.add(violated(LOW, i, "W" + i, "E1"));
    }
    Report report = report(outcomes);
    assertEquals(8, report.findings().size());
    assertEquals(3, report.beside().values().stream().mapToInt(List::size).sum());
  }

  @Test
  void beside_a_load_that_does_not_do_what_is_meant_all_hangs_together() {
    RuleFacts differs = facts("wiring.intent-differs", Weight.STOP, List.of());
    List<Outcome> outcomes = new ArrayList<>(List.of(violated(differs, 1, "E1")));
    for (int i = 2; i <= 10; i++) {
      outcomes.add(violated(LOW, i, "K" + i));
    }
    assertEquals(8, report(outcomes).findings().size());
  }

  @Test
  void what_was_told_along_with_a_finding_stays_told_when_that_is_told_along_itself() {
    List<Outcome> outcomes = new ArrayList<>();
    for (int i = 1; i <= 8; i++) {
      outcomes.add(violated(STUCK, i, "K1", "K20"));
    }
    outcomes.add(violated(STUCK, 9, "K1", "K20"));
    outcomes.add(violated(STUCK, 10, "K20"));
    Report report = report(outcomes);
    assertEquals(8, report.findings().size());
    assertEquals(2, report.beside().values().stream().mapToInt(List::size).sum());
  }

  @Test
  void what_hangs_only_on_the_mains_does_not_hang_together() {
    List<Outcome> outcomes = new ArrayList<>();
    for (int i = 1; i <= 9; i++) {
      outcomes.add(violated(LOW, i, "K" + i, "G0"));
    }
    assertEquals(9, report(outcomes).findings().size());
  }

  @Test
  void an_accepted_finding_is_neither_counted_nor_told_along() {
    List<Outcome> outcomes = new ArrayList<>();
    for (int i = 1; i <= 9; i++) {
      outcomes.add(violated(LOW, i, "K" + i, "X1"));
    }
    Report report = report(outcomes, accepted("coil.too-low", "K9"));
    assertEquals(9, report.findings().size());
    assertEquals(Map.of(), report.beside());
  }

  @Test
  void no_subject_is_both_violated_and_satisfied_by_one_rule() {
    Report report =
        report(
            List.of(
                satisfied(LOW, Standing.PUBLISHED, "K1", "E1"),
                satisfied(LOW, Standing.PUBLISHED, "K2"),
                satisfied(HALF, Standing.PUBLISHED, "K1"),
                violated(LOW, 4, "K1", "E2")));
    assertEquals(
        List.of("coil.too-low@K2", "coil.half-pulled@K1"),
        report.satisfied().stream().map(s -> s.rule().id() + "@" + s.at().get(0)).toList());
  }

  @Test
  void at_is_what_one_would_accept_and_the_path_is_all_of_it() {
    Violated finding = violated(LOW, 4, "K1", "W1", "K1.A1", "K2.A1", "wire 3");
    assertEquals(List.of("K1", "K1.A1"), finding.at());
    assertEquals(List.of("K1", "W1", "K1.A1", "K2.A1", "wire 3"), finding.path());
  }

  @Test
  void of_one_weight_what_says_that_the_wiring_is_another_leads() {
    RuleFacts missing = facts("poles.line-missing", Weight.STOP, List.of()).meansWiredOtherwise();
    Report report = report(List.of(violated(HALF, 3, "K1"), violated(missing, 9, "E1.2")));
    assertEquals(List.of("poles.line-missing@E1.2", "coil.half-pulled@K1"), ids(report.findings()));
  }

  @Test
  void beside_miswiring_all_that_hangs_together_is_told_along_but_no_miswiring() {
    List<Outcome> outcomes = new ArrayList<>();
    for (int i = 1; i <= 9; i++) {
      outcomes.add(violated(STUCK, i, "K" + i, "K" + (i + 1)));
    }
    outcomes.add(violated(LOOSE, 20, "K10.A1"));
    Report report = report(outcomes);
    assertEquals(8, report.findings().size());
    assertTrue(ids(report.findings()).contains("wiring.loose-end@K10.A1"));
    assertEquals(2, report.beside().values().stream().mapToInt(List::size).sum());
  }
}
