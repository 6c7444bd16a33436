package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.coilwright.cli.Cli.Ran;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ChecklistCommandTest {
  private static final String CLEAR = "wiring-examples/wash-room-tub.yaml";
  private static final String FAULTY = "wiring-examples/attic-mistakes.yaml";

  @TempDir Path folder;

  private List<Path> files() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.sorted().toList();
    }
  }

  @Test
  void it_writes_one_whole_pdf_and_says_where() throws IOException {
    Path pdf = folder.resolve("out put.pdf");
    Ran ran = Cli.run("checklist", CLEAR, "-o", pdf.toString());
    assertEquals(0, ran.code(), ran.err());
    assertEquals("", ran.out());
    assertTrue(ran.err().contains("Wrote " + pdf), ran.err());
    assertEquals(List.of(pdf), files());
    String start = new String(Files.readAllBytes(pdf), 0, 5, StandardCharsets.US_ASCII);
    assertEquals("%PDF-", start);
  }

  @Test
  void a_circuit_with_findings_gets_its_checklist_and_ends_with_1() throws IOException {
    Path pdf = folder.resolve("out.pdf");
    Ran ran = Cli.run("checklist", FAULTY, "--output", pdf.toString());
    assertEquals(1, ran.code(), ran.err());
    assertTrue(Files.size(pdf) > 0);
    assertTrue(ran.err().contains("STOP: "), ran.err());
  }

  @Test
  void the_same_netlist_and_date_give_the_same_bytes() throws IOException {
    Path first = folder.resolve("1.pdf");
    Path second = folder.resolve("2.pdf");
    Cli.run("checklist", CLEAR, "-o", first.toString());
    Cli.run("checklist", CLEAR, "-o", second.toString());
    assertArrayEquals(Files.readAllBytes(first), Files.readAllBytes(second));
  }

  @Test
  void the_date_can_be_given() throws IOException {
    Path first = folder.resolve("1.pdf");
    Path second = folder.resolve("2.pdf");
    Cli.run("checklist", CLEAR, "-o", first.toString());
    new Cli()
        .terminal(Map.of("SOURCE_DATE_EPOCH", "86400"))
        .with("checklist", CLEAR, "-o", second.toString());
    assertFalse(java.util.Arrays.equals(Files.readAllBytes(first), Files.readAllBytes(second)));
  }

  @Test
  void a_checklist_that_was_there_is_replaced_whole() throws IOException {
    Path pdf = folder.resolve("out.pdf");
    Cli.run("checklist", CLEAR, "-o", pdf.toString(), "--language", "de");
    byte[] before = Files.readAllBytes(pdf);
    assertEquals(0, Cli.run("checklist", CLEAR, "-o", pdf.toString()).code());
    assertFalse(Arrays.equals(before, Files.readAllBytes(pdf)));
    assertEquals(List.of(pdf), files());
  }

  @ParameterizedTest
  @ValueSource(strings = {"t.yaml", "t.pdf", "notes", "shop.PDF"})
  void what_is_no_pdf_stays_as_it_is(String name) throws IOException {
    Path there = Files.writeString(folder.resolve(name), "something of mine");
    Ran ran = Cli.run("checklist", CLEAR, "-o", there.toString());
    assertEquals(2, ran.code(), ran.err());
    assertTrue(ran.err().contains("No PDF was written."), ran.err());
    assertEquals("something of mine", Files.readString(there));
  }

  @Test
  void a_name_that_is_no_pdf_is_refused() throws IOException {
    Ran ran = Cli.run("checklist", CLEAR, "-o", folder.resolve("new.txt").toString());
    assertEquals(2, ran.code(), ran.err());
    assertTrue(ran.err().contains("A PDF ends in .pdf, and this name does not: "), ran.err());
    assertEquals(List.of(), files());
  }

  /** An empty file holds nothing that could be lost: a folder's owner may have made it first. */
  @Test
  void an_empty_file_may_be_written_over() throws IOException {
    Path pdf = Files.createFile(folder.resolve("out.pdf"));
    assertEquals(0, Cli.run("checklist", CLEAR, "-o", pdf.toString()).code());
    assertTrue(Files.size(pdf) > 0);
  }

  @ParameterizedTest
  @ValueSource(strings = {"no/such/folder/out.pdf", ".", "plain.txt/out.pdf", "full\u0000.pdf"})
  void a_place_that_cannot_be_written_ends_with_2_and_leaves_nothing(String name)
      throws IOException {
    Path plain = Files.writeString(folder.resolve("plain.txt"), "plain");
    Ran ran = Cli.run("checklist", CLEAR, "-o", folder + "/" + name);
    assertEquals(2, ran.code(), ran.err());
    assertTrue(ran.err().contains("No PDF was written."), ran.err());
    assertEquals(List.of(plain), files());
    assertEquals("plain", Files.readString(plain));
  }

  @Test
  void the_netlist_itself_is_never_overwritten() throws IOException {
    Path netlist = Files.copy(Path.of(CLEAR), folder.resolve("a.yaml"));
    Ran ran = Cli.run("checklist", netlist.toString(), "-o", folder.resolve("./a.yaml").toString());
    assertEquals(2, ran.code(), ran.err());
    assertArrayEquals(Files.readAllBytes(Path.of(CLEAR)), Files.readAllBytes(netlist));
  }

  @Test
  void coverage_prints_every_mistake_with_its_step_and_writes_nothing() throws IOException {
    Ran ran = Cli.run("checklist", CLEAR, "--coverage");
    assertEquals(0, ran.code(), ran.err());
    assertTrue(ran.out().startsWith("step     shows"), ran.out());
    assertTrue(ran.out().contains(" is left out"), ran.out());
    assertTrue(ran.out().contains(", all before mains.\n"), ran.out());
    assertEquals(List.of(), files());
    ran = Cli.run("checklist", "wiring-examples/guest-house-cylinder.yaml", "--coverage");
    assertTrue(ran.out().stripTrailing().endsWith("tried no fewer do."), ran.out());
  }

  @Test
  void coverage_as_json_counts_what_it_lists() {
    Ran ran = Cli.run("checklist", CLEAR, "--coverage", "--as", "json");
    assertEquals(0, ran.code(), ran.err());
    long shown = ran.out().lines().filter(l -> l.contains("\"fate\": \"BEFORE_MAINS\"")).count();
    assertTrue(shown > 0 && ran.out().contains("\"beforeMains\": " + shown), ran.out());
  }

  /** Nobody reads 0.000024 kΩ on an instrument. */
  @Test
  void coverage_prints_readings_in_units_that_fit_them() {
    for (String example : List.of(CLEAR, FAULTY, "wiring-examples/guest-house-cylinder.yaml")) {
      String out = Cli.run("checklist", example, "--coverage").out();
      assertTrue(out.contains("would read"), out);
      assertFalse(out.matches("(?s).* 0\\.0[0-9]* … 0\\.[0-9]+ [kM]Ω.*"), out);
    }
  }

  @Test
  void coverage_counts_the_mistakes_of_each_step() {
    String json = Cli.run("checklist", CLEAR, "--coverage", "--as", "json").out();
    Pattern step = Pattern.compile("\"step\": \"(?:wire )?[0-9.]+\",\\s*\"mistakes\": ([0-9]+)");
    long total = step.matcher(json).results().mapToLong(m -> Long.parseLong(m.group(1))).sum();
    assertTrue(total > 0 && json.contains("\"beforeMains\": " + total), json);
    String text = Cli.run("checklist", CLEAR, "--coverage").out();
    assertTrue(text.contains("mistakes that show here first"), text);
  }

  @Test
  void coverage_in_another_language_is_refused() {
    Ran ran = Cli.run("checklist", CLEAR, "--coverage", "--language", "de");
    assertEquals(2, ran.code());
    assertEquals("", ran.out());
    assertTrue(ran.err().contains("--language goes with the PDF only"), ran.err());
  }

  @Test
  void a_form_without_the_table_is_refused() {
    String pdf = folder.resolve("a.pdf").toString();
    Ran ran = Cli.run("checklist", CLEAR, "-o", pdf, "--as", "json");
    assertEquals(2, ran.code());
    assertTrue(ran.err().contains("--as FORM goes with --coverage only"), ran.err());
  }

  @Test
  void coverage_and_a_pdf_at_once_are_refused() {
    Ran ran = Cli.run("checklist", CLEAR, "--coverage", "-o", folder.resolve("a.pdf").toString());
    assertEquals(2, ran.code());
    assertTrue(ran.err().startsWith("Not both: "), ran.err());
  }

  @Test
  void without_a_place_to_write_it_asks_for_one() {
    Ran ran = Cli.run("checklist", CLEAR);
    assertEquals(2, ran.code());
    assertTrue(ran.err().startsWith("-o is missing: "), ran.err());
  }
}
