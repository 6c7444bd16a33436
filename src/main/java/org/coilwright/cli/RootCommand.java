package org.coilwright.cli;

import org.coilwright.netlist.LargestFile;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** The command line before its command. */
final class RootCommand {
  private RootCommand() {}

  static CommandSpec spec() {
    CommandSpec spec = CommandSpec.create().name("coilwright");
    spec.usageMessage()
        .customSynopsis("coilwright COMMAND …", "       coilwright [--help | --version]")
        .description(
            "",
            "Checks a control-contact, coil and load circuit before anyone connects a wire,",
            "and prints the checklist for the test.",
            "")
        .footer(
            "",
            "Examples:",
            "  coilwright draft -o boiler.yaml        designs one from a nameplate and a manual",
            "  coilwright new boiler.yaml             a commented netlist to start from",
            "  coilwright check boiler.yaml           what is wrong with it",
            "  coilwright states boiler.yaml          what is on in which position",
            "  coilwright faults boiler.yaml          what happens when one thing breaks",
            "  coilwright draw boiler.yaml -o boiler.svg",
            "                                         its circuit diagram",
            "  coilwright checklist boiler.yaml -o boiler.pdf",
            "                                         the sheet for wiring and test",
            "  coilwright readback boiler-filled.pdf  what is missing or outside its limits on it",
            "  coilwright verify boiler.pdf           whether its netlist still gives the same",
            "  coilwright rehearse boiler.yaml        what the switching settings do over a day",
            "  coilwright explain coil.too-low        what a rule looks at and why",
            "",
            "Ends with 0: nothing above a note, 1: findings, 2: unusable input or command line,",
            "3: a fault of coilwright itself.",
            "",
            "A netlist may have up to " + LargestFile.words() + ".",
            "",
            TextReport.CAUTION);
    spec.addOption(
        ConsoleCommand.help("Show this help; coilwright COMMAND --help tells about one command."));
    spec.addOption(
        OptionSpec.builder("-V", "--version")
            .versionHelp(true)
            .description("Show the version.")
            .build());
    return spec;
  }
}
