package org.coilwright.cli;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import picocli.AutoComplete;
import picocli.CommandLine;

/** What shells need to complete a command line. */
final class Completions {
  private static final String NAME = "coilwright";

  private final CommandLine root;
  private final List<Commands.Command> commands;

  Completions(CommandLine root) {
    this.root = root;
    this.commands = Commands.of(root.getCommandSpec());
  }

  /** For bash; zsh takes it as well. */
  String bash() {
    return AutoComplete.bash(NAME, root);
  }

  /** For fish. */
  String fish() {
    StringBuilder out = new StringBuilder("# Completions of coilwright for fish.\n");
    String first = "__fish_use_subcommand";
    for (Commands.Command command : commands) {
      out.append(
          "complete -c coilwright -f -n %s -a %s -d %s\n"
              .formatted(first, command.name(), quoted(command.description())));
    }
    for (Commands.Choice option : Commands.options(root.getCommandSpec())) {
      out.append(fish(first, option));
    }
    for (Commands.Command command : commands) {
      String here = quoted("__fish_seen_subcommand_from " + command.name());
      command.options().forEach(option -> out.append(fish(here, option)));
    }
    return out.toString();
  }

  private static String fish(String where, Commands.Choice option) {
    StringBuilder line = new StringBuilder("complete -c coilwright -n ").append(where);
    for (String name : option.names()) {
      line.append(name.startsWith("--") ? " -l " + name.substring(2) : " -s " + name.substring(1));
    }
    if (!option.values().isEmpty()) {
      line.append(" -x -a ").append(quoted(String.join(" ", option.values())));
    } else if (option.takes()) {
      line.append(" -r");
    }
    return line.append(" -d ").append(quoted(option.description())).append('\n').toString();
  }

  /** For PowerShell. */
  String powerShell() {
    StringBuilder out = new StringBuilder();
    out.append("# Completions of coilwright for PowerShell.\n");
    out.append("Register-ArgumentCompleter -Native -CommandName coilwright, coilwright.cmd");
    out.append(" -ScriptBlock {\n");
    out.append("    param($wordToComplete, $commandAst, $cursorPosition)\n");
    out.append("    $commands = [ordered]@{\n");
    commands.forEach(c -> out.append(pair(c.name(), quotedTwice(c.description()))));
    out.append("    }\n    $options = @{\n");
    out.append(pair("", list(names(Commands.options(root.getCommandSpec())))));
    commands.forEach(c -> out.append(pair(c.name(), list(names(c.options())))));
    out.append("    }\n    $values = @{\n");
    for (Commands.Command command : commands) {
      for (Commands.Choice option : command.options()) {
        if (!option.values().isEmpty()) {
          option
              .names()
              .forEach(n -> out.append(pair(command.name() + " " + n, list(option.values()))));
        }
      }
    }
    out.append(
        """
            }
            $before = @($commandAst.CommandElements | Select-Object -Skip 1 |
                Where-Object { $_.Extent.EndOffset -lt $cursorPosition } |
                ForEach-Object { $_.ToString() })
            $command = @($before | Where-Object { $commands.Contains($_) }) | Select-Object -First 1
            $last = if ($before.Count -gt 0) { $before[-1] } else { '' }
            $offered = if ($values.ContainsKey("$command $last")) { $values["$command $last"] }
                elseif ($command) { $options[$command] }
                else { @($commands.Keys) + $options[''] }
            $offered | Where-Object { $_ -like "$wordToComplete*" } | ForEach-Object {
                $tip = if ($commands.Contains($_)) { $commands[$_] } else { $_ }
                [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $tip)
            }
        }
        """);
    return out.toString();
  }

  private static List<String> names(List<Commands.Choice> options) {
    return options.stream().flatMap(option -> option.names().stream()).toList();
  }

  private static String pair(String key, String value) {
    return "        " + quotedTwice(key) + " = " + value + "\n";
  }

  private static String list(List<String> values) {
    return values.stream()
        .map(Completions::quotedTwice)
        .collect(Collectors.joining(", ", "@(", ")"));
  }

  /** As fish takes it. */
  private static String quoted(String text) {
    return "'" + text.replace("\\", "\\\\").replace("'", "\\'") + "'";
  }

  /** As PowerShell takes it. */
  private static String quotedTwice(String text) {
    return "'" + text.replace("'", "''") + "'";
  }

  /** Every name that a completion has to offer. */
  List<String> offered() {
    return Stream.concat(
            commands.stream().map(Commands.Command::name),
            commands.stream().flatMap(c -> names(c.options()).stream()))
        .distinct()
        .toList();
  }
}
