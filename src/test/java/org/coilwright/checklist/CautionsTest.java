package org.coilwright.checklist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.coilwright.checklist.Checklist.Caution;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class CautionsTest {
  private static final Path FOLDER = Path.of("safety-notes");
  private static final Set<String> STAGES = Set.of("dead", "elv", "mains", "settings");

  static List<String> names() {
    return Cautions.NAMES;
  }

  @Test
  void every_file_is_listed_and_every_name_has_a_file() throws IOException {
    try (Stream<Path> files = Files.list(FOLDER)) {
      Set<String> found =
          files
              .map(f -> f.getFileName().toString())
              .filter(n -> n.endsWith(".md"))
              .map(n -> n.substring(0, n.length() - 3))
              .collect(Collectors.toCollection(TreeSet::new));
      assertEquals(found, new TreeSet<>(Cautions.NAMES));
    }
  }

  @Test
  void there_are_at_least_twelve() {
    assertTrue(Cautions.NAMES.size() >= 12);
  }

  @ParameterizedTest
  @MethodSource("names")
  void a_caution_has_text_a_known_place_and_a_source_that_fits_its_standing(String name) {
    CautionNote note = Cautions.note(name);
    assertFalse(note.paragraphs().isEmpty());
    String cite = Tables.load().source(note.source()).cite();
    assertEquals(
        note.source().equals("common-practice"), note.standing().equals("common-practice"), cite);
  }

  /** A caution tells of a danger; what to do stands in the rows, where it is initialled. */
  @ParameterizedTest
  @MethodSource("names")
  void no_sentence_of_a_caution_begins_with_an_order(String name) {
    Set<String> orders =
        Set.of(
            "measure", "read", "lock", "switch", "turn", "check", "make", "use", "do", "never",
            "always", "open", "close", "keep", "remove", "wait", "test", "prove", "pull", "fit");
    for (String paragraph : Cautions.note(name).paragraphs()) {
      for (String sentence : paragraph.split("(?<=[.:;]) ", -1)) {
        String first = sentence.split("[ ,]", -1)[0].toLowerCase(java.util.Locale.ROOT);
        assertFalse(orders.contains(first), sentence);
      }
    }
  }

  /** One that names a topic this circuit lacks must still stand somewhere. */
  @ParameterizedTest
  @MethodSource("names")
  void a_caution_belongs_to_the_wiring_or_names_a_stage_to_fall_back_on(String name) {
    List<String> before = Cautions.note(name).before();
    String last = before.get(before.size() - 1);
    assertTrue(last.equals("wiring") || STAGES.contains(last), last);
  }

  @ParameterizedTest
  @ValueSource(strings = {"wash-room-tub", "guest-house-cylinder", "cabin-water-heater"})
  void every_caution_stands_once_before_the_work_it_belongs_to(String example) {
    Checklist checklist = Checked.example(example);
    List<Caution> placed = new ArrayList<>(checklist.elsewhere());
    checklist.steps().stream()
        .filter(Section.class::isInstance)
        .forEach(s -> placed.addAll(((Section) s).readFirst()));
    assertEquals(Set.copyOf(checklist.cautions()), Set.copyOf(placed));
    assertEquals(checklist.cautions().size(), placed.size());
  }

  @Test
  void the_insulation_tester_is_warned_of_where_it_is_used() {
    Section insulation =
        Checked.example("guest-house-cylinder").steps().stream()
            .filter(Section.class::isInstance)
            .map(Section.class::cast)
            .filter(s -> s.rows().stream().anyMatch(r -> r.expected().unit().equals("MΩ")))
            .findFirst()
            .orElseThrow();
    assertEquals(
        List.of(Cautions.note("insulation-tester").title()),
        insulation.readFirst().stream().map(Caution::title).toList());
  }

  @Test
  void a_note_without_front_matter_or_with_an_unknown_word_is_refused() {
    assertThrows(IllegalArgumentException.class, () -> CautionNote.parse("x", "Text."));
    assertThrows(
        IllegalArgumentException.class,
        () ->
            CautionNote.parse(
                "x",
                """
                ---
                title: t
                applies-when: moonlight
                before: all
                source: s
                standing: w
                ---

                Text.
                """));
    assertThrows(
        IllegalArgumentException.class,
        () -> CautionNote.parse("x", "---\ntitle: t\n---\n\nText.\n"));
  }

  @Test
  void the_guest_house_is_warned_of_three_lines_a_closed_vessel_and_its_plant() {
    List<String> titles = titles("guest-house-cylinder");
    assertTrue(has(titles, "three-lines") && has(titles, "pressure"));
    assertTrue(has(titles, "battery-plant") && has(titles, "ac-coil") && has(titles, "rcd"));
    assertFalse(has(titles, "split-phase") || has(titles, "nec-practice"));
  }

  @Test
  void the_cabin_is_warned_of_split_phase_and_of_its_own_code() {
    List<String> titles = titles("cabin-water-heater");
    assertTrue(has(titles, "split-phase") && has(titles, "nec-practice"));
    assertFalse(has(titles, "three-lines") || has(titles, "rcd"));
  }

  @Test
  void the_open_tub_is_not_warned_of_pressure_nor_of_contactors() {
    List<String> titles = titles("wash-room-tub");
    assertFalse(has(titles, "pressure") || has(titles, "ac-coil"));
    assertTrue(has(titles, "dry-element") && has(titles, "elv-and-mains"));
  }

  private static List<String> titles(String example) {
    return Checked.example(example).cautions().stream().map(Caution::title).toList();
  }

  private static boolean has(List<String> titles, String name) {
    return titles.contains(Cautions.note(name).title());
  }
}
