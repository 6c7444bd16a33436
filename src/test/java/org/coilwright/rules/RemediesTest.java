package org.coilwright.rules;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.coilwright.netlist.NetlistReader;
import org.coilwright.netlist.NetlistSchema;
import org.coilwright.netlist.Reading;
import org.coilwright.rule.Change;
import org.coilwright.rule.Outcome.Violated;
import org.coilwright.rule.Report;
import org.coilwright.rule.Runner;
import org.coilwright.rule.Weight;
import org.coilwright.sizing.WarmBox;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * What a finding says to do is done: where that can be written into the netlist, it is written into
 * the fixture's, and the finding is gone and nothing new has come.
 */
class RemediesTest {
  /** Rules whose remedy no single change of the netlist is, each with the reason. */
  private static final Path NOT_WRITTEN = Path.of("src/test/resources/remedies/not-written.txt");

  /** The list of those may only shrink. */
  private static final int MOST_NOT_WRITTEN = 42;

  /** Words that stand for keys: in backquotes, with dots, before a colon, after "write". */
  private static final List<Pattern> KEYS =
      List.of(
          Pattern.compile("`([^`]+)`"),
          Pattern.compile("\\b([a-z-]+(?:\\.[a-z-]+)+)\\b"),
          Pattern.compile("\\b([a-z]+(?:-[a-z]+)+):"),
          Pattern.compile("(?<!or )\\b(?!mechanical|it\\b)([a-z-]+): (?=[A-Z0-9]|true|by-)"),
          Pattern.compile("\\b[Ww]rite ([a-z-]+) of [A-Z]"),
          Pattern.compile("\\bAdd ([A-Za-z0-9-]+)"));

  private static final Checked CHECKED = new Checked();
  private static final Tables TABLES = Tables.load();
  private static final Runner RUNNER = AllRules.runner(TABLES);

  /** A finding of the rule that a fixture is about, whose remedy can be written. */
  private record Cure(Fixture fixture, Violated finding) {
    @Override
    public String toString() {
      return fixture + " at " + finding.path().get(0);
    }
  }

  private static List<Cure> cures() {
    List<Cure> cures = new ArrayList<>();
    for (Fixture fixture : Fixture.all()) {
      if (fixture.kind() == Fixture.Kind.BAD) {
        CHECKED.report(fixture).findings().stream()
            .filter(f -> f.rule().id().equals(fixture.rule()) && !f.changes().isEmpty())
            .forEach(f -> cures.add(new Cure(fixture, f)));
      }
    }
    return cures;
  }

  @TestFactory
  Stream<DynamicTest> what_is_to_be_done_helps_and_does_no_new_harm() {
    return cures().stream()
        .map(cure -> DynamicTest.dynamicTest(cure.toString(), () -> assertCures(cure)));
  }

  private static void assertCures(Cure cure) throws IOException {
    String text = Files.readString(cure.fixture().netlist());
    String cured = with(text, cure.finding().changes());
    Reading reading =
        NetlistReader.read(
            cure.fixture().netlist().getFileName().toString(),
            cured.getBytes(StandardCharsets.UTF_8));
    assertTrue(reading instanceof Reading.Read, () -> "cannot be read: " + reading);
    Report after = RUNNER.run(WarmBox.study(((Reading.Read) reading).netlist(), TABLES));
    Set<String> left = heavy(after);
    String own = name(cure.finding());
    assertTrue(
        !left.contains(own), () -> own + " is still there after " + cure.finding().changes());
    left.removeAll(heavy(CHECKED.report(cure.fixture())));
    // what the sound twin has as well lies in the circuit, and the mistake hid it
    cure.fixture().twin().ifPresent(twin -> left.removeAll(heavy(CHECKED.report(twin))));
    assertEquals(Set.of(), left, () -> "new after " + cure.finding().changes());
  }

  /** Every change of one line or another, the last first, so that columns stay what they were. */
  private static String with(String text, List<Change> changes) {
    List<String> lines = new ArrayList<>(List.of(text.split("\n", -1)));
    changes.stream()
        .sorted(
            Comparator.comparing((Change c) -> c.mark().line())
                .thenComparing(c -> c.mark().column())
                .reversed())
        .forEach(
            c -> {
              String line = lines.get(c.mark().line() - 1);
              lines.set(
                  c.mark().line() - 1,
                  line.substring(0, c.mark().column() - 1)
                      + c.text()
                      + line.substring(c.mark().endColumn() - 1));
            });
    return String.join("\n", lines);
  }

  /** Rule and subject of every finding above a NOTE, those told along included. */
  private static Set<String> heavy(Report report) {
    Set<String> heavy = new TreeSet<>();
    Stream.of(
            report.findings().stream(),
            report.silenced().values().stream().flatMap(List::stream),
            report.beside().values().stream().flatMap(List::stream))
        .flatMap(s -> s)
        .filter(f -> f.weight() != Weight.NOTE)
        .forEach(f -> heavy.add(name(f)));
    return heavy;
  }

  private static String name(Violated finding) {
    return finding.rule().id() + " at " + finding.path().get(0);
  }

  @Test
  void each_rule_has_its_remedy_tried_or_a_reason_why_not() throws IOException {
    Map<String, String> reasons = new TreeMap<>();
    for (String line : Files.readAllLines(NOT_WRITTEN)) {
      if (!line.startsWith("#")) {
        String[] parts = line.split(": ", 2);
        reasons.put(parts[0], parts.length > 1 ? parts[1] : "");
      }
    }
    Set<String> tried = new TreeSet<>();
    cures().forEach(cure -> tried.add(cure.fixture().rule()));
    Set<String> left = new TreeSet<>();
    AllRules.of(TABLES).forEach(rule -> left.add(rule.facts().id()));
    left.removeAll(tried);
    assertEquals(left, reasons.keySet());
    assertTrue(
        reasons.values().stream().noneMatch(String::isBlank), () -> "no reason in " + reasons);
    assertTrue(reasons.size() <= MOST_NOT_WRITTEN, () -> "more than ever: " + reasons.size());
  }

  /** Every remedy that a fixture brings up, and those of the rules' own facts. */
  private static Set<String> remedies() {
    Set<String> remedies = new TreeSet<>();
    for (Fixture fixture : Fixture.all()) {
      CHECKED.report(fixture).findings().forEach(f -> remedies.add(f.remedy()));
    }
    AllRules.of(TABLES).forEach(rule -> remedies.add(rule.facts().remedy()));
    return remedies;
  }

  @Test
  void no_remedy_names_a_key_that_the_format_does_not_know() {
    Set<String> strangers = new TreeSet<>();
    for (String remedy : remedies()) {
      KEYS.stream()
          .flatMap(pattern -> pattern.matcher(remedy).results())
          // the id of a rule is a value, and two words to what follows
          .map(found -> found.group(1).replaceAll("[a-z-]+\\.[a-z-]+", ""))
          .flatMap(written -> Stream.of(written.split("[^A-Za-z0-9-]+")))
          // a value in capitals, or a part's designation
          .filter(word -> word.matches("[a-z][a-z-]*"))
          .filter(word -> !NetlistSchema.hasKey(word))
          .forEach(word -> strangers.add(word + " in: " + remedy));
    }
    assertEquals(Set.of(), strangers);
  }

  @Test
  void no_remedy_has_a_rating_measured() {
    assertEquals(
        Set.of(),
        remedies().stream()
            .filter(r -> r.contains("easure"))
            .filter(r -> r.contains("rating") || r.contains("rated"))
            .collect(Collectors.toSet()));
  }
}
