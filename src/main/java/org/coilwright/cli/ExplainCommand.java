package org.coilwright.cli;

import java.util.List;
import org.coilwright.rule.RuleFacts;
import picocli.CommandLine.Command;
import picocli.CommandLine.Parameters;

/** {@code coilwright explain RULE}. */
@Command(
    name = "explain",
    description = "Tells what a rule looks at, why, what to do, and where its limits come from.",
    footer = {
      "",
      "Without RULE it lists them all; a group such as coil lists that group.",
      "",
      "Examples:",
      "  coilwright explain coil.too-low",
      "  coilwright explain suppression"
    })
final class ExplainCommand extends ConsoleCommand {
  @Parameters(arity = "0..1", paramLabel = "RULE", description = "Name of a rule or of a group.")
  private String rule = "";

  ExplainCommand(Console console) {
    super(console);
  }

  @Override
  public Integer call() {
    Inspector inspector = Inspector.standard();
    List<RuleFacts> all = inspector.facts();
    Style style = outStyle();
    for (RuleFacts facts : all) {
      if (facts.id().equals(rule)) {
        console().out().print(RuleText.of(facts, inspector::cite, style));
        return Exit.NOTHING_FOUND;
      }
    }
    List<RuleFacts> listed =
        rule.isEmpty() ? all : all.stream().filter(f -> f.group().equals(rule)).toList();
    if (listed.isEmpty()) {
      List<String> names =
          java.util.stream.Stream.concat(
                  all.stream().map(RuleFacts::id), all.stream().map(RuleFacts::group).distinct())
              .toList();
      console()
          .err()
          .println(
              "There is no rule "
                  + Lines.harmless(rule)
                  + "."
                  + Near.question(rule, names)
                  + "\nTry:   coilwright explain");
      return Exit.UNUSABLE;
    }
    console().out().print(RuleText.list(listed, style));
    return Exit.NOTHING_FOUND;
  }
}
