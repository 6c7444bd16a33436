package org.coilwright.cli;

import org.coilwright.netlist.NetlistSchema;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code coilwright schema}. */
final class SchemaCommand extends ConsoleCommand {
  SchemaCommand(Console console) {
    super(console);
  }

  @Override
  CommandSpec spec() {
    return spec(
        "Prints the JSON Schema (draft 2020-12) of the netlist format, for editors.",
        "",
        "Example:",
        "  coilwright schema > coilwright.schema.json");
  }

  @Override
  int run(ParseResult parsed) {
    console().out().print(NetlistSchema.text());
    return Exit.NOTHING_FOUND;
  }
}
