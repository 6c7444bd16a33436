package org.coilwright.cli;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;

/**
 * What comes out otherwise when a netlist is checked again.
 *
 * @param outcomes results of rules, each with what was and what is
 * @param rows expected readings, likewise
 * @param tables names of those that have other bytes, or that only one of the two used
 */
record Differences(List<String> outcomes, List<String> rows, List<String> tables) {

  /** Compares. */
  static Differences between(Origin then, Origin now) {
    List<String> outcomes = new ArrayList<>();
    compare(outcomes(then.results()), outcomes(now.results()), outcomes);
    List<String> rows = new ArrayList<>();
    compare(then.rows(), now.rows(), rows);
    List<String> tables = new ArrayList<>();
    Set<String> names = new TreeSet<>(then.tables().keySet());
    names.addAll(now.tables().keySet());
    for (String table : names) {
      String before = then.tables().getOrDefault(table, "");
      String after = now.tables().getOrDefault(table, "");
      if (before.isEmpty() || after.isEmpty()) {
        tables.add(table + (before.isEmpty() ? ", used only now" : ", used only then"));
      } else if (!before.equals(after)) {
        tables.add(table);
      }
    }
    return new Differences(outcomes, rows, tables);
  }

  /** True if every result and every expected reading is the same; tables alone do not count. */
  boolean isSame() {
    return outcomes.isEmpty() && rows.isEmpty();
  }

  /** The outcome in a sentence or two. */
  String sentence() {
    if (isSame()) {
      return "Same: every result and every expected reading."
          + (tables.isEmpty() ? "" : " The changed tables make no difference here.");
    }
    return "Different: "
        + outcomes.size()
        + (outcomes.size() == 1 ? " result, " : " results, ")
        + rows.size()
        + (rows.size() == 1 ? " expected reading." : " expected readings.")
        + (tables.isEmpty()
            ? " No table has changed: it comes from the rules named above or from the solving."
            : " It comes from the tables named above, or from the rules themselves.");
  }

  private static void compare(
      Map<String, String> then, Map<String, String> now, List<String> differences) {
    Set<String> keys = new LinkedHashSet<>(then.keySet());
    keys.addAll(now.keySet());
    for (String key : keys) {
      String before = then.getOrDefault(key, "nothing");
      String after = now.getOrDefault(key, "nothing");
      if (!before.equals(after)) {
        differences.add(key + ": was " + before + "; is " + after);
      }
    }
  }

  /** What each rule said at each place. */
  private static Map<String, String> outcomes(JsonTree results) {
    Map<String, String> outcomes = new TreeMap<>();
    for (String kind : List.of("findings", "satisfied", "undecided")) {
      for (JsonTree outcome : results.elements(kind)) {
        List<String> at = new ArrayList<>();
        outcome.elements("at").forEach(a -> at.add(a instanceof JsonTree.Text t ? t.value() : ""));
        String key = outcome.text("rule") + " at " + String.join(", ", at);
        String said = word(kind, outcome) + " (" + outcome.text("message") + ")";
        outcomes.merge(key, said, (a, b) -> a + " and " + b);
      }
    }
    return outcomes;
  }

  private static String word(String kind, JsonTree outcome) {
    return switch (kind) {
      case "findings" -> outcome.text("weight");
      case "satisfied" -> "satisfied";
      default -> "could not be checked";
    };
  }
}
