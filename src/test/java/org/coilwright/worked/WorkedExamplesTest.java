package org.coilwright.worked;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import org.coilwright.worked.Examples.Example;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Results that others have published, and a few computed by hand, against the formulas and tables.
 */
class WorkedExamplesTest {
  private static final Set<String> KEYS =
      Set.of(
          "id",
          "topic",
          "source",
          "place",
          "standing",
          "series",
          "reading",
          "model",
          "asks",
          "inputs",
          "expected",
          "tolerance");

  /** The files whose results belong to the power side. */
  private static final Set<String> POWER_SIDE =
      Set.of("power-side.yaml", "power-side-computed.yaml", "elements.yaml", "conductors.yaml");

  /**
   * Standings of an example; only {@code published} counts as an outside check. {@code fitted}: the
   * law was fitted to this very result; {@code loose}: the tolerance is so wide that the result
   * shows no more than the order of magnitude.
   */
  private static final Set<String> STANDINGS =
      Set.of("published", "constructed", "from-memory", "fitted", "loose");

  /** A published result whose tolerance is wider than this share of it is loose. */
  private static final double LOOSE = 0.06;

  private static final Map<String, Formula> FORMULAS = Examples.formulas();

  static List<Example> examples() {
    return Examples.all();
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("examples")
  void the_printed_result_is_met(Example example) {
    assertEquals(Set.of(), without(example.entry().keySet(), KEYS), "unknown keys");
    assertTrue(STANDINGS.contains(example.text("standing")), example::toString);
    for (String key : List.of("id", "topic", "source", "place")) {
      assertTrue(!example.text(key).isBlank(), key);
    }
    Formula formula = FORMULAS.get(example.text("asks"));
    if (formula == null) {
      fail("no formula " + example.text("asks") + "; there are " + FORMULAS.keySet());
      return;
    }
    Inputs inputs = new Inputs(example.inputs());
    compare(example, formula.answer(inputs));
    assertEquals(Set.of(), inputs.unread(), "inputs that the formula does not use");
  }

  private static void compare(Example example, Object answer) {
    Object expected = example.entry().get("expected");
    if (expected instanceof String word) {
      assertEquals(word, answer);
      return;
    }
    if (!(example.entry().get("tolerance") instanceof Number tolerance)) {
      fail("a number needs a tolerance");
      return;
    }
    List<?> wanted = expected instanceof List<?> many ? many : List.of(numberOf(expected));
    List<?> given = answer instanceof List<?> many ? many : List.of(answer);
    assertEquals(wanted.size(), given.size());
    for (int i = 0; i < wanted.size(); i++) {
      assertEquals(
          numberOf(wanted.get(i)), numberOf(given.get(i)), tolerance.doubleValue(), "result " + i);
    }
  }

  private static double numberOf(@Nullable Object value) {
    if (value instanceof Number number) {
      return number.doubleValue();
    }
    throw new IllegalArgumentException(value + " is no number");
  }

  @Test
  void at_least_one_hundred_and_ten_results_are_published_by_someone_else() {
    // A result that is asked of a formula and of a whole netlist counts once.
    long published =
        examples().stream()
            .filter(Example::isPublished)
            .map(e -> e.text("source") + e.text("place") + e.entry().get("expected"))
            .distinct()
            .count();
    assertTrue(published >= 110, () -> published + " published results");
  }

  /**
   * Figures read off a table or multiplied by one count as readings and not here; so do rows of one
   * printed table after the first, and one result asked in two ways (both by {@code series}).
   */
  @Test
  void at_least_sixty_results_of_the_power_side_are_computed_and_published_by_someone_else() {
    Set<String> results = new TreeSet<>();
    Set<String> sources = new TreeSet<>();
    for (Example example : examples()) {
      Map<String, Object> entry = example.entry();
      if (POWER_SIDE.contains(example.file())
          && example.isPublished()
          && !Boolean.TRUE.equals(entry.get("reading"))
          && !example.text("asks").startsWith("table.")) {
        results.add(example.result());
        sources.add(example.text("source"));
      }
    }
    assertTrue(results.size() >= 60, () -> results.size() + " results: " + results);
    assertTrue(sources.size() >= 30, () -> sources.size() + " sources: " + sources);
  }

  @Test
  void every_netlist_is_studied_by_an_example() throws IOException {
    Set<String> netlists = new TreeSet<>();
    try (Stream<Path> files = Files.list(StudyFormulas.NETLISTS)) {
      files.forEach(f -> netlists.add(f.getFileName().toString()));
    }
    Set<String> studied = new TreeSet<>();
    examples().forEach(e -> studied.add(String.valueOf(e.inputs().get("netlist"))));
    assertEquals(Set.of(), without(netlists, studied));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("examples")
  void a_wide_tolerance_makes_a_result_loose(Example example) {
    if (example.isPublished() && example.entry().get("tolerance") instanceof Number tolerance) {
      Object expected = example.entry().get("expected");
      List<?> wanted = expected instanceof List<?> many ? many : List.of(numberOf(expected));
      double largest = wanted.stream().mapToDouble(w -> Math.abs(numberOf(w))).max().orElse(0);
      assertTrue(tolerance.doubleValue() <= LOOSE * largest, example::toString);
    }
  }

  @Test
  void no_two_examples_share_an_id() {
    Set<String> seen = new HashSet<>();
    examples().forEach(e -> assertTrue(seen.add(e.text("id")), () -> "twice: " + e));
  }

  @Test
  void every_formula_is_asked_by_an_example() {
    Set<String> asked = new TreeSet<>();
    examples().forEach(e -> asked.add(e.text("asks")));
    assertEquals(Set.of(), without(FORMULAS.keySet(), asked));
  }

  private static Set<String> without(Set<String> all, Set<String> some) {
    Set<String> rest = new TreeSet<>(all);
    rest.removeAll(some);
    return rest;
  }
}
