package org.coilwright.cli;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.rule.RuleFacts;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** {@code coilwright explain RULE}. */
final class ExplainCommand extends ConsoleCommand {
  ExplainCommand(Console console) {
    super(console);
  }

  @Override
  CommandSpec spec() {
    CommandSpec spec =
        spec(
            "Tells what a rule looks at, why, what to do, and where its limits come from.",
            "",
            "Without RULE it lists them all; a group such as coil lists that group.",
            "",
            "Examples:",
            "  coilwright explain coil.too-low",
            "  coilwright explain suppression");
    spec.addPositional(
        PositionalParamSpec.builder()
            .arity("0..1")
            .type(String.class)
            .paramLabel("RULE")
            .description("Name of a rule or of a group.")
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
    if (listed.isEmpty()) {
      return unknown(rule, all);
    }
    console().out().print(RuleText.list(listed, outStyle()));
    return Exit.NOTHING_FOUND;
  }

  private int unknown(String rule, List<RuleFacts> all) {
    List<String> names = new ArrayList<>(all.stream().map(RuleFacts::group).distinct().toList());
    all.forEach(facts -> names.add(facts.id()));
    String question = Near.question(rule, names);
    console().err().println("There is no rule " + Lines.harmless(rule) + "." + question);
    console().err().println("Try:   coilwright explain");
    return Exit.UNUSABLE;
  }
}
