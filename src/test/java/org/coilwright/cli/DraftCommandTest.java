package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.coilwright.cli.Cli.Ran;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class DraftCommandTest {
  private static final Path BRIEFS = Path.of("src/test/resources/briefs");
  private static final boolean ACCEPT = Boolean.getBoolean("accept");

  @TempDir Path folder;

  static List<Path> briefs() throws IOException {
    try (Stream<Path> files = Files.list(BRIEFS)) {
      return files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList();
    }
  }

  @ParameterizedTest
  @MethodSource("briefs")
  void a_brief_gives_this_netlist_and_this_text(Path brief) throws IOException {
    Ran ran = Cli.run("draft", brief.toString());
    // each new rule changes the number of checks
    String counts = "[0-9]+ notes?; [0-9]+ checks? satisfied, [0-9]+ could";
    String said =
        "ends with %s%n%n%s%n%s"
            .formatted(ran.code(), ran.err(), ran.out())
            .replaceAll(counts, "… notes; … checks satisfied, … could");
    Path expected = Path.of(brief.toString().replace(".yaml", ".expected.txt"));
    if (ACCEPT) {
      Files.writeString(expected, said);
    }
    assertEquals(Files.readString(expected), said);
  }

  @ParameterizedTest
  @CsvSource({"guest-house, relay and contactor", "tub, relay alone", "cabin, relay and contactor"})
  void a_shipped_example_reduced_to_its_brief_gives_a_circuit_of_its_arrangement(
      String brief, String arrangement) {
    Ran ran = Cli.run("draft", BRIEFS.resolve(brief + ".yaml").toString());
    assertEquals(0, ran.code());
    assertTrue(ran.out().contains("# Drafted: " + arrangement + ", "), ran.out());
  }

  @Test
  void what_is_written_is_read_and_passes() throws IOException {
    Path out = folder.resolve("boiler.yaml");
    Ran ran = Cli.run("draft", BRIEFS.resolve("tub.yaml").toString(), "-o", out.toString());
    assertEquals(0, ran.code(), ran.err());
    assertTrue(
        Files.readString(out).startsWith("# yaml-language-server: $schema="), "no schema line");
    Ran checked = Cli.run("check", out.toString());
    assertEquals(0, checked.code(), checked.out());
    Ran again = Cli.run("draft", BRIEFS.resolve("tub.yaml").toString(), "-o", out.toString());
    assertEquals(2, again.code());
    assertTrue(again.err().contains("is there already"), again.err());
  }

  @Test
  void options_say_the_same_as_a_brief() {
    Ran typed =
        Cli.run(
            "draft",
            "--title=Soaking tub element, wash room",
            "--practice=iec",
            "--mains=1 phase, 230 V ± 10 %, TN-S, 1.5kA, 0.45 ohm",
            "--island=none",
            "--load=1.5kW, 230V, single",
            "--vessel=120 litres, open",
            "--controller=24 V DC ± 5 % 120 mA, SELV; contact 0.5 A at 30 V DC-13, 1 A at 30 V DC",
            "--air=5..40 °C",
            "--board-to-box=16m",
            "--box-to-load=2m",
            "--controller-to-box=14m");
    Ran written = Cli.run("draft", BRIEFS.resolve("tub.yaml").toString());
    assertEquals(0, typed.code(), typed.err());
    // the brief alone says the least load of the contact
    assertEquals(written.out().replace(", least-load: 1 mA at 5 V", ""), typed.out());
  }

  @Test
  void questions_are_answered_through_a_pipe_and_the_answers_are_kept() throws IOException {
    Path out = folder.resolve("tank.yaml");
    String answers = "?\n2 kW, 230 V\n\n12 V DC 100 mA; contact 1 A 30 V DC\n";
    Ran ran =
        new Cli()
            .stdin(answers.getBytes(StandardCharsets.UTF_8))
            .with("draft", "-o", out.toString());
    assertEquals(0, ran.code(), ran.err());
    assertTrue(ran.err().contains("From the element's nameplate"), ran.err());
    Path kept = folder.resolve("tank-brief.yaml");
    assertTrue(Files.readString(kept).contains("load: {power: 2 kW, voltage: 230 V}"));
    assertEquals(Files.readString(out), Cli.run("draft", kept.toString()).out());
  }

  @Test
  void a_script_that_answers_nonsense_or_nothing_is_told_which_question() {
    Ran nonsense = new Cli().stdin("9 apples\n".getBytes(StandardCharsets.UTF_8)).with("draft");
    assertEquals(2, nonsense.code());
    assertTrue(nonsense.err().contains("\"9 apples\" is none of what belongs there"));
    Ran nothing = Cli.run("draft");
    assertEquals(2, nothing.code());
    assertTrue(nothing.err().contains("No answer to \"Load"), nothing.err());
  }

  @Test
  void a_person_is_asked_again() {
    Ran ran =
        new Cli()
            .stdin(
                "9 apples\n2 kW, 230 V\n\nnone; contact 1 A 30 V DC\n"
                    .getBytes(StandardCharsets.UTF_8))
            .terminal(java.util.Map.of())
            .with("draft", "-o", folder.resolve("asked.yaml").toString());
    assertEquals(0, ran.code(), ran.err());
    assertTrue(ran.err().contains("9 apples"), ran.err());
  }

  @Test
  void a_brief_and_options_together_are_refused() {
    Ran ran = Cli.run("draft", BRIEFS.resolve("tub.yaml").toString(), "--air", "50C");
    assertEquals(2, ran.code());
    assertFalse(ran.err().isEmpty());
  }

  @Test
  void a_netlist_is_no_brief() {
    Ran ran = Cli.run("draft", "wiring-examples/wash-room-tub.yaml");
    assertEquals(2, ran.code());
    assertTrue(ran.err().contains("coilwright check"), ran.err());
  }

  @ParameterizedTest
  @EnumSource(NewCommand.Like.class)
  void a_netlist_to_start_from_passes_as_it_is_written(NewCommand.Like like) throws IOException {
    Path file = folder.resolve("like.yaml");
    Ran written = Cli.run("new", "--like", like.toString(), file.toString());
    assertEquals(0, written.code(), written.err());
    assertTrue(Files.readString(file).startsWith("# yaml-language-server: $schema="));
    Ran checked = Cli.run("check", file.toString());
    assertEquals(0, checked.code(), checked.out());
  }

  @ParameterizedTest
  @CsvSource({
    "relay, a part",
    "release, Release voltage",
    "kW, a unit",
    "DC-13, electromagnets on direct current",
    "ac15, AC-15",
    "B300, 1.50 A at 240 V",
    "battery-plant, a safety note"
  })
  void explain_knows_parts_keys_units_categories_letters_and_notes(String word, String says) {
    Ran ran = Cli.run("explain", word);
    assertEquals(0, ran.code(), ran.err());
    assertTrue(ran.out().contains(says), ran.out());
  }

  @Test
  void every_category_has_its_words() {
    new org.coilwright.netlist.Glossary()
        .categories()
        .forEach(c -> assertEquals(0, Cli.run("explain", c).code(), c));
  }
}
