package org.coilwright.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** How findings speak, tested over every text that a fixture expects. */
class WordingTest {
  /** A clean bill is not this tool's to give. */
  private static final Pattern FORBIDDEN =
      Pattern.compile("(?i)\\b(pass|passed|passes|safe|safely|approved|ok|okay)\\b");

  private static final Pattern NUMBERED = Pattern.compile("^ +\\d+ \\|.*");

  /** Rules whose fault lies in one place alone. */
  private static final Set<String> ONE_PLACE = Set.of("wiring.unused-part", "record.not-checked");

  private static final int WIDTH = 100;

  @TestFactory
  Stream<DynamicTest> no_text_gives_a_clean_bill_or_shouts() {
    return over(
        text ->
            text.spoken().stream()
                .filter(line -> FORBIDDEN.matcher(line).find() || line.contains("!"))
                .toList());
  }

  @TestFactory
  Stream<DynamicTest> every_finding_says_what_to_do() {
    return over(text -> without(text, "      Do:    "));
  }

  @TestFactory
  Stream<DynamicTest> every_finding_says_where_its_limit_comes_from() {
    // the record rules compare nothing
    return over(
        text ->
            without(text, "      From:  ").stream()
                .filter(rule -> !rule.startsWith("record."))
                .toList());
  }

  @TestFactory
  Stream<DynamicTest> every_finding_shows_its_place() {
    return over(
        text ->
            text.findings().stream()
                .filter(finding -> places(finding) == 0)
                .map(ExpectedText::rule)
                // what is missing stands nowhere yet
                .filter(rule -> !rule.equals("record.not-checked"))
                .toList());
  }

  @TestFactory
  Stream<DynamicTest> a_bad_example_shows_both_places_that_clash() {
    return Fixture.all().stream()
        .filter(fixture -> fixture.kind() == Fixture.Kind.BAD)
        .filter(fixture -> !ONE_PLACE.contains(fixture.rule()))
        .filter(fixture -> !ONE_PLACE.contains(fixture.toString()))
        .map(
            fixture ->
                DynamicTest.dynamicTest(
                    fixture.toString(),
                    () -> assertTrue(showsTwoPlaces(fixture), fixture.toString())));
  }

  private static boolean showsTwoPlaces(Fixture fixture) {
    return ExpectedText.of(fixture.expected()).findings().stream()
        .filter(finding -> ExpectedText.rule(finding).equals(fixture.rule()))
        .allMatch(finding -> places(finding) > 1);
  }

  private static long places(List<String> finding) {
    return finding.stream().filter(line -> NUMBERED.matcher(line).matches()).count();
  }

  @TestFactory
  Stream<DynamicTest> no_spoken_line_is_too_long_for_a_page() {
    // the command on the last line cannot be wrapped, it must work when it is copied
    return over(
        text ->
            text.spoken().stream()
                .filter(line -> line.length() > WIDTH && !line.startsWith("Next:"))
                .toList());
  }

  @TestFactory
  Stream<DynamicTest> no_sentence_is_left_with_a_gap() {
    Pattern gap = Pattern.compile("Optional|null|NaN|Infinity|%[sd]|\\[\\]|\\.\\.$|\\{|\\}");
    return over(text -> text.spoken().stream().filter(l -> gap.matcher(l).find()).toList());
  }

  private static List<String> without(ExpectedText text, String start) {
    return text.findings().stream()
        .filter(finding -> finding.stream().noneMatch(line -> line.startsWith(start)))
        .map(ExpectedText::rule)
        .toList();
  }

  private static Stream<DynamicTest> over(Function<ExpectedText, List<String>> offenders) {
    return Fixture.files().stream()
        .filter(file -> file.toString().endsWith(".expected.txt"))
        .map(ExpectedText::of)
        .map(
            text ->
                DynamicTest.dynamicTest(
                    Fixture.ROOT.relativize(text.file()).toString(),
                    () -> assertEquals(List.of(), offenders.apply(text), text.file().toString())));
  }
}
