package org.coilwright.cli;

import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/**
 * A command. The ones that are started most declare their options by hand: reading annotations
 * costs a third of the time that a check takes to start.
 */
abstract class ConsoleCommand {
  private static final String COLOUR = "--color";

  private final Console console;
  private Console.Colour colour = Console.Colour.AUTO;

  ConsoleCommand(Console console) {
    this.console = console;
  }

  /** Its options, parameters and help, but for the common options; by default its annotations. */
  CommandSpec spec() {
    return CommandSpec.forAnnotatedObject(this);
  }

  /**
   * Does what was asked.
   *
   * @return the exit code
   * @throws IOException if a stream that was there breaks off
   */
  abstract int run(ParseResult parsed) throws IOException;

  /**
   * Does what was asked if it was asked for in the way that nearly everybody takes. The
   * command-line library, which reads every other, is then not loaded: that is a tenth of a start.
   *
   * @param words behind the command
   * @return the exit code; empty if the words need reading
   */
  OptionalInt plainly(List<String> words) {
    return OptionalInt.empty();
  }

  /** True if a word can only be the name of a file, or standard input or output. */
  static boolean isName(String word) {
    return word.equals(InputFile.STDIN) || (!word.isEmpty() && !word.startsWith("-"));
  }

  /** Takes in the common options and does what was asked. */
  final int start(ParseResult parsed) throws IOException {
    colour = parsed.matchedOptionValue(COLOUR, Console.Colour.AUTO);
    return run(parsed);
  }

  /** A command with its help. */
  static CommandSpec spec(String description, String... footer) {
    CommandSpec spec = CommandSpec.create();
    spec.usageMessage().description(description).footer(footer).sortOptions(false);
    return spec;
  }

  /** Adds what every command has. */
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
  Style outStyle() {
    return console.outStyle(colour);
  }

  /** How messages are laid out. */
  Style errStyle() {
    return console.errStyle(colour);
  }

  /** What a file's circuit does; if the file is unusable, that is said and there is none. */
  Optional<Study> study(String file, Tables tables) {
    return study(InputFile.read(file, console.in()), tables);
  }

  /** The same of a file that was opened. */
  Optional<Study> study(InputFile input, Tables tables) {
    Inspection inspection = new Solving(tables).solve(input);
    if (inspection instanceof Inspection.Unusable unusable) {
      tell(unusable);
    }
    return inspection instanceof Inspection.Solved solved
        ? Optional.of(solved.study())
        : Optional.empty();
  }

  /** Says why nothing was done, and gives the exit code for it. */
  int refuse(String why) {
    console.err().println(Lines.harmless(why));
    return Exit.UNUSABLE;
  }

  /** Says what stands in the way of reading a file. */
  void tell(Inspection.Unusable unusable) {
    console.err().print(ProblemText.of(unusable.file(), unusable.problems(), errStyle()));
  }

  /** A choice as it is typed. */
  static String typed(Enum<?> choice) {
    return choice.name().toLowerCase(Locale.ROOT);
  }
}
