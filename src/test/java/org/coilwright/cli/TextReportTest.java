package org.coilwright.cli;

import static org.coilwright.cli.Samples.accepted;
import static org.coilwright.cli.Samples.facts;
import static org.coilwright.cli.Samples.mark;
import static org.coilwright.cli.Samples.netlist;
import static org.coilwright.cli.Samples.satisfied;
import static org.coilwright.cli.Samples.undecided;
import static org.coilwright.cli.Samples.violated;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome.Violated;
import org.coilwright.rule.Place;
import org.coilwright.rule.Report;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Weight;
import org.coilwright.table.Standing;
import org.junit.jupiter.api.Test;

class TextReportTest {
  private static final RuleFacts LOW = facts("coil.too-low", Weight.STOP, List.of());
  private static final RuleFacts NEVER = facts("coil.never-on", Weight.FIX, List.of());

  private static Violated low(Standing standing) {
    return new Violated(
        LOW,
        Weight.STOP,
        List.of("K1", "W1"),
        "K1 may not pull in",
        "It gets 9.28 V at worst and needs 9.60 V (80 % of 12 V): short by 0.32 V.",
        List.of(
            new Place(mark(4, 46, 13), "needs at least 9.60 V"),
            new Place(mark(5, 16, 5), "loses 2.12 V there and back at 45 °C")),
        "Worst case: supply at 11.4 V, line at 45 °C, coil cold (it draws most then).",
        "1 mm² in W1 leaves 10.3 V; or move the relay to within 100 m.",
        Optional.of(new Measure(9.28, "V")),
        Optional.of(new Measure(9.6, "V")),
        new Basis(
            List.of(
                "operative range, IEC 61810-1 class 1 (reprint)",
                "conductor resistance, IEC 60228 class 5 (reprint)"),
            standing));
  }

  private static Report report(Violated finding) {
    return new Report(
        netlist(), List.of(finding), List.of(), List.of(), Map.of(), Map.of(), Map.of());
  }

  @Test
  void a_finding_shows_numbers_both_places_reason_remedy_and_sources() {
    String expected =
        """
        STOP  K1 may not pull in                                            coil.too-low
              It gets 9.28 V at worst and needs 9.60 V (80 % of 12 V): short by 0.32 V.

            4 |     coil: {pins: [A1, A2], voltage: 12 V DC, range: 80..110 %}
              |                                              ^^^^^^^^^^^^^
              |                                              needs at least 9.60 V
            5 |   W1: {length: 140 m, size: 0.5 mm²}
              |                ^^^^^ loses 2.12 V there and back at 45 °C

              Worst case: supply at 11.4 V, line at 45 °C, coil cold (it draws most
              then).
              Why:   The armature hangs in between and burns its contacts.
              Do:    1 mm² in W1 leaves 10.3 V; or move the relay to within 100 m.
              From:  operative range, IEC 61810-1 class 1 (reprint); conductor
                     resistance, IEC 60228 class 5 (reprint).

        This decides nothing by itself: the local codes apply, and a licensed
        electrician decides on site before anything is energised.

        STOP  K1 may not pull in, line 4                                    coil.too-low
        STOP: 1 to stop, 0 to fix, 0 notes; 0 checks satisfied, 0 could not be made.
        Next:  coilwright explain coil.too-low
        """;
    assertEquals(expected, TextReport.of(report(low(Standing.PUBLISHED)), Style.PLAIN));
  }

  @Test
  void brief_gives_the_titles_and_the_verdict() {
    Violated note = violated(facts("load.together", Weight.NOTE, List.of()), 5, "E1");
    Violated accepted = violated(NEVER, 5, "K2");
    Report report =
        new Report(
            netlist(),
            List.of(low(Standing.PUBLISHED), violated(NEVER, 4, "K1"), accepted, note),
            List.of(),
            List.of(),
            Map.of(),
            Map.of(),
            Map.of(accepted, accepted("coil.never-on", "K2")));
    assertEquals(
        """
        STOP  K1 may not pull in, line 4                                    coil.too-low
        FIX   K1 may not pull in, line 4                                   coil.never-on
        STOP: 1 to stop, 1 to fix, 1 note, 1 accepted; 0 checks satisfied, 0 could not be made.
        """,
        TextReport.brief(report, Style.PLAIN));
  }

  @Test
  void a_title_takes_one_line_however_long_it_is() {
    Violated low = low(Standing.PUBLISHED);
    Violated wordy =
        new Violated(
            low.rule(),
            low.weight(),
            low.at(),
            "K1 ".repeat(40) + "may not pull in",
            low.numbers(),
            low.places(),
            low.detail(),
            low.remedy(),
            low.value(),
            low.limit(),
            low.basis());
    List<String> lines = TextReport.brief(report(wordy), Style.PLAIN).lines().toList();
    assertEquals(2, lines.size());
    assertTrue(lines.get(0).length() <= 80, lines.get(0));
    assertTrue(lines.get(0).endsWith("…, line 4"), lines.get(0));
  }

  @Test
  void a_figure_from_memory_says_so() {
    String text = TextReport.of(report(low(Standing.FROM_MEMORY)), Style.PLAIN);
    assertTrue(text.replaceAll("\\s+", " ").contains("from memory: confirm before relying on it."));
  }

  @Test
  void a_satisfied_check_from_memory_is_named() {
    Report report =
        new Report(
            netlist(),
            List.of(),
            List.of(
                satisfied(LOW, Standing.FROM_MEMORY, "K1"),
                satisfied(NEVER, Standing.PUBLISHED, "K1")),
            List.of(undecided(NEVER, 3, "coil.range of K2", "K2")),
            Map.of(),
            Map.of(),
            Map.of());
    String text = TextReport.of(report, Style.PLAIN).replaceAll("\\s+", " ");
    assertTrue(text.contains("confirm before relying on it: coil.too-low at K1."), text);
    assertTrue(text.contains("2 checks satisfied, 1 could not be made."), text);
  }

  @Test
  void nothing_found_still_says_who_decides() {
    Report empty =
        new Report(netlist(), List.of(), List.of(), List.of(), Map.of(), Map.of(), Map.of());
    String text = TextReport.of(empty, Style.PLAIN);
    assertTrue(text.contains("licensed"), text);
    for (String word : List.of("passed", "safe", "approved", "OK")) {
      assertFalse(text.matches("(?s).*\\b" + word + "\\b.*"), word);
    }
  }

  @Test
  void consequences_and_acceptance_stay_visible() {
    Violated cause = low(Standing.PUBLISHED);
    Violated consequence = violated(NEVER, 4, "K1");
    Report report =
        new Report(
            netlist(),
            List.of(cause),
            List.of(),
            List.of(),
            Map.of(cause, List.of(consequence)),
            Map.of(),
            Map.of(cause, accepted("coil.too-low", "K1")));
    String text = TextReport.of(report, Style.PLAIN).replaceAll("\\s+", " ");
    assertTrue(text.contains("also seen because of this: K1 may not pull in (coil.never-on)"));
    assertTrue(text.contains("Accepted by the designer: the line is shorter than written."));
    assertTrue(text.contains("cannot be accepted"));
  }

  @Test
  void colour_is_only_there_when_asked_for() {
    Report report = report(low(Standing.PUBLISHED));
    String plain = TextReport.of(report, Style.PLAIN);
    String coloured = TextReport.of(report, new Style(true, 80));
    assertFalse(plain.contains("\u001b"));
    assertTrue(coloured.contains("\u001b["));
    assertEquals(plain, coloured.replaceAll("\u001b\\[[0-9;]*m", ""));
  }

  @Test
  void a_long_line_is_cut_around_its_place_and_keeps_its_carets() {
    String line = "x".repeat(300) + "TARGET" + "y".repeat(300);
    StringBuilder out = new StringBuilder();
    new Excerpt(Style.PLAIN).append(out, mark(7, 301, 6), line, "here", t -> t);
    List<String> shown = out.toString().lines().toList();
    assertTrue(shown.get(0).length() <= 80, shown.get(0));
    assertEquals(shown.get(0).indexOf("TARGET"), shown.get(1).indexOf("^^^^^^"));
  }

  @Test
  void control_characters_of_a_netlist_do_not_reach_the_terminal() {
    StringBuilder out = new StringBuilder();
    new Excerpt(Style.PLAIN).append(out, mark(1, 1, 3), "a\u001b[31mb\u202ec", "l\u0007", t -> t);
    assertFalse(out.toString().contains("\u001b"));
    assertFalse(out.toString().contains("\u202e"));
    assertFalse(out.toString().contains("\u0007"));
  }
}
