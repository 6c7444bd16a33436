package org.coilwright.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Report;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * Every rule on its fixtures: the answer that the file name announces, and the very text that a
 * user sees. {@code -Daccept=true} writes the texts instead of comparing them.
 */
class FixturesTest {
  private static final boolean ACCEPT = Boolean.getBoolean("accept");

  /** Twins that differ in more lines would not show what the rule is about. */
  private static final int MOST_CHANGED_LINES = 3;

  private static final Checked CHECKED = new Checked();

  @TestFactory
  Stream<DynamicTest> the_rule_answers_as_the_file_name_says() {
    return Fixture.all().stream()
        .map(f -> DynamicTest.dynamicTest(f.toString(), () -> assertAnswer(f, CHECKED.report(f))));
  }

  @TestFactory
  Stream<DynamicTest> a_user_sees_the_expected_text() {
    return Fixture.all().stream()
        .map(f -> DynamicTest.dynamicTest(f.toString(), () -> assertText(f)));
  }

  private static void assertAnswer(Fixture fixture, Report report) {
    List<String> violated = ids(report.findings().stream());
    List<String> undecided = ids(report.undecided().stream());
    String seen =
        "%s: violated %s, undecided %s"
            .formatted(fixture, new TreeSet<>(violated), new TreeSet<>(undecided));
    switch (fixture.kind()) {
      case BAD -> assertTrue(violated.contains(fixture.rule()), seen);
      case GOOD -> {
        List<String> silenced = ids(report.silenced().values().stream().flatMap(List::stream));
        assertFalse(violated.contains(fixture.rule()), seen);
        assertFalse(silenced.contains(fixture.rule()), "silenced " + silenced);
        // the runner raises the record rules itself and has nothing to say where all is decided
        assertTrue(
            fixture.rule().startsWith("record.")
                || ids(report.satisfied().stream()).contains(fixture.rule()),
            seen);
      }
      case UNDECIDED -> assertTrue(undecided.contains(fixture.rule()), seen);
    }
  }

  private static List<String> ids(Stream<? extends Outcome> outcomes) {
    return outcomes.map(outcome -> outcome.rule().id()).toList();
  }

  private static void assertText(Fixture fixture) throws IOException {
    String text = CHECKED.text(fixture);
    if (ACCEPT) {
      Files.writeString(fixture.expected(), text);
      return;
    }
    assertTrue(
        Files.exists(fixture.expected()),
        fixture + " has no expected text; run with -Daccept=true");
    assertEquals(Fixture.read(fixture.expected()), text, fixture.toString());
  }

  @Test
  void every_file_is_a_fixture_or_the_text_of_one() {
    Set<String> strangers =
        Fixture.files().stream()
            .filter(file -> Fixture.of(file).isEmpty())
            .filter(
                file ->
                    Fixture.all().stream().noneMatch(fixture -> fixture.expected().equals(file)))
            .map(file -> Fixture.ROOT.relativize(file).toString())
            .collect(Collectors.toCollection(TreeSet::new));
    assertEquals(Set.of(), strangers);
  }

  @Test
  void every_folder_belongs_to_a_rule() {
    Set<String> strangers = Fixture.all().stream().map(Fixture::rule).collect(Collectors.toSet());
    strangers.removeAll(ruleIds());
    assertEquals(Set.of(), strangers);
  }

  @TestFactory
  Stream<DynamicTest> every_rule_has_twins_that_show_what_it_is_about() {
    Map<String, List<Fixture>> byRule =
        Fixture.all().stream().collect(Collectors.groupingBy(Fixture::rule));
    return ruleIds().stream()
        .map(
            id ->
                DynamicTest.dynamicTest(
                    id,
                    () -> {
                      List<Fixture> fixtures = byRule.getOrDefault(id, List.of());
                      assertTrue(
                          fixtures.stream()
                              .filter(f -> f.kind() == Fixture.Kind.BAD)
                              .anyMatch(bad -> bad.twin().isPresent()),
                          id + " needs bad-x.yaml and good-x.yaml");
                    }));
  }

  @TestFactory
  Stream<DynamicTest> twins_differ_in_at_most_three_lines() {
    List<Fixture> all = Fixture.all();
    return all.stream()
        .filter(f -> f.kind() == Fixture.Kind.BAD)
        .flatMap(
            bad ->
                bad.twin().stream()
                    .map(
                        good ->
                            DynamicTest.dynamicTest(
                                bad.toString(),
                                () ->
                                    assertTrue(
                                        changedLines(bad.lines(), good.lines())
                                            <= MOST_CHANGED_LINES))));
  }

  private static Set<String> ruleIds() {
    return AllRules.of(Tables.load()).stream()
        .map(rule -> rule.facts().id())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  /** Lines that are in one text and not in the other, the larger of the two counts. */
  private static int changedLines(List<String> one, List<String> other) {
    int[][] alike = new int[one.size() + 1][other.size() + 1];
    for (int i = one.size() - 1; i >= 0; i--) {
      for (int j = other.size() - 1; j >= 0; j--) {
        alike[i][j] =
            one.get(i).equals(other.get(j))
                ? alike[i + 1][j + 1] + 1
                : Math.max(alike[i + 1][j], alike[i][j + 1]);
      }
    }
    return Math.max(one.size(), other.size()) - alike[0][0];
  }
}
