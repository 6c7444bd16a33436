package org.coilwright.cli;

import java.util.List;
import java.util.function.Function;
import org.coilwright.rule.RuleFacts;

/** What is known about a rule, as text. */
final class RuleText {
  private static final String FROM = "From:         ";

  private RuleText() {}

  /**
   * One rule in full.
   *
   * @param references turns a key of the bibliography into its short citation, followed by the
   *     documents behind it
   */
  static String of(RuleFacts rule, Function<String, List<String>> references, Style style) {
    StringBuilder out = new StringBuilder();
    out.append(style.strong(rule.id()))
        .append("  ")
        .append(rule.weight())
        .append("  ")
        .append(rule.title())
        .append("\n\n");
    int width = style.width();
    Lines.wrap(out, "Looks at:     ", rule.what(), width);
    Lines.wrap(out, "Why:          ", rule.why(), width);
    Lines.wrap(out, "Do:           ", rule.remedy(), width);
    Lines.wrap(out, "Does not see: ", rule.blind(), width);
    if (!rule.silencedBy().isEmpty()) {
      Lines.wrap(
          out,
          "Gives way to: ",
          String.join(", ", rule.silencedBy()) + " at the same part, of which it is a consequence",
          width);
    }
    if (!rule.carriedBy().isEmpty()) {
      Lines.wrap(
          out,
          "Told with:    ",
          String.join(", ", rule.carriedBy())
              + " where that is the cause, which then weighs as much as this",
          width);
    }
    String lead = FROM;
    for (String key : rule.sources()) {
      for (String line : references.apply(key)) {
        Lines.wrap(out, lead, line, width);
        lead = " ".repeat(FROM.length() + 2);
      }
      lead = " ".repeat(FROM.length());
    }
    return out.toString();
  }

  /** A line for each rule. */
  static String list(List<RuleFacts> rules, Style style) {
    int width = rules.stream().mapToInt(r -> r.id().length()).max().orElse(0);
    StringBuilder out = new StringBuilder();
    for (RuleFacts rule : rules) {
      out.append(Lines.padded(rule.weight().name(), 6))
          .append(style.strong(Lines.padded(rule.id(), width)))
          .append("  ")
          .append(rule.title())
          .append('\n');
    }
    return out.toString();
  }
}
