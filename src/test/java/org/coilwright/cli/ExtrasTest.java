package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What goes beside the program: completions, the manual page, the launchers. */
class ExtrasTest {
  private static final Map<String, String> EXTRAS = Extras.all();

  @TempDir Path folder;

  private static String extra(String name) {
    return Objects.requireNonNull(EXTRAS.get(name), name);
  }

  private static List<String> offered() {
    return new Completions(new Main(Console.ofProcess()).whole()).offered();
  }

  @Test
  void every_command_and_option_is_completed_in_every_shell_and_told_in_the_manual() {
    assertTrue(offered().size() > 30, offered().toString());
    for (String name : offered()) {
      String bare = name.replaceFirst("^-+", "");
      assertTrue(extra("completions/coilwright.bash").contains(name), name);
      assertTrue(extra("completions/coilwright.ps1").contains("'" + name + "'"), name);
      Pattern fish = Pattern.compile(" -(a|l|s) " + Pattern.quote(bare) + " ");
      assertTrue(fish.matcher(extra("completions/coilwright.fish")).find(), name);
      String manual = extra("man/man1/coilwright.1").replace("\\-", "-");
      assertTrue(manual.contains(name), name);
    }
  }

  private static boolean isThere(String program) {
    String path = System.getenv().getOrDefault("PATH", "");
    return Stream.of(path.split(File.pathSeparator, -1))
        .anyMatch(folder -> Files.isExecutable(Path.of(folder, program)));
  }

  /** A shell that is not there is not asked; what it would be given is compared above. */
  @Test
  void shells_take_their_completions() throws Exception {
    Map<String, String> asked =
        Map.of(
            "bash",
            "source '%s'; COMP_WORDS=(coilwright check --as ''); COMP_CWORD=3;"
                + " _complete_coilwright; echo ${COMPREPLY[@]}",
            "fish",
            "source '%s'; complete -C 'coilwright check --as ' | string replace -r '\\t.*' ''");
    for (Map.Entry<String, String> shell : asked.entrySet()) {
      String file = "completions/coilwright." + shell.getKey();
      Path script = Files.writeString(folder.resolve(shell.getKey()), extra(file));
      if (isThere(shell.getKey())) {
        Process process =
            new ProcessBuilder(shell.getKey(), "-c", shell.getValue().formatted(script)).start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        process.waitFor();
        for (String form : List.of("text", "json", "sarif")) {
          assertTrue(said.contains(form), said);
        }
      }
    }
  }

  @Test
  void no_line_of_the_manual_is_taken_for_a_request_by_accident() {
    Pattern request = Pattern.compile("\\.(TH|SH|SS|TP|PP|B|I|nf|fi)\\b.*");
    for (String line : extra("man/man1/coilwright.1").lines().toList()) {
      assertFalse(line.startsWith("'"), line);
      assertTrue(!line.startsWith(".") || request.matcher(line).matches(), line);
    }
  }

  @Test
  void both_launchers_start_java_alike() throws IOException {
    List<List<String>> options = new ArrayList<>();
    for (String name : List.of("coilwright", "coilwright.cmd")) {
      String text = Files.readString(Path.of("src/launcher", name));
      int from = text.indexOf(name.endsWith(".cmd") ? ":start" : "exec 3<&0");
      String start = text.substring(from, text.indexOf("org.coilwright.cli.Launch", from));
      options.add(
          Pattern.compile("-(X|D)[^\\s\"$%]+")
              .matcher(start)
              .results()
              .map(found -> found.group())
              .filter(o -> !o.contains("terminal") && !o.startsWith("-XX:SharedArchiveFile"))
              .sorted()
              .toList());
    }
    assertEquals(options.get(0), options.get(1));
    assertTrue(options.get(0).size() > 8, options.toString());
  }

  @Test
  void the_windows_launcher_takes_the_exit_code_where_it_stands() throws IOException {
    String text = Files.readString(Path.of("src/launcher/coilwright.cmd"));
    assertTrue(text.lines().count() == text.split("\r\n", -1).length - 1, "a line without CR");
    List<String> lines = text.lines().toList();
    int start = 0;
    for (int i = 0; i < lines.size(); i++) {
      String line = lines.get(i);
      boolean block = line.matches("(?i)(if|else|for) .*\\(\\s*") || line.strip().startsWith(")");
      assertFalse(block, "a block: " + line);
      start = line.contains("org.coilwright.cli.Launch") ? i : start;
    }
    assertEquals("set \"code=%ERRORLEVEL%\"", lines.get(start + 1));
    assertTrue(lines.get(start).endsWith(" %*"), lines.get(start));
  }

  /** There is no Windows here: what can be told from its text is. */
  @Test
  void the_windows_launcher_quotes_every_path_and_jumps_only_to_what_is_there() throws IOException {
    List<String> lines =
        Files.readString(Path.of("src/launcher/coilwright.cmd"))
            .lines()
            .filter(l -> !l.startsWith("rem "))
            .toList();
    Pattern path = Pattern.compile("%(here|java|candidate|home|archive|unfit|LOCALAPPDATA)%");
    for (String line : lines) {
      path.matcher(line)
          .results()
          .forEach(
              use -> {
                String before = line.substring(0, use.start());
                assertTrue(before.chars().filter(c -> c == '"').count() % 2 == 1, line);
              });
      assertTrue(
          line.chars().filter(c -> c == '"').count() % 2 == 0 || line.contains(":\"="), line);
      Matcher jump = Pattern.compile("(?:goto|call) :?(\\w+)").matcher(line);
      while (jump.find()) {
        assertTrue(lines.contains(":" + jump.group(1)), line);
      }
    }
    // a program that is called by its bare name is looked for where the user stands, first
    List<String> own =
        List.of("@echo", "set", "setlocal", "if", "for", "goto", "call", "exit", ">&2");
    for (String line : lines) {
      String first = line.split(" ", 2)[0];
      boolean known = line.isEmpty() || line.startsWith(":") || own.contains(first);
      assertTrue(known || first.startsWith("\"%"), line);
    }
  }
}
