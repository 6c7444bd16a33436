package org.coilwright.cli;

import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** The command line without a command. */
@Command(
    name = "coilwright",
    synopsisSubcommandLabel = "COMMAND",
    customSynopsis = {"coilwright COMMAND …", "       coilwright [--help | --version]"},
    description = {
      "",
      "Checks a control-contact, coil and load circuit before anyone connects a wire, and prints the"
          + " checklist for the test.",
      ""
    },
    footer = {
      "",
      "Examples:",
      "  coilwright new boiler.yaml             a commented netlist to start from",
      "  coilwright check boiler.yaml           what is wrong with it",
      "  coilwright states boiler.yaml          what is on in which position",
      "  coilwright faults boiler.yaml          what happens when one thing breaks",
      "  coilwright checklist boiler.yaml -o boiler.pdf",
      "                                         the sheet for wiring and test",
      "  coilwright rehearse boiler.yaml        what the switching settings do over a day",
      "  coilwright explain coil.too-low        what a rule looks at and why",
      "",
      "Ends with 0: nothing above a note, 1: findings, 2: unusable input or command line,",
      "3: a fault of coilwright itself.",
      "",
      TextReport.CAUTION
    })
final class RootCommand {
  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help; coilwright COMMAND --help tells about one command.")
  boolean help;

  @Option(
      names = {"-V", "--version"},
      versionHelp = true,
      description = "Show the version.")
  boolean version;
}
