package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.coilwright.checklist.Fillings;
import org.coilwright.cli.Cli.Ran;
import org.coilwright.pdf.Filler;
import org.coilwright.pdf.Spoiler;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Whatever is given back: a clear message, 2, nothing run and nothing written. */
class HostileSheetTest {
  private static final String EXAMPLE = "wiring-examples/wash-room-tub.yaml";
  private static final String READING = "K1.coil-resistance.reading";
  private static final String PASS = "K1.coil-resistance.pass";

  @TempDir static Path made;
  private static byte[] filled;

  @TempDir Path folder;

  @BeforeAll
  static void fill() throws IOException {
    byte[] sheet = Files.readAllBytes(Sheets.of(EXAMPLE, made.resolve("sheet.pdf")));
    filled = Filler.filled(sheet, Fillings.complete(Sheets.checklist(EXAMPLE)).filledIn());
  }

  private void refused(byte[] pdf, String why) throws IOException {
    Path file = Files.write(folder.resolve("given back.pdf"), pdf);
    Path record = folder.resolve("record.pdf");
    Ran ran = Cli.run("readback", file.toString(), "-o", record.toString());
    assertEquals(2, ran.code(), ran.out() + ran.err());
    assertEquals("", ran.out());
    assertTrue(squeezed(ran.err()).contains(why), ran.err());
    assertTrue(ran.err().contains("Do:    "), ran.err());
    assertFalse(ran.err().contains("Exception"), ran.err());
    assertTrue(ran.err().lines().allMatch(line -> Lines.width(line) <= 80), ran.err());
    try (Stream<Path> files = Files.list(folder)) {
      assertEquals(List.of(file), files.toList());
    }
  }

  private static String squeezed(String text) {
    return text.replaceAll("\\s+", " ");
  }

  @Test
  void the_file_it_all_begins_with_can_be_read() throws IOException {
    Path file = Files.write(folder.resolve("filled.pdf"), filled);
    assertEquals(0, Cli.run("readback", file.toString()).code());
  }

  @ParameterizedTest
  @ValueSource(doubles = {0, 0.00001, 0.001, 0.1, 0.5, 0.9, 0.99, 0.99999})
  void a_truncated_file(double share) throws IOException {
    byte[] cut = Arrays.copyOf(filled, (int) (share * filled.length));
    Path file = Files.write(folder.resolve("cut.pdf"), cut);
    Ran ran = Cli.run("readback", file.toString(), "-o", folder.resolve("r.pdf").toString());
    assertEquals(2, ran.code(), ran.out() + ran.err());
    assertTrue(ran.err().contains("Nothing was judged."), ran.err());
    assertFalse(Files.exists(folder.resolve("r.pdf")));
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "secret"})
  void an_encrypted_file(String password) throws IOException {
    refused(Spoiler.encrypted(filled, password), "it is encrypted.");
  }

  @Test
  void a_file_of_a_hundred_megabytes_is_not_even_opened() throws IOException {
    Path file = folder.resolve("large.pdf");
    Files.write(file, filled);
    try (RandomAccessFile large = new RandomAccessFile(file.toFile(), "rw")) {
      large.setLength(100L << 20);
    }
    for (String command : List.of("readback", "verify")) {
      Ran ran = Cli.run(command, file.toString());
      assertEquals(2, ran.code(), ran.err());
      assertTrue(ran.err().contains("it is larger than 32 MiB"), ran.err());
    }
  }

  @Test
  void no_pdf_at_all() throws IOException {
    refused(Files.readAllBytes(Path.of(EXAMPLE)), "it is no PDF.");
    refused(new byte[0], "it is no PDF.");
    refused("%PDF-1.7".getBytes(StandardCharsets.US_ASCII), "it is cut off.");
    refused("%PDF-1.7\n%%EOF".getBytes(StandardCharsets.US_ASCII), "it is damaged, or no PDF.");
  }

  @Test
  void no_file_or_a_folder() {
    for (String name : List.of("no such file.pdf", folder.toString(), "", "\0")) {
      Ran ran = Cli.run("readback", name);
      assertEquals(2, ran.code(), ran.err());
      assertTrue(ran.err().contains("Nothing was judged."), ran.err());
    }
  }

  @Test
  void the_pdf_of_another_program() throws IOException {
    refused(Spoiler.blank(), "it is no checklist of coilwright: its results are not attached.");
    refused(Spoiler.withoutFiles(filled), "it is no checklist of coilwright");
  }

  @Test
  void a_field_that_is_missing() throws IOException {
    refused(Spoiler.without(filled, READING), "it lacks form fields of the sheet (" + READING);
  }

  @Test
  void a_field_that_is_there_twice() throws IOException {
    refused(Spoiler.twice(filled, READING), "its form field \"" + READING + "\" is there twice.");
  }

  @Test
  void a_field_that_hangs_below_itself() throws IOException {
    refused(Spoiler.endless(filled, READING), "its form fields are nested without end.");
  }

  @Test
  void a_field_of_another_type() throws IOException {
    refused(
        Spoiler.entry(filled, READING, "FT", Spoiler.name("Btn")),
        "is of another type than printed.");
    refused(
        Spoiler.entry(filled, PASS, "FT", Spoiler.name("Tx")), "holds something other than text.");
    refused(
        Spoiler.entry(filled, PASS, "FT", Spoiler.name("Ch")), "is of another type than printed.");
  }

  @Test
  void a_value_of_another_type() throws IOException {
    refused(
        Spoiler.entry(filled, READING, "V", Spoiler.number()), "holds something other than text.");
    refused(
        Spoiler.entry(filled, PASS, "V", Spoiler.number()), "holds something other than a tick.");
  }

  @Test
  void a_value_without_end() throws IOException {
    refused(Spoiler.entry(filled, READING, "V", Spoiler.text(100_000)), "holds too long a text.");
  }

  @ParameterizedTest
  @ValueSource(strings = {"JavaScript", "Launch", "SubmitForm", "ImportData"})
  void a_script_or_an_action_when_it_is_opened(String action) throws IOException {
    refused(
        Spoiler.openAction(filled, action), "it carries a script or an action (" + action + ").");
  }

  @Test
  void a_script_behind_a_field() throws IOException {
    refused(Spoiler.fieldScript(filled, READING), "it carries a script or an action (JavaScript).");
  }

  @Test
  void a_second_form() throws IOException {
    refused(Spoiler.xfa(filled), "it holds a second form of another kind (XFA).");
  }

  @Test
  void attached_files_that_unpack_to_hundreds_of_megabytes() throws IOException {
    refused(Spoiler.bomb(filled, 40), "something in it is larger than in any sheet.");
    refused(Spoiler.bomb(filled, 300), "it unpacks to more than 128 MiB, far more than any sheet.");
  }

  @Test
  void a_netlist_that_is_not_the_one_it_was_made_from() throws IOException {
    refused(
        Filler.withAttached(filled, "wash-room-tub.yaml", text -> text.replace("12", "24")),
        "its attached netlist is not the one it was made from: the digest differs.");
  }

  @ParameterizedTest
  @ValueSource(strings = {"", "{", "[]", "{\"sheet\": 1, \"files\": [1]}", "nul", "\u0000"})
  void results_that_are_none(String results) throws IOException {
    refused(Filler.withResults(filled, text -> results), "its attached results cannot be read.");
  }

  @Test
  void results_that_are_nested_without_end() throws IOException {
    refused(
        Filler.withResults(filled, text -> "[".repeat(100_000)),
        "its attached results cannot be read.");
  }

  @Test
  void a_program_that_is_not_this_one_is_told_by_its_name() throws IOException {
    refused(
        Filler.withResults(
            filled,
            text ->
                text.replace("coilwright 0.1.0", "coilwright 9.9.9")
                    .replace("\"language\": \"en\"", "\"language\": \"xx\"")),
        "Do: use coilwright 9.9.9.");
  }
}
