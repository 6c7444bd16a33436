package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.coilwright.checklist.Fillings;
import org.coilwright.cli.Cli.Ran;
import org.coilwright.pdf.Filler;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ReadbackCommandTest {
  static final String EXAMPLE = "wiring-examples/guest-house-cylinder.yaml";

  @TempDir Path folder;

  private Path sheet(String... more) {
    return Sheets.of(EXAMPLE, folder.resolve("sheet.pdf"), more);
  }

  private Path filled() throws IOException {
    byte[] sheet = Files.readAllBytes(sheet());
    return Files.write(
        folder.resolve("filled.pdf"),
        Filler.filled(sheet, Fillings.complete(Sheets.checklist(EXAMPLE)).filledIn()));
  }

  @Test
  void a_sheet_filled_in_wholly_and_within_ends_with_0() throws IOException {
    Ran ran = Cli.run("readback", filled().toString());
    assertEquals(0, ran.code(), ran.out() + ran.err());
    assertTrue(ran.out().contains("Complete: all "), ran.out());
    assertEquals("", ran.err());
  }

  @Test
  void an_empty_sheet_ends_with_1_and_says_what_is_missing() {
    Ran ran = Cli.run("readback", sheet().toString());
    assertEquals(1, ran.code(), ran.err());
    assertTrue(ran.out().contains("MISSING"), ran.out());
    assertTrue(ran.out().contains("Row 1.1"), ran.out());
    assertTrue(ran.out().lines().allMatch(line -> Lines.width(line) <= 80), ran.out());
  }

  @Test
  void a_reading_outside_is_told_first() throws IOException {
    byte[] bytes = Filler.with(Files.readAllBytes(filled()), "K1.coil-resistance.reading", "12 Ω");
    Path file = Files.write(folder.resolve("outside.pdf"), bytes);
    Ran ran = Cli.run("readback", file.toString());
    assertEquals(1, ran.code(), ran.err());
    assertTrue(ran.out().contains("written \"12 Ω\", expected "), ran.out());
    assertTrue(ran.out().indexOf("CONTRADICTION") >= 0, ran.out());
  }

  @Test
  void a_reading_outside_is_told_with_the_mistakes_that_would_give_it() throws IOException {
    byte[] bytes =
        Filler.with(Files.readAllBytes(filled()), "wire-U1-32_K1-A1.continuity.reading", "1150 Ω");
    Path file = Files.write(folder.resolve("outside.pdf"), bytes);
    Ran ran = Cli.run("readback", file.toString());
    assertTrue(ran.out().contains(" 1 outside"), ran.out());
    String[] beside = ran.out().split("Probably: ", -1);
    assertEquals(2, beside.length, ran.out());
    assertTrue(beside[1].startsWith("Wire 27 (U1.32 to K1.A1) is on K1.A2 instead of K1.A1."));
    bytes = Files.readAllBytes(sheet());
    bytes = Filler.with(bytes, "wire-U1-32_K1-A1.continuity.reading", "1150 Ω");
    ran = Cli.run("readback", Files.write(file, bytes).toString());
    String[] means = ran.out().split("Probably: ", -1);
    assertEquals(2, means.length, ran.out());
    assertTrue(means[1].contains("instead of K1.A"), ran.out());
    assertTrue(means[1].contains(" or: "), ran.out());
  }

  @Test
  void the_result_as_json_names_every_row() throws IOException {
    Ran ran = Cli.run("readback", "--as", "json", filled().toString());
    assertEquals(0, ran.code(), ran.err());
    assertTrue(ran.out().contains("\"complete\": true"), ran.out());
    assertTrue(ran.out().contains("\"name\": \"K1.coil-resistance\""), ran.out());
  }

  @Test
  void the_filled_in_file_stays_as_it_is() throws IOException {
    Path filled = filled();
    byte[] before = Files.readAllBytes(filled);
    Cli.run("readback", filled.toString());
    assertArrayEquals(before, Files.readAllBytes(filled));
    try (Stream<Path> files = Files.list(folder)) {
      assertEquals(2, files.count());
    }
  }

  @Test
  void it_is_read_from_standard_input_as_well() throws IOException {
    Ran ran = new Cli().stdin(Files.readAllBytes(filled())).with("readback", "-");
    assertEquals(0, ran.code(), ran.err());
  }

  @Test
  void a_sheet_in_german_on_letter_paper_is_read_back_in_german() throws IOException {
    Path sheet = sheet("--language", "de", "--paper", "letter");
    Ran ran = Cli.run("readback", sheet.toString());
    assertEquals(1, ran.code(), ran.err());
    assertTrue(ran.out().contains("nicht ausgeführt."), ran.out());
  }

  /** What it includes lies in a folder that whoever reads it back does not have. */
  @Test
  void what_a_netlist_includes_travels_with_it() throws IOException {
    Path sheet =
        Sheets.of(
            "src/test/resources/netlists/good-three-phase-tub.yaml", folder.resolve("tub.pdf"));
    byte[] bytes = Files.readAllBytes(sheet);
    Ran verified = new Cli().stdin(bytes).with("verify", "-");
    assertEquals(0, verified.code(), verified.out() + verified.err());
    Ran read = new Cli().stdin(bytes).with("readback", "-");
    assertEquals(1, read.code(), read.err());
    byte[] changed = Filler.withAttached(bytes, "contactors.yaml", text -> text + "# more\n");
    Ran refused = new Cli().stdin(changed).with("readback", "-");
    assertEquals(2, refused.code(), refused.out());
    assertTrue(refused.err().contains("contactors.yaml is not the one"), refused.err());
  }

  @Test
  void a_sheet_verifies_as_the_same() {
    Ran ran = Cli.run("verify", sheet().toString());
    assertEquals(0, ran.code(), ran.err());
    int answer = ran.out().indexOf("Same: every result and every expected reading.");
    int about = ran.out().indexOf("What was filled in was not looked at, nor any signature;");
    assertTrue(answer >= 0 && answer < about, ran.out());
  }

  @Test
  void a_result_that_was_another_is_named_with_its_rule_and_table() throws IOException {
    byte[] changed =
        Filler.withResults(
            Files.readAllBytes(sheet()),
            json ->
                json.replace("\"rule\": \"coil.too-high\"", "\"rule\": \"coil.once-too-high\"")
                    .replaceFirst("\"figures/coil\": \"[0-9a-f]{4}", "\"figures/coil\": \"0000"));
    Path file = Files.write(folder.resolve("changed.pdf"), changed);
    Ran ran = Cli.run("verify", file.toString());
    assertEquals(1, ran.code(), ran.err());
    assertTrue(ran.out().contains("coil.too-high at "), ran.out());
    assertTrue(ran.out().contains("coil.once-too-high at "), ran.out());
    assertTrue(ran.out().contains("figures/coil\n"), ran.out());
    assertTrue(ran.out().contains("Different: "), ran.out());
  }

  @Test
  void other_limits_than_printed_are_not_judged_by() throws IOException {
    byte[] changed =
        Filler.withResults(
            Files.readAllBytes(filled()),
            json -> json.replaceFirst("\"expected\": \"0 …", "\"expected\": \"0.001 …"));
    Path file = Files.write(folder.resolve("changed.pdf"), changed);
    Ran ran = Cli.run("readback", file.toString());
    assertEquals(2, ran.code(), ran.out());
    assertTrue(ran.err().contains("expects other readings than the sheet has printed"), ran.err());
    assertEquals("", ran.out());
  }

  @Test
  void a_netlist_that_was_changed_is_refused() throws IOException {
    byte[] changed =
        Filler.withAttached(
            Files.readAllBytes(filled()), "guest-house-cylinder.yaml", text -> text + "\n# more\n");
    Path file = Files.write(folder.resolve("changed.pdf"), changed);
    for (String command : List.of("readback", "verify")) {
      Ran ran = Cli.run(command, file.toString());
      assertEquals(2, ran.code(), ran.out());
      assertTrue(ran.err().contains("the digest differs"), ran.err());
      assertFalse(ran.out().contains("Complete"));
    }
  }
}
