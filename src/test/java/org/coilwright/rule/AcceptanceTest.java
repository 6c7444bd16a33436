package org.coilwright.rule;

import static org.coilwright.cli.Samples.accepted;
import static org.coilwright.cli.Samples.facts;
import static org.coilwright.cli.Samples.netlist;
import static org.coilwright.cli.Samples.undecided;
import static org.coilwright.cli.Samples.violated;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.stream.IntStream;
import org.coilwright.circuit.Bench;
import org.coilwright.cli.Samples;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Wire;
import org.coilwright.rule.Outcome.Undecided;
import org.coilwright.rule.Outcome.Violated;
import org.coilwright.table.Standing;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What an entry under {@code accepted} covers, and the note about what could not be checked. */
class AcceptanceTest {
  private static final RuleFacts LOW = facts("coil.too-low", Weight.FIX, List.of());

  private static final Netlist NETLIST =
      Bench.netlist(
          "{phases: 1, voltage: 230 V, frequency: 50 Hz}",
          """
          parts:
            G0: {is: mains}
            D1: {is: diode}
          wires:
            - {from: G0.L, to: D1.A, number: 71}
            - {from: D1.K, to: G0.N}
          """);

  private static final Acceptance ACCEPTANCE =
      new Acceptance(NETLIST, List.of("coil.too-low", "coil.too-high"), Samples.ACCEPTED_NOTHING);

  private static boolean covers(String at, Violated finding) {
    return ACCEPTANCE.covers(accepted("coil.too-low", at), finding);
  }

  @ParameterizedTest
  @CsvSource({
    "wire 1, true",
    "71, true",
    "wire 2, false",
    "wire 0, false",
    "wire 3, false",
    "wire 1234567890, false",
    "72, false",
    "D1, true",
    "G0, false"
  })
  void a_wire_is_named_by_its_place_or_its_number(String at, boolean covered) {
    assertEquals(covered, covers(at, violated(LOW, 4, "D1", "wire 1")));
  }

  /** A finding that stands at a wire, or at an end of it, is at that wire. */
  @Test
  void a_finding_where_a_wire_is_written_is_at_that_wire() {
    Wire second = NETLIST.wires().get(1);
    for (var mark : List.of(second.mark(), second.from().mark(), second.to().mark())) {
      Violated finding =
          Subject.of(LOW, mark, "D1.K")
              .violated("headline", "numbers", "label")
              .todo("remedy", new Basis(List.of(), Standing.PUBLISHED));
      assertTrue(covers("wire 2", finding));
      assertFalse(covers("wire 1", finding));
    }
  }

  @Test
  void a_finding_of_another_rule_is_not_covered() {
    RuleFacts high = facts("coil.too-high", Weight.FIX, List.of());
    assertFalse(covers("D1", violated(high, 4, "D1")));
  }

  private static Violated nothing(String rule, String at, int findings) {
    return ACCEPTANCE.ofNothing(
        accepted(rule, at),
        IntStream.rangeClosed(1, findings).mapToObj(i -> violated(LOW, i, "K" + i)).toList());
  }

  @Test
  void an_entry_that_covers_nothing_says_where_its_rule_was_raised() {
    Violated few = nothing("coil.too-low", "D1", 6);
    assertEquals("coil.too-low was raised, but only at K1, K2, K3, K4, K5 and K6.", few.numbers());
    assertEquals("Write `at: K1`, or strike the entry out.", few.remedy());
    assertEquals(
        "coil.too-low was raised, but only at K1, K2, K3, K4, K5 and K6 and 1 more.",
        nothing("coil.too-low", "D1", 7).numbers());
  }

  @Test
  void an_entry_for_a_rule_that_raised_nothing_is_struck_or_corrected() {
    Violated silent = nothing("coil.too-high", "D1", 2);
    assertEquals("No finding of coil.too-high was raised at all.", silent.numbers());
    assertEquals("Strike the entry out, or correct its rule or its place.", silent.remedy());
    Violated unknown = nothing("coil.to-low", "Z9", 2);
    assertEquals("There is no rule coil.to-low. Nothing here is called Z9.", unknown.numbers());
    assertEquals("Write `rule: coil.too-low`, or strike the entry out.", unknown.remedy());
  }

  @ParameterizedTest
  @CsvSource({"wire 2, true", "71, true", "circuit, true", "D1.K, true", "wire 3, false"})
  void a_place_that_is_there_is_not_called_unknown(String at, boolean known) {
    assertEquals(!known, nothing("coil.too-high", at, 0).numbers().contains("Nothing here"));
  }

  private static Violated gap(Undecided undecided) {
    return new Runner(List.of(), Samples.NOT_CHECKED, Samples.ACCEPTED_NOTHING)
        .assemble(netlist(), List.of(undecided))
        .findings()
        .get(0);
  }

  @Test
  void a_gap_is_told_by_its_rule_and_says_how_to_fill_it() {
    Violated length = gap(undecided(LOW, 5, "length of W1", "W1"));
    assertTrue(Runner.isGap(length));
    assertFalse(Runner.isGap(violated(LOW, 5, "W1")));
    assertTrue(length.remedy().startsWith("Write length of W1, for instance "), length.remedy());
    assertTrue(length.remedy().endsWith(", or measure it on site."), length.remedy());
    Violated nobody = gap(undecided(LOW, 5, "let-through energy of F1 at 6 kA", "F1"));
    assertTrue(nobody.remedy().startsWith("No single key settles this"), nobody.remedy());
    Violated asked =
        gap(Subject.of(LOW, Samples.mark(5, 3, 2), "F1").unsettled("energy", "said", "Ask them."));
    assertEquals("Ask them.", asked.remedy());
  }

  @Test
  void findings_are_counted_by_weight_but_those_that_are_accepted() {
    Report report =
        new Runner(List.of(), Samples.NOT_CHECKED, Samples.ACCEPTED_NOTHING)
            .assemble(
                netlist(accepted("coil.too-low", "K1")),
                List.of(violated(LOW, 4, "K1"), violated(LOW, 5, "K2")));
    assertEquals(1, report.count(Weight.FIX));
    assertEquals(0, report.count(Weight.STOP));
  }
}
