// Over 250 lines: one way of calling after the other.
package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.coilwright.cli.Cli.Ran;
import org.coilwright.rule.RuleFacts;
import org.coilwright.table.Reference;
import org.coilwright.table.Tables;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CommandLineTest {
  private static final String CLEAR = "wiring-examples/wash-room-tub.yaml";
  private static final String FAULTY = "wiring-examples/attic-mistakes.yaml";

  @TempDir Path folder;

  @ParameterizedTest
  @CsvSource({
    "0, check, " + CLEAR,
    "1, check, " + FAULTY,
    "1, check --fail-on stop, " + FAULTY,
    "1, check --fail-on=note --as json, " + FAULTY,
    "0, states, " + CLEAR,
    "0, faults, " + CLEAR,
    "0, faults, " + FAULTY,
    "0, states, " + FAULTY,
    "0, explain, coil.too-low",
    "2, explain, coil.to-low",
    "0, schema, --color=never",
    "0, new, --color=never",
    "0, --version, --help",
    "0, check, --help",
    "2, check, no-such-file.yaml",
    "2, check, wiring-examples",
    "2, states, no-such-file.yaml",
    "2, faults, no-such-file.yaml",
    "2, check --as xml, " + CLEAR,
    "2, check --fale-on stop, " + CLEAR,
    "2, chekc, " + CLEAR,
    "2, check, ''",
  })
  void each_kind_of_end_has_its_exit_code(int code, String before, String last) {
    String line = last.isEmpty() ? before : before + " " + last;
    Ran ran = Cli.run(line.split(" ", -1));
    assertEquals(code, ran.code(), line + "\n" + ran.err());
    assertFalse(ran.err().contains("\tat "), ran.err());
    assertFalse(ran.err().contains("Exception"), ran.err());
  }

  @Test
  void without_arguments_it_shows_examples_and_ends_with_2() {
    Ran ran = Cli.run();
    assertEquals(2, ran.code());
    assertEquals("", ran.out());
    assertTrue(ran.err().contains("coilwright check boiler.yaml"), ran.err());
  }

  @ParameterizedTest
  @CsvSource({
    "chekc x.yaml, check",
    "check --fail-onn stop x.yaml, --fail-on",
    "explain coil.to-low, coil.too-low",
    "explain supresion, suppression",
    "check wiring-examples/attic-mistake.yaml, attic-mistakes.yaml",
  })
  void a_near_name_is_offered_and_never_taken(String line, String near) {
    Ran ran = Cli.run(line.split(" ", -1));
    assertEquals(2, ran.code());
    assertTrue(ran.err().replaceAll("\\s+", " ").contains("id you mean "), ran.err());
    assertTrue(ran.err().contains(near), ran.err());
    assertEquals("", ran.out());
  }

  @Test
  void a_wrong_word_for_an_option_lists_the_right_ones() {
    Ran ran = Cli.run("check", "--as", "xml", CLEAR);
    assertTrue(ran.err().contains("--as takes text, json, sarif or ndjson, not xml."), ran.err());
  }

  @Test
  void several_files_make_a_line_each_and_one_bad_file_does_not_stop_the_rest() {
    Ran ran = Cli.run("check", CLEAR, "no-such-file.yaml", FAULTY);
    assertEquals(2, ran.code());
    List<String> lines = ran.out().lines().toList();
    assertTrue(lines.get(0).startsWith(CLEAR), ran.out());
    assertTrue(lines.get(1).startsWith("no-such-file.yaml"), ran.out());
    assertTrue(lines.get(1).contains("not checked"), ran.out());
    assertTrue(lines.get(2).contains("STOP: "), ran.out());
    assertTrue(ran.out().contains("3 files, 1 not checked; STOP: "), ran.out());
    assertTrue(ran.err().contains("no-such-file.yaml"), ran.err());
  }

  @Test
  void a_dash_reads_standard_input() throws IOException {
    Ran piped = new Cli().stdin(Files.readAllBytes(Path.of(CLEAR))).with("check", "-");
    Ran named = Cli.run("check", CLEAR);
    assertEquals(0, piped.code(), piped.err());
    assertEquals(named.out().replace(CLEAR, "-"), piped.out());
  }

  @Test
  void the_same_input_gives_the_same_bytes() {
    for (String form : List.of("text", "json", "sarif")) {
      String[] line = {"check", "--as", form, FAULTY};
      assertEquals(Cli.run(line).out(), Cli.run(line).out());
    }
  }

  @Test
  void colour_follows_the_option_the_terminal_and_the_environment() {
    String[] line = {"check", FAULTY};
    assertFalse(coloured(Cli.run(line)));
    assertTrue(coloured(new Cli().terminal(Map.of()).with(line)));
    assertTrue(coloured(new Cli().terminal(Map.of("NO_COLOR", "")).with(line)));
    assertFalse(coloured(new Cli().terminal(Map.of("NO_COLOR", "1")).with(line)));
    assertFalse(coloured(new Cli().terminal(Map.of("TERM", "dumb")).with(line)));
    assertFalse(coloured(new Cli().terminal(Map.of()).with("check", "--color=never", FAULTY)));
    assertTrue(coloured(Cli.run("check", "--color", "always", FAULTY)));
  }

  private static boolean coloured(Ran ran) {
    return ran.out().contains("\u001b[");
  }

  @Test
  void new_writes_a_netlist_that_has_nothing_to_stop_or_to_fix() {
    Path file = folder.resolve("my heater.yaml");
    Ran written = Cli.run("new", file.toString());
    assertEquals(0, written.code(), written.err());
    assertTrue(written.err().contains("coilwright check '"), written.err());
    Ran checked = Cli.run("check", file.toString());
    assertEquals(0, checked.code(), checked.out() + checked.err());
    assertTrue(checked.out().contains(": 0 to stop, 0 to fix, "), checked.out());
  }

  @Test
  void new_writes_a_netlist_that_can_be_rehearsed_and_starts_nothing_falsely() {
    Path file = folder.resolve("heater.yaml");
    Cli.run("new", file.toString());
    Ran ran = Cli.run("rehearse", file.toString());
    assertEquals(0, ran.code(), ran.out() + ran.err());
    assertTrue(ran.out().contains("No false start in what was rehearsed."), ran.out());
  }

  @Test
  void new_without_a_file_prints_the_same_netlist() throws IOException {
    Path file = folder.resolve("a.yaml");
    Cli.run("new", file.toString());
    assertEquals(Files.readString(file), Cli.run("new").out());
  }

  @Test
  void new_never_overwrites() throws IOException {
    Path file = Files.writeString(folder.resolve("mine.yaml"), "mine");
    Ran ran = Cli.run("new", file.toString());
    assertEquals(2, ran.code());
    assertEquals("mine", Files.readString(file));
  }

  @Test
  void new_says_why_it_cannot_write() {
    Ran ran = Cli.run("new", folder.resolve("none/a.yaml").toString());
    assertEquals(2, ran.code());
    assertTrue(ran.err().contains("folder does not exist"), ran.err());
  }

  @Test
  void schema_is_printed_as_it_is_shipped() {
    Ran ran = Cli.run("schema");
    assertEquals(0, ran.code());
    assertTrue(ran.out().contains("https://json-schema.org/draft/2020-12/schema"), ran.out());
  }

  @Test
  void explain_tells_why_and_from_which_source() {
    Ran ran = Cli.run("explain", "coil.too-low");
    assertEquals(0, ran.code());
    for (String part : List.of("Looks at:", "Why:", "Do:", "Does not see:", "From:")) {
      assertTrue(ran.out().contains(part), part);
    }
  }

  /** Title, edition, publisher and how it was seen, of every document behind every source. */
  @Test
  void explain_gives_the_full_reference_of_each_source() {
    Tables tables = Tables.load();
    for (RuleFacts facts : Inspector.standard().facts()) {
      String out = Cli.run("explain", facts.id()).out().replaceAll("\\s+", " ");
      for (String source : facts.sources()) {
        for (Reference document : tables.references(source)) {
          assertTrue(out.contains(document.full()), () -> facts.id() + ": " + document.full());
        }
      }
    }
  }

  @Test
  void explain_lists_every_rule() {
    String all = Cli.run("explain").out();
    Inspector.standard().facts().forEach(f -> assertTrue(all.contains(f.id()), f.id()));
    assertEquals(Inspector.standard().facts().size(), all.lines().count());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"check", "states", "faults", "choose", "explain", "schema", "new", "checklist"})
  void every_command_has_help_with_an_example(String command) {
    Ran ran = Cli.run(command, "--help");
    assertEquals(0, ran.code(), ran.err());
    assertTrue(ran.out().contains("  coilwright " + command), ran.out());
    assertEquals(ran.out(), Cli.run("help", command).out());
  }

  @Test
  void the_version_is_the_one_of_the_build() throws IOException {
    String pom = Files.readString(Path.of("pom.xml"), StandardCharsets.UTF_8);
    String version = pom.substring(pom.indexOf("<version>") + 9, pom.indexOf("</version>"));
    List<String> said = Cli.run("--version").out().lines().toList();
    assertEquals(List.of("coilwright " + version, "Class archive: none was named."), said);
  }

  @ParameterizedTest
  @CsvSource({"100, 100", "400, 120", "7, 80", "wide, 80", "'', 80", "99999999999, 80"})
  void a_terminal_is_as_wide_as_its_columns_within_what_can_be_read(String asked, int widest) {
    Cli terminal = new Cli().terminal(Map.of("COLUMNS", asked, "NO_COLOR", "1", "TERM", "any"));
    String out = terminal.with("check", "wiring-examples/attic-mistakes.yaml").out();
    int longest = out.lines().mapToInt(Lines::width).max().orElse(0);
    assertTrue(longest <= widest && longest > widest - 3, longest + " of " + widest);
  }

  @Test
  void a_file_is_80_wide_whatever_the_terminal_is() {
    String[] check = {"check", "wiring-examples/attic-mistakes.yaml"};
    Cli file = new Cli().environment(Map.of("COLUMNS", "120"));
    assertEquals(Cli.run(check).out(), file.with(check).out());
  }

  @Test
  void a_fault_of_the_program_ends_with_3_and_names_the_version_without_a_trace() {
    java.io.InputStream broken =
        new java.io.ByteArrayInputStream(new byte[0]) {
          @Override
          public byte[] readNBytes(int length) {
            throw new IllegalStateException("no such thing");
          }
        };
    java.io.ByteArrayOutputStream err = new java.io.ByteArrayOutputStream();
    Console console =
        new Console(
            broken,
            new java.io.PrintStream(java.io.OutputStream.nullOutputStream()),
            new java.io.PrintStream(err, true, StandardCharsets.UTF_8),
            Map.of(),
            java.util.Set.of(),
            () -> java.time.LocalDate.EPOCH);
    assertEquals(3, new Main(console).run("check", "-"));
    String said = err.toString(StandardCharsets.UTF_8);
    assertTrue(said.contains("coilwright " + Version.text()), said);
    assertTrue(said.contains("Please report it"), said);
    assertFalse(said.contains("\tat "), said);
  }

  /** The usual words are not read by the library that reads all others. */
  @Test
  void the_usual_words_mean_the_same_as_when_all_is_said() throws IOException {
    assertEquals(Cli.run("check", "--as", "text", FAULTY), Cli.run("check", FAULTY));
    assertEquals(
        Cli.run("check", "--fail-on", "fix", CLEAR, "none"), Cli.run("check", CLEAR, "none"));
    Path one = folder.resolve("one.pdf");
    Path other = folder.resolve("other.pdf");
    assertEquals(0, Cli.run("checklist", CLEAR, "-o", one.toString()).code());
    assertEquals(0, Cli.run("checklist", "--output", other.toString(), CLEAR).code());
    assertArrayEquals(Files.readAllBytes(one), Files.readAllBytes(other));
  }
}
