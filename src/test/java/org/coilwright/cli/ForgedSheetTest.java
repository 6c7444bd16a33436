package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.coilwright.checklist.Fillings;
import org.coilwright.cli.Cli.Ran;
import org.coilwright.pdf.Filler;
import org.coilwright.pdf.Forger;
import org.coilwright.pdf.Returned;
import org.coilwright.pdf.SheetReader;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * A sheet is judged by what stood beside each reading, so nobody may get it judged by something
 * else, and whoever filled it in must have seen what is judged.
 */
class ForgedSheetTest {
  private static final String EXAMPLE = "wiring-examples/guest-house-cylinder.yaml";
  private static final String FIELD = "K1.coil-resistance.reading";

  /** Outside 1035 to 1265 Ω at 20 °C, and within ± 60 %. */
  private static final String BAD = "1500 Ω";

  @TempDir static Path made;
  private static byte[] filled;
  private static byte[] bad;
  private static Map<String, byte[]> twin;
  private static String twinKeywords;

  @TempDir Path folder;

  @BeforeAll
  static void fill() throws IOException {
    byte[] sheet = Files.readAllBytes(Sheets.of(EXAMPLE, made.resolve("sheet.pdf")));
    filled = Filler.filled(sheet, Fillings.complete(Sheets.checklist(EXAMPLE)).filledIn());
    bad = Filler.with(filled, FIELD, BAD);
    String netlist = Files.readString(Path.of(EXAMPLE), StandardCharsets.UTF_8);
    String wide = netlist.replace("resistance: 1150 Ω ± 10 %", "resistance: 1150 Ω ± 60 %");
    assertTrue(!wide.equals(netlist), "the example has another coil");
    Path other = made.resolve("guest-house-cylinder.yaml");
    Files.writeString(other, wide, StandardCharsets.UTF_8);
    byte[] twinSheet = Files.readAllBytes(Sheets.of(other.toString(), made.resolve("twin.pdf")));
    Returned.Sheet read = (Returned.Sheet) SheetReader.read(twinSheet);
    twin = new HashMap<>();
    for (String name : new String[] {"guest-house-cylinder.yaml", SheetFiles.RESULTS}) {
      twin.put(name, read.files().get(name));
    }
    twinKeywords = read.keywords();
  }

  private Ran readback(byte[] pdf) throws IOException {
    Path file = Files.write(folder.resolve("given back.pdf"), pdf);
    return Cli.run("readback", file.toString());
  }

  private static String squeezed(String text) {
    return text.replaceAll("\\s+", " ");
  }

  private void refused(byte[] pdf, String why) throws IOException {
    Ran ran = readback(pdf);
    assertEquals(2, ran.code(), ran.out() + ran.err());
    assertTrue(squeezed(ran.err()).contains(why), ran.err());
    assertEquals("", ran.out());
  }

  private void asked(byte[] pdf, String what) throws IOException {
    Ran ran = readback(pdf);
    assertEquals(1, ran.code(), ran.out() + ran.err());
    assertTrue(squeezed(ran.out()).contains(what), ran.out());
    assertTrue(ran.out().contains("UNCLEAR"), ran.out());
  }

  @Test
  void as_it_was_filled_in_the_reading_is_outside() throws IOException {
    assertEquals(0, readback(filled).code());
    Ran ran = readback(bad);
    assertEquals(1, ran.code());
    assertTrue(squeezed(ran.out()).contains("written \"1500 Ω\", expected \""), ran.out());
  }

  @Test
  void wider_limits_under_the_pages_that_print_the_narrow_ones_are_refused() throws IOException {
    refused(
        Forger.withFiles(bad, twin, Optional.of(twinKeywords)),
        "page 1 was printed from another netlist (SHA-256 ");
  }

  @Test
  void wider_limits_and_no_keywords_are_refused() throws IOException {
    refused(
        Forger.withFiles(bad, twin, Optional.of("")),
        "its document properties lack the digest of its netlist");
  }

  @Test
  void wider_limits_with_the_old_keywords_are_refused() throws IOException {
    refused(Forger.withFiles(bad, twin, Optional.empty()), "the digest differs");
  }

  @Test
  void pages_that_no_longer_show_the_digest_are_refused() throws IOException {
    refused(Forger.blankPages(filled), "none of its pages shows the digest of its netlist");
  }

  @Test
  void fields_that_are_hidden_are_asked_about() throws IOException {
    asked(Forger.hidden(filled), "no page shows this field");
  }

  @Test
  void fields_that_are_on_no_page_are_asked_about() throws IOException {
    asked(Forger.withoutWidgets(filled), "no page shows this field");
  }

  @Test
  void pages_that_are_gone_are_named() throws IOException {
    asked(Forger.firstPage(filled), "page 2–");
  }

  @Test
  void a_value_other_than_shown_is_asked_about() throws IOException {
    asked(
        Forger.showing(filled, FIELD, "9999 Ω", "1150 Ω"),
        "the file holds \"1150 Ω\", but the page shows \"9999Ω\"");
  }

  @Test
  void a_box_that_stands_twice_with_two_looks_is_asked_about() throws IOException {
    asked(Forger.twoBoxes(filled, "K1.coil-resistance.pass"), "this field stands in several");
    asked(Forger.twoBoxes(filled, "K1.coil-resistance.pass"), "looks otherwise than the file says");
  }

  @Test
  void pages_that_are_painted_over_are_named() throws IOException {
    asked(Forger.paintedAll(filled), "page 1–");
    asked(Forger.painted(filled, 2, ""), "page 3 of ");
  }

  /** An empty sheet is verified, not read back. */
  @Test
  void pages_that_are_painted_over_do_not_verify_as_the_same() throws IOException {
    Path file = Files.write(folder.resolve("painted.pdf"), Forger.painted(filled, 2, "FORGED"));
    Ran ran = Cli.run("verify", file.toString());
    assertEquals(1, ran.code(), ran.out());
    assertTrue(squeezed(ran.out()).contains("Pages that differ page 3 of "), ran.out());
    assertEquals(0, Cli.run("verify", made.resolve("sheet.pdf").toString()).code());
  }

  @Test
  void a_comment_over_a_page_is_asked_about() throws IOException {
    asked(Forger.covered(filled, 4), "page 5 carries something that is no field");
  }

  @Test
  void results_that_make_a_lighter_finding_of_a_stop_are_told() throws IOException {
    byte[] lighter =
        Filler.withResults(filled, json -> json.replaceFirst("\"satisfied\": ", "\"passed\": "));
    asked(lighter, "the results that travel in it are not what comes out now");
  }
}
