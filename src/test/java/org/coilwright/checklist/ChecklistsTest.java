// Over 250 lines: one sheet, one row after the other.
package org.coilwright.checklist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.coilwright.checklist.Expected.Band;
import org.coilwright.checklist.Section.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class ChecklistsTest {
  private static final List<String> EXAMPLES =
      List.of("wash-room-tub", "guest-house-cylinder", "cabin-water-heater", "attic-mistakes");

  private static final Texts TEXTS = Texts.english();

  static Stream<Checklist> checklists() {
    return EXAMPLES.stream().map(name -> Checked.kept(name, "en"));
  }

  @ParameterizedTest
  @MethodSource("checklists")
  void stages_come_in_the_order_of_the_work(Checklist checklist) {
    List<Stage> stages = sections(checklist).stream().map(Section::stage).toList();
    assertEquals(stages.stream().sorted().toList(), stages);
    Set<Stage> phases = stages.stream().map(Stage::phase).collect(Collectors.toSet());
    assertEquals(
        checklist.isStopped()
            ? Set.of(Stage.DEAD)
            : Set.of(Stage.DEAD, Stage.ELV, Stage.MAINS, Stage.SETTINGS),
        phases);
  }

  @ParameterizedTest
  @MethodSource("checklists")
  void nobody_gets_from_dead_to_live_without_a_signature(Checklist checklist) {
    Stage before = Stage.DEAD;
    boolean held = false;
    for (Step step : checklist.steps()) {
      if (step instanceof Hold) {
        held = true;
      } else if (step instanceof Section section) {
        boolean energises =
            section.stage().phase() != before
                && (section.stage().phase() == Stage.ELV || section.stage() == Stage.MAINS);
        assertTrue(!energises || held, section::title);
        held = held && section.stage().phase() == before;
        before = section.stage().phase();
      }
    }
  }

  /** F2.2 against K1.11 is read twice: plain, and with K1 held in. */
  @Test
  void a_row_that_looks_like_a_repeat_says_what_it_tells() {
    List<TestRow> moved =
        Checked.kept("guest-house-cylinder", "en").rows().stream()
            .filter(row -> row.action().startsWith("Measure") && row.action().contains("against"))
            .filter(
                row -> row.condition().contains("held in") || row.condition().contains("taken off"))
            .toList();
    assertFalse(moved.isEmpty());
    for (TestRow row : moved) {
      assertTrue(
          row.condition().matches("(?s).*the reading tells \\S+ from \\S+\\."), row::toString);
    }
  }

  @ParameterizedTest
  @MethodSource("checklists")
  void no_heading_above_a_live_row_promises_extra_low_voltage_only(Checklist checklist) {
    for (Section section : sections(checklist)) {
      if (section.rows().stream().anyMatch(TestRow::live)) {
        assertTrue(section.stage() != Stage.ELV && section.stage() != Stage.DEAD, section::title);
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"en", "de"})
  void the_hold_before_the_load_says_where_the_mains_is_on_already(String language) {
    Checklist list = Checked.kept("guest-house-cylinder", language);
    Hold hold =
        list.steps().stream()
            .filter(step -> step instanceof Hold h && h.name().equals("hold.before-mains"))
            .map(Hold.class::cast)
            .findFirst()
            .orElseThrow();
    assertTrue(hold.conditions().stream().anyMatch(c -> c.contains("G0, F0, F2")), hold::toString);
  }

  @ParameterizedTest
  @MethodSource("checklists")
  void every_row_says_what_must_come_of_it(Checklist checklist) {
    Set<String> idle = Set.of("checked", "ok", "as required", "set", "good", "passed", "");
    for (TestRow row : checklist.rows()) {
      assertFalse(idle.contains(row.expected().text(TEXTS).toLowerCase(Locale.ROOT)), row::number);
      if (row.expected() instanceof Band band) {
        assertFalse(band.unit().isBlank(), row::number);
        assertTrue(row.expected().text(TEXTS).endsWith(" " + band.unit()), row::number);
      }
      assertFalse(row.otherwise().isBlank(), row::number);
    }
  }

  @ParameterizedTest
  @MethodSource("checklists")
  void a_row_is_short_and_names_one_thing_to_do(Checklist checklist) {
    for (TestRow row : checklist.rows()) {
      assertTrue(row.action().length() <= 110, row::action);
    }
  }

  @ParameterizedTest
  @MethodSource("checklists")
  void rows_are_numbered_once_and_in_order(Checklist checklist) {
    List<String> wanted = new ArrayList<>();
    for (Section section : sections(checklist)) {
      int number = 0;
      for (TestRow row : section.rows()) {
        if (row.wire().isEmpty()) {
          number++;
          wanted.add(section.number() + "." + number);
        } else {
          // by the number that list and drawing have
          checklist.wires().stream()
              .filter(wire -> wire.name().equals(row.wire()))
              .forEach(wire -> wanted.add(wire.number()));
        }
      }
    }
    assertEquals(wanted, checklist.rows().stream().map(TestRow::number).toList());
  }

  @ParameterizedTest
  @MethodSource("checklists")
  void rows_on_live_parts_are_marked(Checklist checklist) {
    for (Section section : sections(checklist)) {
      for (TestRow row : section.rows()) {
        if (section.stage() == Stage.MAINS) {
          assertTrue(row.live(), row::number);
        } else if (section.stage() == Stage.DEAD) {
          assertFalse(row.live(), row::number);
        }
      }
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"wash-room-tub", "guest-house-cylinder", "cabin-water-heater"})
  void each_wire_of_the_netlist_has_one_line(String example) throws IOException {
    long wires =
        Files.readAllLines(Path.of("wiring-examples", example + ".yaml")).stream()
            .filter(l -> l.matches("  - (\\{from:|\\S+ to ).*"))
            .count();
    Checklist checklist = Checked.example(example);
    assertEquals(wires, checklist.wires().size());
    assertEquals(
        wires, checklist.wires().stream().map(Checklist.WireRow::number).distinct().count());
  }

  @ParameterizedTest
  @MethodSource("checklists")
  void nothing_is_called_what_it_cannot_be_known_to_be(Checklist checklist) {
    Pattern forbidden = Pattern.compile("(?i)\\b(passed|safe|approved|okay|OK)\\b");
    List<String> words = new ArrayList<>();
    words.addAll(checklist.notice());
    words.add(checklist.summary().sentence());
    checklist.cautions().forEach(c -> words.addAll(c.paragraphs()));
    checklist.openPoints().forEach(p -> words.add(p.what() + p.why()));
    checklist.rows().forEach(r -> words.add(r.toString()));
    for (String text : words) {
      assertFalse(forbidden.matcher(text).find(), text);
    }
  }

  @ParameterizedTest
  @MethodSource("checklists")
  void a_limit_from_memory_is_never_printed_without_its_open_box(Checklist checklist) {
    Stream.of(
            checklist.findings().stream().map(Checklist.FindingEntry::grounds),
            checklist.satisfied().stream().map(Checklist.SatisfiedEntry::grounds),
            checklist.rows().stream().map(TestRow::grounds))
        .flatMap(s -> s)
        .forEach(g -> assertEquals(g.standing().equals("from memory"), g.confirm(), g::toString));
  }

  @Test
  void a_check_that_could_not_be_made_becomes_a_point_to_settle() {
    Checklist checklist =
        Checked.text(
            """
            coilwright: 1
            circuit: {title: Bare relay}
            site:
              mains: {phases: 1, voltage: 230 V, frequency: 50 Hz}
              practice: iec
            parts:
              U1:
                is: controller
                aux-supply: {plus: 1, minus: 2, voltage: 24 V DC}
                outputs: {heat: {pins: [3, 4], form: NO}}
              K1:
                is: relay
                coil: {pins: [A1, A2], voltage: 24 V DC, resistance: 1 kΩ}
                contacts: [{pins: [11, 14], form: NO}]
            wires:
              - U1.1 to U1.3
              - {from: U1.4, to: K1.A1, length: 5 m, size: 0.5 mm²}
              - {from: K1.A2, to: U1.2, length: 5 m, size: 0.5 mm²}
            """);
    assertFalse(checklist.openPoints().isEmpty());
    assertTrue(
        checklist.openPoints().stream().anyMatch(p -> p.why().startsWith("Not checked")),
        () -> checklist.openPoints().toString());
    assertTrue(checklist.findings().stream().noneMatch(f -> f.rule().equals("record.not-checked")));
  }

  /** A mend sheet: nothing is switched on by it, so nothing in it is live or held. */
  @Test
  void a_sheet_with_a_stop_isolates_and_does_nothing_else() {
    Checklist checklist = Checked.example("attic-mistakes");
    assertEquals("STOP", checklist.summary().word());
    assertTrue(checklist.isStopped());
    assertTrue(checklist.steps().stream().noneMatch(Hold.class::isInstance));
    assertTrue(checklist.rows().stream().noneMatch(TestRow::live));
    assertEquals(List.of(), checklist.wires());
    assertTrue(checklist.rows().stream().anyMatch(r -> r.name().equals("G0.locked-off")));
  }

  @Test
  void an_accepted_deviation_has_reason_name_and_a_place_for_other_initials() throws IOException {
    String netlist =
        Files.readString(Path.of("wiring-examples/wash-room-tub.yaml"))
            .replace("W1: {length: 14 m", "W1: {length: 4000 m");
    Checklist checklist =
        Checked.text(
            netlist
                + "\n"
                + "accepted: [{rule: coil.too-low, at: K1, because: seen, by: site"
                + " electrician}]\n");
    Checklist.AcceptedEntry accepted = checklist.accepted().get(0);
    assertEquals("seen", accepted.because());
    assertEquals("site electrician", accepted.by());
    List<String> blanks = Blanks.all(checklist).stream().map(Blank::name).toList();
    assertTrue(blanks.contains(accepted.name() + ".initials"), blanks::toString);
    Hold first =
        checklist.steps().stream()
            .filter(Hold.class::isInstance)
            .map(Hold.class::cast)
            .findFirst()
            .orElseThrow();
    assertTrue(
        first.conditions().get(first.conditions().size() - 1).startsWith("Every accepted"),
        first::toString);
  }

  /** A controller fed from the mains is not let in on a voltage that nobody has read. */
  @Test
  void the_mains_is_measured_before_it_feeds_the_control_supply() {
    List<String> actions =
        Checked.example("wash-room-tub").rows().stream().map(TestRow::action).toList();
    int mains = actions.indexOf("Measure the supply at G0");
    int control = actions.indexOf("Measure the control supply of U1");
    assertTrue(mains >= 0 && mains < control, actions::toString);
  }

  @Test
  void the_paper_follows_the_practice() {
    assertEquals(Checklist.Paper.LETTER, Checked.example("cabin-water-heater").paper());
    assertEquals(Checklist.Paper.A4, Checked.example("wash-room-tub").paper());
  }

  @Test
  void the_same_netlist_gives_an_equal_checklist() {
    assertEquals(Checked.example("guest-house-cylinder"), Checked.example("guest-house-cylinder"));
  }

  /** 960 Ω ± 10 %, copper, 10 to 30 °C against 20 °C: 864 × 244.5/254.5 and 1056 × 264.5/254.5. */
  @Test
  void the_coil_of_the_tub_relay_reads_within_its_tolerance_at_room_temperature() {
    assertEquals("831 … 1097 Ω", expected("wash-room-tub", "Measure the coil of K1"));
  }

  /** Star: two of 17.78 Ω in series, over 1.05 for power and 1.05 for heat, and over 0.90. */
  @Test
  void two_elements_of_a_star_are_read_in_series() {
    assertEquals("32.3 … 39.5 Ω", expected("guest-house-cylinder", "Measure the element of E1"));
  }

  /** 240 V split in two, 5 % each way. */
  @Test
  void each_half_of_a_split_supply_is_expected_at_half_the_voltage() {
    assertEquals("114 … 126 V AC", expected("cabin-water-heater", "Measure the supply at G0"));
  }

  /** 0.8 × 0.95 × 230.9 V over 5 × 16 A. */
  @Test
  void the_loop_must_let_the_breaker_open_at_once() {
    assertEquals("0 … 2.19 Ω", expected("guest-house-cylinder", "Add up the loop of E1"));
  }

  /**
   * 22 m of 26.0 Ω/km at most: 0.572 Ω at 20 °C, down to 80 % and 10 °C, up to 30 °C and probes.
   */
  @Test
  void a_core_of_the_control_line_is_read_from_end_to_end() {
    assertEquals("0.44 … 0.69 Ω", expected("guest-house-cylinder", "Measure the wire in W1"));
  }

  @Test
  void only_instruments_that_some_row_asks_for_are_listed() {
    String one = "Installation tester (low ohms, insulation, loop, RCD)";
    assertTrue(instruments("guest-house-cylinder").contains(one));
    List<String> cabin = instruments("cabin-water-heater");
    assertFalse(cabin.contains("RCD tester") || cabin.contains("Loop impedance tester"));
    assertTrue(cabin.contains("Clamp ammeter"));
  }

  @Test
  void residual_current_devices_of_the_other_practice_get_no_borrowed_limits() {
    assertTrue(
        Checked.example("cabin-water-heater").rows().stream()
            .noneMatch(r -> r.expected().unit().equals("ms")));
  }

  private static List<String> instruments(String example) {
    return Checked.example(example).instruments().stream().map(Checklist.Instrument::text).toList();
  }

  private static String expected(String example, String action) {
    return Checked.example(example).rows().stream()
        .filter(r -> r.action().equals(action))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no row: " + action))
        .expected()
        .text(TEXTS);
  }

  private static List<Section> sections(Checklist checklist) {
    return checklist.steps().stream()
        .filter(Section.class::isInstance)
        .map(Section.class::cast)
        .toList();
  }
}
