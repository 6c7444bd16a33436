package org.coilwright.cli;

import org.coilwright.netlist.NetlistSchema;
import picocli.CommandLine.Command;

/** {@code coilwright schema}. */
@Command(
    name = "schema",
    description = "Prints the JSON Schema (draft 2020-12) of the netlist format, for editors.",
    footer = {"", "Example:", "  coilwright schema > coilwright.schema.json"})
final class SchemaCommand extends ConsoleCommand {
  SchemaCommand(Console console) {
    super(console);
  }

  @Override
  public Integer call() {
    console().out().print(NetlistSchema.text());
    return Exit.NOTHING_FOUND;
  }
}
