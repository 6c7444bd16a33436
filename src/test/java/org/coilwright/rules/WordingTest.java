package org.coilwright.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
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
                .filter(head -> !head.contains(" record."))
                .toList());
  }

  @TestFactory
  Stream<DynamicTest> every_finding_shows_its_place() {
    return over(
        text ->
            text.findings().stream()
                .filter(f -> f.stream().noneMatch(line -> line.contains("^")))
                .map(f -> f.get(0))
                .toList());
  }

  @TestFactory
  Stream<DynamicTest> no_spoken_line_is_too_long_for_a_page() {
    return over(text -> text.spoken().stream().filter(line -> line.length() > WIDTH).toList());
  }

  @TestFactory
  Stream<DynamicTest> no_sentence_is_left_with_a_gap() {
    Pattern gap = Pattern.compile("Optional|null|NaN|Infinity|%[sd]|\\[\\]|\\.\\.$|\\{|\\}");
    return over(text -> text.spoken().stream().filter(l -> gap.matcher(l).find()).toList());
  }

  private static List<String> without(ExpectedText text, String start) {
    return text.findings().stream()
        .filter(finding -> finding.stream().noneMatch(line -> line.startsWith(start)))
        .map(finding -> finding.get(0))
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
                    () -> assertEquals(List.of(), offenders.apply(text))));
  }
}
