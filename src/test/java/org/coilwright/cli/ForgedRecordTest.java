package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
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
import org.coilwright.pdf.Authority;
import org.coilwright.pdf.Filler;
import org.coilwright.pdf.Forger;
import org.coilwright.pdf.Returned;
import org.coilwright.pdf.SheetReader;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Whatever is changed in a record, {@code verify} ends with 1 and says where it does not agree. */
class ForgedRecordTest {
  private static final String EXAMPLE = "wiring-examples/wash-room-tub.yaml";
  private static final String NOT_COVERED = "the file was changed after it was signed";

  @TempDir static Path made;
  private static byte[] empty;
  private static byte[] unsigned;
  private static byte[] signed;
  private static Map<String, byte[]> twin;
  private static String twinKeywords;

  @TempDir Path folder;

  @BeforeAll
  static void sign() throws Exception {
    empty = Files.readAllBytes(Sheets.of(EXAMPLE, made.resolve("sheet.pdf")));
    Path filled =
        Files.write(
            made.resolve("filled.pdf"),
            Filler.filled(empty, Fillings.complete(Sheets.checklist(EXAMPLE)).filledIn()));
    Authority authority = Authority.named("Bench authority");
    Path keystore =
        Files.write(
            made.resolve("me.p12"), authority.signer("Erika Prüferin", -1, 1).keystore("secret"));
    unsigned = record(filled, "unsigned.pdf");
    signed = record(filled, "signed.pdf", "--sign", keystore.toString());
    Path other = made.resolve("wash-room-tub.yaml");
    String netlist = Files.readString(Path.of(EXAMPLE), StandardCharsets.UTF_8);
    Files.writeString(other, netlist + "\n# another\n", StandardCharsets.UTF_8);
    byte[] twinSheet = Files.readAllBytes(Sheets.of(other.toString(), made.resolve("twin.pdf")));
    Returned.Sheet read = (Returned.Sheet) SheetReader.read(twinSheet);
    twin = new HashMap<>();
    for (String name : new String[] {"wash-room-tub.yaml", SheetFiles.RESULTS}) {
      twin.put(name, read.files().get(name));
    }
    twinKeywords = read.keywords();
  }

  private static byte[] record(Path filled, String name, String... more) throws IOException {
    Path record = made.resolve(name);
    String[] command = {"readback", filled.toString(), "-o", record.toString()};
    String[] all = java.util.Arrays.copyOf(command, command.length + more.length);
    System.arraycopy(more, 0, all, command.length, more.length);
    Ran ran = new Cli().environment(Map.of("COILWRIGHT_KEYSTORE_PASSWORD", "secret")).with(all);
    assertEquals(0, ran.code(), ran.out() + ran.err());
    return Files.readAllBytes(record);
  }

  private Ran verify(byte[] pdf) throws IOException {
    Path file = Files.write(folder.resolve("record.pdf"), pdf);
    return Cli.run("verify", file.toString());
  }

  private static String squeezed(String text) {
    return text.replaceAll("\\s+", " ");
  }

  private void found(byte[] forged, String... said) throws IOException {
    Ran ran = verify(forged);
    assertEquals(1, ran.code(), ran.out() + ran.err());
    String out = squeezed(ran.out());
    for (String each : said) {
      assertTrue(out.contains(each), ran.out());
    }
    assertTrue(out.contains("This record must not be relied on."), ran.out());
    assertFalse(out.contains("The record agrees"), ran.out());
    assertTrue(ran.out().lines().allMatch(line -> Lines.width(line) <= 80), ran.out());
  }

  private static Map<String, byte[]> readings(String json) {
    return Map.of(SheetFiles.READINGS, json.getBytes(StandardCharsets.UTF_8));
  }

  @Test
  void as_they_were_written_both_agree() throws IOException {
    Ran ran = verify(signed);
    assertEquals(0, ran.code(), ran.out() + ran.err());
    String out = squeezed(ran.out());
    assertTrue(out.contains("Signed with the certificate of CN=Erika Prüferin,"), ran.out());
    assertTrue(out.contains("vouched for by CN=Bench authority"), ran.out());
    assertTrue(out.contains("by the clock of whoever signed; no time stamp confirms"), ran.out());
    assertTrue(out.contains("really theirs was not looked at"), ran.out());
    assertTrue(out.contains("judged again Complete: all "), ran.out());
    ran = verify(unsigned);
    assertEquals(0, ran.code(), ran.out() + ran.err());
    assertTrue(ran.out().contains("Not signed: "), ran.out());
  }

  @Test
  void painted_over_after_it_was_signed() throws IOException {
    found(Forger.painted(signed, 0, "FORGED"), NOT_COVERED, "page 1 of ", "is not there as it was");
  }

  @Test
  void other_readings_put_in() throws IOException {
    found(
        Forger.withFiles(signed, readings("{\"forged\": true}"), Optional.empty()),
        NOT_COVERED,
        "Verdict: recorded is nothing; the filled-in sheet gives complete");
  }

  @Test
  void the_filled_in_sheet_replaced_by_an_empty_one() throws IOException {
    found(
        Forger.withFiles(signed, Map.of(SheetFiles.FILLED_IN, empty), Optional.empty()),
        NOT_COVERED,
        "is not the one that was read back: its digest is",
        "Verdict: recorded is complete; the filled-in sheet gives not complete");
  }

  @Test
  void another_netlist_with_its_results_and_keywords() throws IOException {
    found(
        Forger.withFiles(signed, twin, Optional.of(twinKeywords)),
        NOT_COVERED,
        "is not the one that the filled-in sheet has",
        "was printed from another netlist");
  }

  @Test
  void the_signature_taken_out() throws IOException {
    found(
        Forger.unsigned(signed),
        "it was signed once, and the signature was taken out",
        "says that it is signed by certificate, and no valid signature is there");
  }

  @Test
  void the_signature_zeroed() throws IOException {
    found(Forger.zeroed(signed), "its signature is empty or damaged");
  }

  @Test
  void saved_anew() throws IOException {
    found(Forger.resaved(signed), "NOT VALID: ", "must not be relied on");
  }

  @Test
  void painted_over_where_it_was_never_signed() throws IOException {
    found(Forger.painted(unsigned, 0, "FORGED"), "page 1 of ", "is not there as it was");
  }

  /** What is left looks like a record and is none. */
  @Test
  void the_readings_and_the_filled_in_sheet_taken_out() throws IOException {
    found(
        Forger.withoutFiles(unsigned, SheetFiles.READINGS, SheetFiles.FILLED_IN),
        "The filled-in sheet is no longer attached.",
        "It could not be judged.");
  }

  @Test
  void one_row_of_the_readings_made_good() throws IOException {
    Returned.Sheet read = (Returned.Sheet) SheetReader.read(unsigned);
    String json = new String(read.files().get(SheetFiles.READINGS), StandardCharsets.UTF_8);
    found(
        Forger.withFiles(
            unsigned,
            readings(json.replaceFirst("\"state\": \"met\"", "\"state\": \"open\"")),
            Optional.empty()),
        ": recorded is open");
  }

  @Test
  void a_comment_over_the_verdict() throws IOException {
    found(Forger.covered(unsigned, 0), "carries something that is no field of the sheet (Square)");
  }

  @Test
  void a_byte_of_the_file_changed() throws IOException {
    byte[] changed = signed.clone();
    changed[11] ^= 1; // in the comment of the second line, which says nothing
    found(changed, "its signature does not fit the file");
  }
}
