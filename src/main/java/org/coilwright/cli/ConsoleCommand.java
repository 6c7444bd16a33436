package org.coilwright.cli;

import java.util.Locale;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/**
 * A command. Its options are declared by hand, not by annotations: reading those costs a third of
 * the time that a check takes to start.
 */
abstract class ConsoleCommand {
  private static final String COLOUR = "--color";

  private final Console console;

  ConsoleCommand(Console console) {
    this.console = console;
  }

  /** Its options, parameters and help. */
  abstract CommandSpec spec();

  /**
   * Does what was asked.
   *
   * @return the exit code
   */
  abstract int run(ParseResult parsed);

  /** What every command begins with. */
  static CommandSpec spec(String description, String... footer) {
    CommandSpec spec = CommandSpec.create();
    spec.usageMessage().description(description).footer(footer).sortOptions(false);
    return spec;
  }

  /** Adds what every command ends with. */
  static CommandSpec withCommonOptions(CommandSpec spec) {
    return spec.addOption(
            OptionSpec.builder(COLOUR)
                .paramLabel("WHEN")
                .type(Console.Colour.class)
                .description(
                    "Colour: auto, always or never. auto: on a terminal,",
                    "unless NO_COLOR is set.")
                .build())
        .addOption(help("Show this help."));
  }

  /** The option that asks for help. */
  static OptionSpec help(String description) {
    return OptionSpec.builder("-h", "--help").usageHelp(true).description(description).build();
  }

  Console console() {
    return console;
  }

  /** How results are laid out. */
  Style outStyle(ParseResult parsed) {
    return console.outStyle(colour(parsed));
  }

  /** How messages are laid out. */
  Style errStyle(ParseResult parsed) {
    return console.errStyle(colour(parsed));
  }

  private static Console.Colour colour(ParseResult parsed) {
    return parsed.matchedOptionValue(COLOUR, Console.Colour.AUTO);
  }

  /** Says what stands in the way of reading a file. */
  void tell(Inspection.Unusable unusable, ParseResult parsed) {
    console.err().print(ProblemText.of(unusable.file(), unusable.problems(), errStyle(parsed)));
  }

  /** A choice as it is typed. */
  static String typed(Enum<?> choice) {
    return choice.name().toLowerCase(Locale.ROOT);
  }
}
