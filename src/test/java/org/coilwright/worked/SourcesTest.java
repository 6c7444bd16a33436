package org.coilwright.worked;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.coilwright.worked.Examples.Example;
import org.junit.jupiter.api.Test;

/** Where the worked examples come from: each source is named so that anybody can find it. */
class SourcesTest {
  private static final Set<String> KINDS =
      Set.of(
          "standard",
          "textbook",
          "handbook",
          "maker",
          "journal",
          "course",
          "exercise",
          "quiz",
          "forum",
          "blog",
          "page",
          "own");

  /** Anybody may write there, and nobody looks it over. */
  private static final Set<String> LOW = Set.of("forum", "blog", "quiz");

  private static final Pattern ADDRESS =
      Pattern.compile("https?:|www\\.|\\b[a-z0-9-]+\\.(com|org|net|de|uk|co|in|ua|ch|ie)\\b");

  private static String text(Map<String, Object> source, String key) {
    return source.get(key) instanceof String text ? text : "";
  }

  @Test
  void every_source_has_a_title_an_edition_and_a_publisher_or_says_which_is_not_known() {
    Examples.sources()
        .forEach(
            (key, source) -> {
              String kind = text(source, "kind");
              assertTrue(KINDS.contains(kind), key + ": " + kind);
              assertFalse(text(source, "title").isBlank(), key);
              if (!kind.equals("own")) {
                assertFalse(text(source, "edition").isBlank(), key);
                assertFalse(text(source, "publisher").isBlank(), key);
              }
              assertFalse(ADDRESS.matcher(source.toString()).find(), key);
            });
  }

  @Test
  void every_example_names_a_source_and_no_source_goes_unnamed() {
    Map<String, Map<String, Object>> sources = Examples.sources();
    Set<String> named = new TreeSet<>();
    for (Example example : Examples.all()) {
      named.add(example.text("source"));
      Map<String, Object> source = sources.get(example.text("source"));
      assertTrue(source != null, example::toString);
      // nobody publishes what we worked out ourselves
      assertFalse(example.isPublished() && text(source, "kind").equals("own"), example::toString);
      assertFalse(ADDRESS.matcher(example.text("place")).find(), example::toString);
    }
    assertEquals(sources.keySet(), named);
  }

  @Test
  void the_kinds_are_counted_and_most_results_come_from_better_ones_than_forums() {
    Map<String, Map<String, Object>> sources = Examples.sources();
    Map<String, Set<String>> results = new TreeMap<>();
    for (Example example : Examples.all()) {
      if (example.isPublished()) {
        results
            .computeIfAbsent(
                text(sources.getOrDefault(example.text("source"), Map.of()), "kind"),
                kind -> new TreeSet<>())
            .add(example.result());
      }
    }
    Map<String, Integer> counts = new TreeMap<>();
    results.forEach((kind, some) -> counts.put(kind, some.size()));
    System.out.println("published results by kind of source: " + counts);
    int low = LOW.stream().mapToInt(kind -> counts.getOrDefault(kind, 0)).sum();
    int all = counts.values().stream().mapToInt(Integer::intValue).sum();
    assertTrue(low * 5 < all, () -> low + " of " + all + " from forums, blogs and quizzes");
  }
}
