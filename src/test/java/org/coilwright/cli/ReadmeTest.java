package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class ReadmeTest {
  private static final Pattern SHOWN =
      Pattern.compile("```\n\\$ target/coilwright ([^\n]+)\n(.*?)```", Pattern.DOTALL);

  /** A command and what the README shows of its output. */
  record Example(String command, List<String> lines) {}

  static List<Example> examples() throws IOException {
    String readme = Files.readString(Path.of("README.md"), StandardCharsets.UTF_8);
    List<Example> examples = new ArrayList<>();
    Matcher shown = SHOWN.matcher(readme);
    while (shown.find()) {
      examples.add(new Example(shown.group(1), shown.group(2).lines().toList()));
    }
    return examples;
  }

  @Test
  void the_readme_shows_at_least_three_commands_with_what_they_print() throws IOException {
    assertTrue(examples().size() >= 3);
  }

  /** An ellipsis alone on its line stands for lines left out. */
  @ParameterizedTest
  @MethodSource("examples")
  void what_the_readme_shows_is_what_the_command_prints(Example example) {
    List<String> printed = Cli.run(example.command().split(" ", -1)).out().lines().toList();
    int at = 0;
    boolean leap = false;
    for (String line : example.lines()) {
      if (line.strip().equals("…")) {
        leap = true;
        continue;
      }
      int next = leap ? printed.subList(at, printed.size()).indexOf(line) + at : at;
      assertTrue(next >= at && next < printed.size(), "is not printed: " + line);
      assertEquals(line, printed.get(next));
      at = next + 1;
      leap = false;
    }
    assertTrue(leap || at == printed.size(), "the README leaves out the end without an ellipsis");
  }

  @ParameterizedTest
  @MethodSource("commands")
  void the_table_names_every_command_once_or_with_another_option(String command)
      throws IOException {
    String readme = Files.readString(Path.of("README.md"), StandardCharsets.UTF_8);
    assertTrue(readme.contains("| `" + command), command);
  }

  static List<String> commands() {
    Matcher names = Pattern.compile("^  ([a-z]+) ", Pattern.MULTILINE).matcher(help());
    List<String> commands = new ArrayList<>();
    while (names.find()) {
      commands.add(names.group(1));
    }
    assertTrue(commands.size() > 8, help());
    return commands;
  }

  private static String help() {
    String help = Cli.run("--help").out();
    return help.substring(help.indexOf("\nCommands:"), help.indexOf("\nExamples:"));
  }
}
