package org.coilwright.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Option;

/** What every command has: where it speaks to, whether in colour, and a help text. */
abstract class ConsoleCommand implements Callable<Integer> {
  @Option(
      names = "--color",
      paramLabel = "WHEN",
      defaultValue = "auto",
      description =
          "Colour: ${COMPLETION-CANDIDATES}. auto: on a terminal, unless NO_COLOR is set.")
  private Console.Colour colour = Console.Colour.AUTO;

  @Option(
      names = {"-h", "--help"},
      usageHelp = true,
      description = "Show this help.")
  private boolean help;

  private final Console console;

  ConsoleCommand(Console console) {
    this.console = console;
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

  /** True if the help was asked for; the command is then not called. */
  boolean helpWanted() {
    return help;
  }

  /** Says what stands in the way of reading a file. */
  void tell(Inspection.Unusable unusable) {
    console.err().print(ProblemText.of(unusable.file(), unusable.problems(), errStyle()));
  }
}
