// Over 250 lines: one rule of guidance after the other.
package org.coilwright.checklist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.coilwright.checklist.Expected.Band;
import org.coilwright.checklist.Section.Stage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Published guidance on checklists, as far as it is about what stands in them. Sources, here under
 * short names; none was read in the original, each as others report it:
 *
 * <ul>
 *   <li>NASA-C: Degani and Wiener, Human Factors of Flight-Deck Checklists, NASA CR 177549, 1990.
 *   <li>NASA-T: Degani, On the Typography of Flight-Deck Documentation, NASA CR 177605, 1992.
 *   <li>CfC: Gawande, Boorman, Berry, A Checklist for Checklists, 2010.
 *   <li>DOE: DOE-STD-1029-92, Writer's Guide for Technical Procedures, 1992.
 *   <li>HPI: DOE-HDBK-1028-2009, Human Performance Improvement Handbook, volume 2.
 *   <li>CFR: 10 CFR 50, Appendix B, criteria V and X.
 *   <li>CAP: UK CAA, CAP 676, Emergency and Abnormal Checklists, issue 3, 2006, chapter 7.
 * </ul>
 */
class ModelGuidanceTest {
  private static final Texts TEXTS = Texts.english();

  /** A fixed list, and not a long one. */
  private static final Set<String> VERBS =
      Set.of(
          "Lock", "Prove", "Measure", "Test", "Press", "Watch", "Turn", "Fix", "Hang", "Cover",
          "Look", "Take", "Put", "Switch", "Hold", "Add", "Hand", "Trip");

  /** Those that may be energised: a mend sheet ends before its first hold. */
  static Stream<Checklist> complete() {
    return checklists().filter(list -> !list.isStopped());
  }

  static Stream<Checklist> checklists() {
    return Stream.of(
            "wash-room-tub", "guest-house-cylinder", "cabin-water-heater", "attic-mistakes")
        .map(name -> Checked.kept(name, "en"));
  }

  /** CK-11. NASA-C, guideline 4: the response is the wanted status or value. */
  @ParameterizedTest
  @MethodSource("checklists")
  void what_is_expected_is_a_value_with_its_unit_or_a_state_never_checked_or_set(Checklist list) {
    Set<String> idle = Set.of("checked", "ok", "as required", "set", "good", "fine", "");
    for (TestRow row : list.rows()) {
      assertFalse(idle.contains(row.expected().text(TEXTS).toLowerCase(Locale.ROOT)), row::name);
      if (row.expected() instanceof Band band) {
        assertTrue(row.expected().text(TEXTS).endsWith(" " + band.unit()), row::name);
      }
    }
  }

  /** CK-12. NASA-C, guideline 7: long lists are split by system and function. */
  @ParameterizedTest
  @MethodSource("checklists")
  void sections_follow_the_state_of_the_circuit_dead_before_live(Checklist list) {
    List<Stage> stages = sections(list).map(Section::stage).toList();
    assertEquals(stages.stream().sorted().toList(), stages);
    assertTrue(sections(list).noneMatch(s -> s.title().isBlank()));
  }

  /** CK-13. CfC: fewer than ten items a pause point; lists ticked top to bottom are one item. */
  @ParameterizedTest
  @MethodSource("checklists")
  void a_pause_point_has_fewer_than_ten_lines(Checklist list) {
    sections(list)
        .forEach(
            s ->
                assertTrue(
                    s.lines().stream()
                            .filter(line -> line.first().wire().isEmpty())
                            .filter(line -> line.first().manner() != Manner.LISTED)
                            .filter(line -> line.first().manner() != Manner.COMPARED)
                            .count()
                        < 10,
                    s::title));
  }

  /**
   * CK-15. CfC: each item is needed and has a specific answer; here, each says what it rests on.
   */
  @ParameterizedTest
  @MethodSource("checklists")
  void every_row_says_where_its_answer_comes_from(Checklist list) {
    for (TestRow row : list.rows()) {
      assertFalse(row.grounds().how().isBlank() && row.grounds().sources().isEmpty(), row::name);
    }
  }

  /** CK-17 and CK-18. CfC: natural pause points; CFR, criterion X: work may not pass a hold. */
  @ParameterizedTest
  @MethodSource("complete")
  void there_is_a_hold_before_any_supply_and_one_before_the_mains_reaches_the_load(Checklist list) {
    List<String> holds =
        list.steps().stream()
            .filter(Hold.class::isInstance)
            .map(step -> ((Hold) step).name())
            .toList();
    assertEquals(List.of("hold.before-any-supply", "hold.before-mains"), holds);
    int first = list.steps().indexOf(hold(list, "hold.before-any-supply"));
    int second = list.steps().indexOf(hold(list, "hold.before-mains"));
    for (int i = 0; i < list.steps().size(); i++) {
      if (list.steps().get(i) instanceof Section section) {
        assertEquals(i < first, section.stage() == Stage.DEAD, section::title);
        assertEquals(i > first && i < second, section.stage().phase() == Stage.ELV, section::title);
      }
    }
  }

  private static Step hold(Checklist list, String name) {
    return list.steps().stream()
        .filter(step -> step instanceof Hold hold && hold.name().equals(name))
        .findFirst()
        .orElseThrow();
  }

  /** CK-19. HPI: each switching action is initialled after it was done, and each section. */
  @ParameterizedTest
  @MethodSource("checklists")
  void every_section_and_every_switching_row_has_a_place_for_initials(Checklist list) {
    List<String> blanks = Blanks.all(list).stream().map(Blank::name).toList();
    for (TestRow row : list.rows()) {
      boolean switched = row.manner() == Manner.SWITCHED;
      assertEquals(switched, blanks.contains(row.name() + ".initials"), row::name);
      assertTrue(!row.action().startsWith("Switch") || switched, row::action);
    }
    sections(list).forEach(s -> assertTrue(blanks.contains(s.name() + ".initials"), s::title));
  }

  /** CK-20 and CK-38. NASA-C, guideline 12: read and done row by row; where to begin again. */
  @Test
  void the_sheet_says_how_it_is_read_and_where_to_begin_after_a_break() {
    for (String language : Texts.LANGUAGES) {
      assertTrue(Texts.in(language).of("tests.note").length() > 100);
    }
    assertTrue(TEXTS.of("tests.note").startsWith("Row by row, in this order."));
    assertTrue(TEXTS.of("tests.note").contains("After a break the section is begun anew"));
    assertTrue(TEXTS.of("tests.note").contains("LIVE: parts that can be touched"));
  }

  /** CK-21. DOE: a caution holds no instruction to act. */
  @ParameterizedTest
  @MethodSource("checklists")
  void no_caution_begins_a_sentence_with_a_verb_that_rows_use(Checklist list) {
    for (Checklist.Caution caution : list.cautions()) {
      for (String paragraph : caution.paragraphs()) {
        for (String sentence : paragraph.split("(?<=[.:;]) ", -1)) {
          assertFalse(VERBS.contains(sentence.split("[ ,]", -1)[0]), sentence);
        }
      }
    }
  }

  /** CK-22. DOE: one action, its verb from a fixed list of twenty at most, standing first. */
  @ParameterizedTest
  @MethodSource("checklists")
  void a_row_is_one_action_and_its_verb_comes_first(Checklist list) {
    assertTrue(VERBS.size() <= 20);
    for (TestRow row : list.rows()) {
      if (isListed(row)) {
        continue;
      }
      assertTrue(VERBS.contains(row.action().split(" ", -1)[0]), row::action);
      String rest = row.action().substring(row.action().indexOf(' '));
      boolean several = rest.contains(";") || (rest.contains(" and ") && !isDone(row));
      assertFalse(several, row::action);
      for (String verb : VERBS) {
        boolean second = (rest + " ").contains(" " + verb.toLowerCase(Locale.ROOT) + " ");
        assertFalse(second && !verb.equals("Test"), row::action);
      }
    }
  }

  /** In a list that is ticked from top to bottom: its head says what is done with each. */
  private static boolean isListed(TestRow row) {
    return row.manner() == Manner.LISTED || row.expected() instanceof Expected.Setting;
  }

  /** One act on several things at once: what was taken off, held in or put back is named behind. */
  private static boolean isDone(TestRow row) {
    return row.manner().isDone();
  }

  /**
   * CK-22. DOE: equipment by its full designation, and one a step. Two pins that are taken for each
   * other are one reading, and are told by both.
   */
  @ParameterizedTest
  @MethodSource("checklists")
  void a_row_names_one_device(Checklist list) {
    Set<String> devices = devices(list);
    for (TestRow row : list.rows()) {
      Set<String> named = new TreeSet<>();
      Matcher word = Pattern.compile("[A-Za-z][A-Za-z0-9_-]*").matcher(row.action());
      while (word.find()) {
        if (devices.contains(word.group())) {
          named.add(word.group());
        }
      }
      int most = row.name().contains("against") || row.action().contains(" against ") ? 2 : 1;
      assertTrue(named.size() <= most, row::action);
    }
  }

  private static Set<String> devices(Checklist list) {
    Set<String> devices = new HashSet<>();
    for (Checklist.WireRow wire : list.wires()) {
      devices.add(wire.from().split("\\.", -1)[0]);
      devices.add(wire.to().split("\\.", -1)[0]);
    }
    return devices;
  }

  /** CK-23. DOE: conditions apart from actions. */
  @ParameterizedTest
  @MethodSource("checklists")
  void no_action_hides_a_condition(Checklist list) {
    Pattern condition = Pattern.compile("(?i)\\b(if|when|while|until|unless|once|after that)\\b");
    for (TestRow row : list.rows()) {
      assertFalse(condition.matcher(row.action()).find(), row::action);
    }
  }

  /** CK-24. DOE: what is measured or read has its space and unit, what is only seen has none. */
  @ParameterizedTest
  @MethodSource("checklists")
  void only_what_is_measured_or_read_has_a_space_for_it(Checklist list) {
    List<String> blanks = Blanks.all(list).stream().map(Blank::name).toList();
    for (TestRow row : list.rows()) {
      boolean space = blanks.contains(row.name() + ".reading");
      boolean asked = row.manner() == Manner.READ || row.manner() == Manner.LISTED;
      assertEquals(asked, space, row::name);
      assertFalse(asked && row.expected() instanceof Expected.Seen, row::name);
      assertEquals(row.expected() instanceof Band, !row.expected().unit().isEmpty(), row::name);
    }
  }

  /** CK-25. DOE: an action that is repeated needs a box a time; so no row asks for it. */
  @ParameterizedTest
  @MethodSource("checklists")
  void no_row_asks_to_do_it_several_times(Checklist list) {
    Pattern times = Pattern.compile("(?i)\\b(\\d+|two|three|several|five) times\\b");
    for (TestRow row : list.rows()) {
      assertFalse(times.matcher(row.condition() + row.action() + row.where()).find(), row::action);
    }
  }

  /** CK-26. CFR, criterion V: figures to accept by, both limits alike, nothing left to compute. */
  @ParameterizedTest
  @MethodSource("checklists")
  void both_limits_are_printed_with_one_unit_and_the_same_decimals(Checklist list) {
    Pattern band = Pattern.compile("(?:≥ )?([0-9.]+)(?: … ([0-9.]+))? (\\S.*)");
    for (TestRow row : list.rows()) {
      if (row.expected() instanceof Band expected) {
        Matcher text = band.matcher(row.expected().text(TEXTS));
        assertTrue(text.matches(), () -> row.expected().text(TEXTS));
        assertFalse(text.group().contains("±"), row::name);
        assertEquals(expected.unit(), text.group(3));
        boolean fromZero = text.group(1).equals("0");
        if (text.group(2) != null && !fromZero) {
          assertEquals(decimals(text.group(1)), decimals(text.group(2)), text::group);
        }
      }
    }
  }

  private static int decimals(String number) {
    return number.contains(".") ? number.length() - number.indexOf('.') : 0;
  }

  /** CK-29. CfC: a mistake is found where it can be mended; each row says what to do then. */
  @ParameterizedTest
  @MethodSource("checklists")
  void every_row_says_what_to_do_if_it_is_not_met(Checklist list) {
    list.rows().forEach(row -> assertTrue(row.otherwise().length() > 8, row::name));
  }

  /** CK-32. CAP, chapter 7, 2.6: a box to know by heart holds fewer than four items. */
  @ParameterizedTest
  @MethodSource("checklists")
  void the_stop_box_has_fewer_than_four_lines(Checklist list) {
    assertTrue(list.stopIf().size() < 4);
  }

  /** CK-39. CfC: a checklist does not teach; what a row says is short. */
  @ParameterizedTest
  @MethodSource("checklists")
  void a_row_says_what_to_do_in_a_hundred_and_ten_characters(Checklist list) {
    for (TestRow row : list.rows()) {
      assertTrue(row.action().length() <= 110, row::action);
      assertTrue(row.where().length() <= 110, row::where);
    }
  }

  /** CK-04. NASA-T, 4 and 5: capitals only for short marks. */
  @ParameterizedTest
  @MethodSource("checklists")
  void no_more_than_three_words_in_a_row_are_in_capitals(Checklist list) {
    Pattern shouting = Pattern.compile("\\b\\p{Lu}{3,}(?:[ ,]+\\p{Lu}{3,}){3,}\\b");
    for (String language : Texts.LANGUAGES) {
      Texts.in(language).patterns().entrySet().stream()
          // the verdict on a record that must stop whoever picks it up
          .filter(text -> !text.getKey().matches("judge.has-stops|record.stop"))
          .forEach(text -> assertFalse(shouting.matcher(text.getValue()).find(), text.getKey()));
    }
    list.rows().forEach(row -> assertFalse(shouting.matcher(row.toString()).find(), row::name));
  }

  private static Stream<Section> sections(Checklist list) {
    return list.steps().stream().filter(Section.class::isInstance).map(Section.class::cast);
  }
}
