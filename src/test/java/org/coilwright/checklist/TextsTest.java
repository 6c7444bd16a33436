package org.coilwright.checklist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.coilwright.rules.AllRules;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class TextsTest {
  /** Keys that a language may lack or have more of; each is found by a name the netlist gives. */
  private static final Pattern OPTIONAL =
      Pattern.compile("(caution\\.[a-z-]+\\.(title|text)|(colour|rule)\\..*)");

  /** Keys put together from a value of a closed list. */
  private static final Set<String> FAMILIES =
      Set.of(
          "harm.",
          "carries.",
          "connection.",
          "instrument.",
          "judge.odd.",
          "judge.part.",
          "record.kind.",
          "record.rows.",
          "section.",
          "stage.",
          "standing.",
          "state.",
          "verdict.");

  private static final Pattern PLACEHOLDER = Pattern.compile("\\{(\\d+)[,}]");

  static Stream<String> translations() {
    return Texts.LANGUAGES.stream().skip(1);
  }

  static Stream<String> languages() {
    return Texts.LANGUAGES.stream();
  }

  @ParameterizedTest
  @MethodSource("translations")
  void a_translation_has_the_same_keys(String language) {
    assertEquals(keys(Texts.english()), keys(Texts.in(language)));
  }

  @ParameterizedTest
  @MethodSource("translations")
  void a_translation_has_the_same_placeholders(String language) {
    Map<String, String> translated = Texts.in(language).patterns();
    Texts.english()
        .patterns()
        .forEach(
            (key, text) ->
                assertEquals(
                    placeholders(text), placeholders(translated.getOrDefault(key, text)), key));
  }

  @ParameterizedTest
  @MethodSource("translations")
  void a_translation_has_a_title_and_a_text_for_every_caution(String language) {
    Texts texts = Texts.in(language);
    for (String name : Cautions.NAMES) {
      assertTrue(texts.plain("caution." + name + ".title").isPresent(), name);
      List<String> paragraphs =
          List.of(texts.plain("caution." + name + ".text").orElse("").split("\n", -1));
      assertEquals(Cautions.note(name).paragraphs().size(), paragraphs.size(), name);
    }
  }

  /** A rule that a language has no words for speaks English; one that is gone has none left. */
  @ParameterizedTest
  @MethodSource("translations")
  void a_translation_names_rules_that_there_are(String language) {
    Set<String> rules =
        AllRules.of(Tables.load()).stream()
            .map(rule -> "rule." + rule.facts().id())
            .collect(Collectors.toSet());
    Set<String> named =
        Texts.in(language).patterns().keySet().stream()
            .filter(key -> key.startsWith("rule."))
            .collect(Collectors.toSet());
    assertTrue(rules.containsAll(named), named::toString);
    assertTrue(named.size() > 80, named::toString);
  }

  /** A single quotation mark would swallow the placeholders behind it. */
  @ParameterizedTest
  @MethodSource("languages")
  void quotation_marks_are_doubled(String language) {
    Texts.in(language)
        .patterns()
        .forEach(
            (key, text) ->
                assertFalse(
                    !OPTIONAL.matcher(key).matches() && text.replace("''", "").contains("'"), key));
  }

  @ParameterizedTest
  @MethodSource("languages")
  void no_key_stands_twice(String language) throws IOException {
    Set<String> seen = new TreeSet<>();
    Path file = Path.of("src/main/resources/texts/checklist_" + language + ".properties");
    for (String line : Files.readAllLines(file)) {
      if (line.matches("[^#\\s].* = .*|[^#\\s]\\S* =")) {
        String key = line.substring(0, line.indexOf(" ="));
        assertTrue(seen.add(key), key);
      }
    }
    assertTrue(seen.size() > 300);
  }

  @Test
  void no_text_is_unused() throws IOException {
    String code = code();
    for (String key : keys(Texts.english())) {
      String kind = key.replaceFirst("\\.(when|do|where|else)$", "");
      boolean used =
          code.contains('"' + key + '"')
              || code.contains('"' + kind + '"')
              || FAMILIES.stream().anyMatch(key::startsWith)
              || (kind.startsWith("read-") && code.contains('"' + kind.substring(5) + '"'))
              || (kind.startsWith("setting.") && code.contains('"' + kind.substring(8) + '"'))
              || kind.startsWith("prove-tester-");
      assertTrue(used, key);
    }
  }

  @Test
  void an_unknown_key_or_language_is_refused() {
    assertThrows(IllegalArgumentException.class, () -> Texts.english().of("no.such.text"));
    assertThrows(IllegalArgumentException.class, () -> Texts.in("xx"));
  }

  @ParameterizedTest
  @CsvSource({
    "9.28 V, '9,28 V'",
    "0.88 … 1.28 Ω, '0,88 … 1,28 Ω'",
    "K1.A1, K1.A1",
    "12 V DC ± 1.5 %, '12 V DC ± 1,5 %'",
    ".5 and 5., .5 and 5."
  })
  void only_a_point_between_digits_becomes_a_comma(String printed, String german) {
    assertEquals(german, Texts.in("de").figure(printed));
    assertEquals(printed, Texts.english().figure(printed));
  }

  private static Set<String> keys(Texts texts) {
    return texts.patterns().keySet().stream()
        .filter(k -> !OPTIONAL.matcher(k).matches())
        .collect(Collectors.toCollection(TreeSet::new));
  }

  private static Set<String> placeholders(String text) {
    Set<String> found = new TreeSet<>();
    Matcher matcher = PLACEHOLDER.matcher(text);
    while (matcher.find()) {
      found.add(matcher.group(1));
    }
    return found;
  }

  private static String code() throws IOException {
    StringBuilder code = new StringBuilder();
    for (String folder : List.of("checklist", "diagram", "pdf", "cli")) {
      try (Stream<Path> files = Files.walk(Path.of("src/main/java/org/coilwright", folder))) {
        for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
          code.append(Files.readString(file));
        }
      }
    }
    return code.toString();
  }
}
