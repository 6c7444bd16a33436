package org.coilwright.cli;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;

/** The commands with their options, as completions and the manual page need them. */
final class Commands {
  private Commands() {}

  /**
   * One of them.
   *
   * @param description its first line, without the full stop
   */
  record Command(String name, String description, List<Choice> options, CommandSpec spec) {}

  /**
   * One option.
   *
   * @param names short ones first
   * @param takes whether a value follows
   * @param values what it may be; empty if a file, or anything
   */
  record Choice(List<String> names, String description, boolean takes, List<String> values) {}

  /** All of a command line, in their order. */
  static List<Command> of(CommandSpec root) {
    List<Command> all = new ArrayList<>();
    root.subcommands().forEach((name, line) -> all.add(command(name, line.getCommandSpec())));
    return all;
  }

  /** The options of a command, or of the command line before its command. */
  static List<Choice> options(CommandSpec spec) {
    return spec.options().stream().map(Commands::choice).toList();
  }

  private static Command command(String name, CommandSpec spec) {
    String[] description = spec.usageMessage().description();
    return new Command(name, sentence(description), options(spec), spec);
  }

  /** One option. */
  static Choice choice(OptionSpec option) {
    List<String> names = new ArrayList<>(List.of(option.names()));
    names.sort(Comparator.comparingInt(String::length));
    return new Choice(
        names,
        sentence(String.join(" ", option.description())),
        option.arity().max() > 0,
        values(option));
  }

  private static List<String> values(ArgSpec option) {
    List<String> values = new ArrayList<>();
    if (option.completionCandidates() != null) {
      option.completionCandidates().forEach(values::add);
    }
    return values;
  }

  /** The first line up to its full stop: what stands beside a name in a list. */
  private static String sentence(String... lines) {
    String first = lines.length == 0 ? "" : lines[0];
    int end = first.indexOf(". ");
    String cut = end < 0 ? first : first.substring(0, end);
    return cut.endsWith(".") ? cut.substring(0, cut.length() - 1) : cut;
  }
}
