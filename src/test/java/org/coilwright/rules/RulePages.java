package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Weight;
import org.coilwright.table.Tables;

/** The page of a rule, out of its facts and its first bad fixture. */
final class RulePages {
  private static final int WIDTH = 100;

  private final Tables tables;

  RulePages(Tables tables) {
    this.tables = tables;
  }

  /**
   * The page as Markdown.
   *
   * @param example a fixture that violates the rule, and the good one it is a twin of
   */
  String page(RuleFacts facts, Optional<Twins> example) {
    StringBuilder page = new StringBuilder();
    page.append("# ").append(facts.id()).append("\n\n");
    page.append("**")
        .append(facts.weight().name())
        .append("** (")
        .append(weight(facts.weight()))
        .append("): ")
        .append(facts.title())
        .append(".\n\n");
    section(page, "What it looks at", facts.what());
    section(page, "Why it matters", facts.why());
    section(page, "What to do", facts.remedy());
    section(page, "What it does not see", facts.blind());
    page.append("## Sources\n\n");
    for (String key : facts.sources()) {
      page.append(wrapped("- ", tables.source(key).cite())).append('\n');
      tables
          .references(key)
          .forEach(document -> page.append(wrapped("  - ", document.full())).append('\n'));
    }
    example.ifPresent(twins -> example(page, facts, twins));
    if (!facts.silencedBy().isEmpty()) {
      section(
          page,
          "When it keeps quiet",
          "A finding of one of these at the same place makes this one a mere consequence, and it is"
              + " listed there: "
              + facts.silencedBy().stream().map("`%s`"::formatted).collect(Collectors.joining(", "))
              + ".");
    }
    if (!facts.carriedBy().isEmpty()) {
      section(
          page,
          "When it is told with another",
          "Where a finding of one of these is the cause, this one is listed there, and that one"
              + " weighs as much: "
              + facts.carriedBy().stream().map("`%s`"::formatted).collect(Collectors.joining(", "))
              + ".");
    }
    return page.toString().stripTrailing() + "\n";
  }

  /** Two fixtures that differ in a few lines. */
  record Twins(Fixture bad, Fixture good) {}

  private static String weight(Weight weight) {
    return switch (weight) {
      case STOP -> "must not be energised like this";
      case FIX -> "correct before hand-over";
      case NOTE -> "worth knowing";
    };
  }

  private static void section(StringBuilder page, String heading, String text) {
    page.append("## ").append(heading).append("\n\n").append(wrapped("", text)).append("\n\n");
  }

  private static void example(StringBuilder page, RuleFacts facts, Twins twins) {
    page.append("\n## Example\n\n")
        .append(wrapped("", sentence(twins.bad().name()) + ", and the lines that put it right:"))
        .append("\n\n```diff\n");
    difference(twins).forEach(line -> page.append(line).append('\n'));
    page.append("```\n\nIt says:\n\n```\n");
    finding(facts, twins.bad()).forEach(line -> page.append(line).append('\n'));
    page.append("```\n\n");
  }

  private static String sentence(String name) {
    String words = name.replace('-', ' ');
    return Character.toUpperCase(words.charAt(0)) + words.substring(1);
  }

  /** The lines in which twins differ, those of the bad one first. */
  private static List<String> difference(Twins twins) {
    List<String> bad = twins.bad().lines();
    List<String> good = twins.good().lines();
    List<String> lines = new ArrayList<>();
    bad.stream().filter(line -> !good.contains(line)).forEach(line -> lines.add("-" + line));
    good.stream().filter(line -> !bad.contains(line)).forEach(line -> lines.add("+" + line));
    return lines;
  }

  /** What the expected text of a fixture says about the rule. */
  private static List<String> finding(RuleFacts facts, Fixture bad) {
    ExpectedText text = ExpectedText.of(bad.expected());
    return text.findings().stream()
        .filter(finding -> ExpectedText.rule(finding).equals(facts.id()))
        .findFirst()
        .orElseThrow(() -> new AssertionError(bad + " shows no finding of its rule"));
  }

  private static String wrapped(String lead, String text) {
    StringBuilder out = new StringBuilder(lead);
    int used = lead.length();
    for (String word : text.split(" ", -1)) {
      if (used > lead.length() && used + 1 + word.length() > WIDTH) {
        out.append('\n').append(" ".repeat(lead.length()));
        used = lead.length();
      } else if (used > lead.length()) {
        out.append(' ');
        used++;
      }
      out.append(word);
      used += word.length();
    }
    return out.toString();
  }
}
