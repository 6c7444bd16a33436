package org.coilwright.cli;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.coilwright.rule.RuleFacts;
import org.coilwright.table.Tables;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** {@code coilwright explain WORD}. */
final class ExplainCommand extends ConsoleCommand {
  ExplainCommand(Console console) {
    super(console);
  }

  @Override
  CommandSpec spec() {
    CommandSpec spec =
        spec(
            "Tells what a rule looks at and why, or what a part, key or category is.",
            "",
            "WORD is a rule, a group of rules (coil), a part (relay), a key (release), a unit, a",
            "utilization category (DC-13), a letter of pilot duty (B300) or a safety note.",
            "Without it, all rules are listed.",
            "",
            "Examples:",
            "  coilwright explain coil.too-low",
            "  coilwright explain suppression",
            "  coilwright explain relay",
            "  coilwright explain DC-13");
    spec.addPositional(
        PositionalParamSpec.builder()
            .arity("0..1")
            .type(String.class)
            .paramLabel("WORD")
            .description("A rule, group, part, key, unit, category or safety note.")
            .build());
    return spec;
  }

  @Override
  int run(ParseResult parsed) {
    String rule = parsed.matchedPositionalValue(0, "");
    Inspector inspector = Inspector.standard();
    List<RuleFacts> all = inspector.facts();
    for (RuleFacts facts : all) {
      if (facts.id().equals(rule)) {
        console().out().print(RuleText.of(facts, inspector::references, outStyle()));
        return Exit.NOTHING_FOUND;
      }
    }
    List<RuleFacts> listed =
        rule.isEmpty() ? all : all.stream().filter(f -> f.group().equals(rule)).toList();
    ExplainedWord words = new ExplainedWord(Tables.load(), outStyle());
    String more = rule.isEmpty() ? "" : words.text(rule);
    if (listed.isEmpty() && more.isEmpty()) {
      return unknown(rule, all, words.names());
    }
    String rules = listed.isEmpty() ? "" : RuleText.list(listed, outStyle());
    console().out().print(rules + (rules.isEmpty() || more.isEmpty() ? "" : "\n") + more);
    return Exit.NOTHING_FOUND;
  }

  private int unknown(String rule, List<RuleFacts> all, Collection<String> words) {
    Set<String> names = new LinkedHashSet<>(all.stream().map(RuleFacts::group).toList());
    all.forEach(facts -> names.add(facts.id()));
    names.addAll(words);
    String question = Near.question(rule, names);
    console()
        .err()
        .println("No rule, part, key or note is called " + Lines.harmless(rule) + "." + question);
    console().err().println("Try:   coilwright explain");
    return Exit.UNUSABLE;
  }
}
