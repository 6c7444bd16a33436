package org.coilwright.checklist;

import java.io.IOException;
import java.io.InputStreamReader;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.text.MessageFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Properties;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.coilwright.rule.RuleFacts;

/**
 * The checklist's texts in one language. A translation is one file: {@code
 * texts/checklist_xx.properties}, patterns as {@link MessageFormat} reads them.
 *
 * @param language such as {@code en}
 * @param patterns by key
 */
public record Texts(String language, Map<String, String> patterns) {
  /** Those there is a file for; the first is the one that texts are written in. */
  public static final List<String> LANGUAGES = List.of("en", "de");

  /** Copies the patterns. */
  public Texts {
    patterns = Map.copyOf(patterns);
  }

  /** The language that the rules, the netlist's keys and the tables are written in. */
  public static Texts english() {
    return in(LANGUAGES.get(0));
  }

  /**
   * The texts of a language.
   *
   * @throws IllegalArgumentException if there is no file for it
   */
  public static Texts in(String language) {
    if (!LANGUAGES.contains(language)) {
      throw new IllegalArgumentException("no texts in " + language);
    }
    String resource = "/texts/checklist_" + language + ".properties";
    Properties read = new Properties();
    try (Reader reader =
        new InputStreamReader(
            Objects.requireNonNull(Texts.class.getResourceAsStream(resource), resource),
            StandardCharsets.UTF_8)) {
      read.load(reader);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new Texts(
        language,
        read.stringPropertyNames().stream()
            .collect(Collectors.toMap(Function.identity(), read::getProperty)));
  }

  /**
   * A text with its arguments in place.
   *
   * @throws IllegalArgumentException if there is no such key: a fault of the program
   */
  public String of(String key, Object... arguments) {
    return find(key, arguments).orElseThrow(() -> new IllegalArgumentException("no text " + key));
  }

  /** The same for a key that a language may lack, such as the name of a colour. */
  Optional<String> find(String key, Object... arguments) {
    return Optional.ofNullable(patterns.get(key))
        .map(pattern -> new MessageFormat(pattern, Locale.ROOT).format(arguments));
  }

  /** A text as it stands, without arguments; empty if a language lacks it. */
  Optional<String> plain(String key) {
    return Optional.ofNullable(patterns.get(key));
  }

  /** A printed quantity with the decimal sign of the language; never for designations. */
  public String figure(String printed) {
    if (language.equals("en")) {
      return printed;
    }
    StringBuilder out = new StringBuilder(printed);
    for (int i = 1; i + 1 < out.length(); i++) {
      if (out.charAt(i) == '.'
          && Character.isDigit(out.charAt(i - 1))
          && Character.isDigit(out.charAt(i + 1))) {
        out.setCharAt(i, ',');
      }
    }
    return out.toString();
  }

  /** What a value of a closed list is called in keys: {@code locked-off}. */
  static String key(Enum<?> value) {
    return value.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** A rule in a few words; in English where the language has none for it. */
  String rule(RuleFacts rule) {
    return plain("rule." + rule.id()).orElse(rule.title());
  }

  /** A rule's name, with what it says in a language that is not the rules' own. */
  public String ruleNamed(String id) {
    return plain("rule." + id).map(title -> title + " (" + id + ")").orElse(id);
  }

  /** True if it is the language of rules, tables and faults. */
  public boolean isOfRules() {
    return language.equals(LANGUAGES.get(0));
  }

  /** How sure a figure is, from the word that {@link Grounds} has for it. */
  public String standing(String word) {
    return of("standing." + Names.word(word));
  }
}
