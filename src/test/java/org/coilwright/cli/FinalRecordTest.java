// Over 250 lines: one record from filling in to signature.
package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.digitalsignature.PDSignature;
import org.apache.pdfbox.text.PDFTextStripper;
import org.bouncycastle.cert.X509CertificateHolder;
import org.bouncycastle.cms.CMSProcessableByteArray;
import org.bouncycastle.cms.CMSSignedData;
import org.bouncycastle.cms.SignerInformation;
import org.bouncycastle.cms.jcajce.JcaSimpleSignerInfoVerifierBuilder;
import org.coilwright.checklist.Fillings;
import org.coilwright.cli.Cli.Ran;
import org.coilwright.pdf.Filler;
import org.coilwright.pdf.Returned;
import org.coilwright.pdf.SheetReader;
import org.coilwright.pdf.ThrowawayKeystore;
import org.coilwright.pdf.Validator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The final record: drawn anew, archival, whole or not at all, signed where that is asked for. */
class FinalRecordTest {
  private static final String EXAMPLE = ReadbackCommandTest.EXAMPLE;
  private static final String PASSWORD = "COILWRIGHT_KEYSTORE_PASSWORD";

  @TempDir Path folder;

  static Stream<Path> examples() throws IOException {
    return ArchivedExamplesTest.examples();
  }

  private Path filled(String example) throws IOException {
    byte[] sheet = Files.readAllBytes(Sheets.of(example, folder.resolve("sheet.pdf")));
    return Files.write(
        folder.resolve("filled.pdf"),
        Filler.filled(sheet, Fillings.complete(Sheets.checklist(example)).filledIn()));
  }

  private static String text(byte[] pdf) throws IOException {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return new PDFTextStripper().getText(document);
    }
  }

  @ParameterizedTest
  @MethodSource("examples")
  void the_record_can_be_archived_and_read_aloud(Path example) throws Exception {
    Path record = folder.resolve("record.pdf");
    Ran ran = Cli.run("readback", filled(example.toString()).toString(), "-o", record.toString());
    boolean stopped = example.toString().contains("attic-mistakes");
    assertEquals(stopped ? 1 : 0, ran.code(), ran.out() + ran.err());
    assertEquals(List.of(), Validator.broken(Files.readAllBytes(record)));
    String text = text(Files.readAllBytes(record));
    assertEquals(stopped, text.contains("NOT TO BE ENERGISED"), text);
    assertEquals(!stopped, text.contains("COMPLETE"), text);
  }

  @Test
  void what_was_filled_in_is_printed_and_nothing_can_be_filled_in_any_more() throws IOException {
    byte[] bytes =
        Filler.with(Files.readAllBytes(filled(EXAMPLE)), "K1.coil-resistance.reading", "12,5 Ω");
    Path odd = Files.write(folder.resolve("odd.pdf"), bytes);
    Path record = folder.resolve("record.pdf");
    Ran ran = Cli.run("readback", odd.toString(), "-o", record.toString());
    assertEquals(1, ran.code(), ran.err());
    String text = text(Files.readAllBytes(record));
    assertTrue(text.contains("12,5 Ω"), text);
    assertTrue(text.contains("Jörg"), text);
    assertTrue(text.contains("\u2713"), "ticks are no crosses, which read as failed: " + text);
    assertFalse(text.contains("\u2717"), text);
    assertTrue(text.contains("NOT COMPLETE"), text);
    assertTrue(text.contains("yet it is ticked as met"), text);
    assertFalse(text.matches("(?is).*\\b(safe|passed|approved)\\b.*"), text);
    Returned.Sheet sheet = (Returned.Sheet) SheetReader.read(Files.readAllBytes(record));
    assertEquals(java.util.Set.of("record.signature"), sheet.fields().keySet());
    assertArrayEquals(bytes, sheet.files().get(SheetFiles.FILLED_IN));
    assertTrue(sheet.files().containsKey(SheetFiles.READINGS));
  }

  /** Far more than fits a page in the narrowest of places. */
  @Test
  void a_text_without_end_is_printed_whole() throws IOException {
    String much = "Ωmeg\u0000a\u202e中 ".repeat(1_000) + "END";
    byte[] bytes = Filler.with(Files.readAllBytes(filled(EXAMPLE)), "sign-off.remarks", "one\ntwo");
    for (String field : List.of("G0.switched-on.initials", "sign-off.remarks")) {
      bytes = Filler.withRaw(bytes, field, much);
    }
    Path odd = Files.write(folder.resolve("odd.pdf"), bytes);
    Path record = folder.resolve("record.pdf");
    Ran ran = Cli.run("readback", odd.toString(), "-o", record.toString());
    assertEquals(0, ran.code(), ran.err());
    String text = text(Files.readAllBytes(record)).replaceAll("\\s+", "");
    assertEquals(3, text.split("END", -1).length);
  }

  @Test
  void the_record_verifies_like_the_sheet_and_is_the_same_each_time() throws IOException {
    Path filled = filled(EXAMPLE);
    Path first = folder.resolve("first.pdf");
    Path second = folder.resolve("second.pdf");
    Cli.run("readback", filled.toString(), "-o", first.toString());
    Cli.run("readback", filled.toString(), "-o", second.toString());
    assertArrayEquals(Files.readAllBytes(first), Files.readAllBytes(second));
    Ran ran = Cli.run("verify", first.toString());
    assertEquals(0, ran.code(), ran.out() + ran.err());
  }

  @Test
  void the_filled_in_file_is_never_overwritten() throws IOException {
    Path filled = filled(EXAMPLE);
    byte[] before = Files.readAllBytes(filled);
    Path other = Files.write(folder.resolve("other.pdf"), before);
    for (String[] command :
        List.of(
            new String[] {"readback", filled.toString(), "-o", filled.toString()},
            new String[] {"readback", filled.toString(), "-o", folder + "/./filled.pdf"},
            new String[] {"readback", filled.toString(), "-o", other.toString()},
            new String[] {"checklist", EXAMPLE, "-o", filled.toString()})) {
      Ran ran = Cli.run(command);
      assertEquals(2, ran.code(), ran.err());
      assertTrue(ran.err().contains("Give another name after -o."), ran.err());
    }
    assertArrayEquals(before, Files.readAllBytes(filled));
    assertArrayEquals(before, Files.readAllBytes(other));
  }

  /** It is not signed, so its only field is empty. */
  @Test
  void a_final_record_is_never_overwritten_but_by_itself() throws IOException {
    Path filled = filled(EXAMPLE);
    Path record = folder.resolve("record.pdf");
    Cli.run("readback", filled.toString(), "-o", record.toString());
    byte[] before = Files.readAllBytes(record);
    Path other =
        Files.write(
            folder.resolve("other.pdf"),
            Filler.with(Files.readAllBytes(filled), "K1.coil-resistance.reading", "12 Ω"));
    for (String[] command :
        List.of(
            new String[] {"readback", other.toString(), "-o", record.toString()},
            new String[] {"checklist", EXAMPLE, "-o", record.toString()})) {
      Ran ran = Cli.run(command);
      assertEquals(2, ran.code(), ran.err());
      assertTrue(ran.err().contains("is a final record and is not written over."), ran.err());
      assertArrayEquals(before, Files.readAllBytes(record));
    }
    Ran again = Cli.run("readback", filled.toString(), "-o", record.toString());
    assertEquals(0, again.code(), again.err());
    assertArrayEquals(before, Files.readAllBytes(record));
  }

  @ParameterizedTest
  @ValueSource(strings = {"me.p12", "me.pdf"})
  void the_keystore_is_never_overwritten(String name) throws Exception {
    byte[] before = ThrowawayKeystore.bytes("RSA", "pa55 wort");
    Path keystore = Files.write(folder.resolve(name), before);
    Ran ran =
        new Cli()
            .terminal(Map.of(PASSWORD, "pa55 wort"))
            .with(
                "readback",
                filled(EXAMPLE).toString(),
                "-o",
                keystore.toString(),
                "--sign",
                keystore.toString());
    assertEquals(2, ran.code(), ran.err());
    assertTrue(ran.err().contains("No record was written."), ran.err());
    assertArrayEquals(before, Files.readAllBytes(keystore));
  }

  @Test
  void an_empty_sheet_may_be_written_over() throws IOException {
    Path sheet = Sheets.of(EXAMPLE, folder.resolve("sheet.pdf"));
    assertEquals(sheet, Sheets.of(EXAMPLE, sheet));
  }

  @Test
  void a_signed_record_holds_a_signature_over_all_of_it_and_stays_archival() throws Exception {
    byte[] signed = signed("RSA");
    assertEquals(List.of(), Validator.broken(signed));
    verify(signed);
    verifyByPoppler();
    assertEquals(0, Cli.run("verify", folder.resolve("record.pdf").toString()).code());
  }

  @Test
  void a_key_of_an_elliptic_curve_signs_as_well() throws Exception {
    verify(signed("EC"));
  }

  /** By a program that shares no line with the one that signed. */
  private void verifyByPoppler() throws Exception {
    Optional<Path> pdfsig =
        Stream.of(System.getenv("PATH").split(java.io.File.pathSeparator, -1))
            .map(place -> Path.of(place, "pdfsig"))
            .filter(Files::isExecutable)
            .findFirst();
    if (pdfsig.isPresent()) {
      Process process =
          new ProcessBuilder(
                  pdfsig.get().toString(), "-nocert", folder.resolve("record.pdf").toString())
              .redirectErrorStream(true)
              .start();
      String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      process.waitFor();
      assertTrue(said.contains("Signature is Valid."), said);
      assertTrue(said.contains("Total document signed"), said);
    }
  }

  private byte[] signed(String algorithm) throws Exception {
    Path keystore =
        Files.write(
            folder.resolve("throwaway.p12"), ThrowawayKeystore.bytes(algorithm, "pa55 wort"));
    Path record = folder.resolve("record.pdf");
    Path filled = filled(EXAMPLE);
    Ran ran =
        new Cli()
            .terminal(Map.of(PASSWORD, "pa55 wort"))
            .with(
                "readback",
                filled.toString(),
                "-o",
                record.toString(),
                "--sign",
                keystore.toString());
    assertEquals("Wrote " + record + ", signed." + System.lineSeparator(), ran.err());
    assertEquals(0, ran.code(), ran.err());
    assertTrue(ran.err().contains("Wrote " + record + ", signed."), ran.err());
    return Files.readAllBytes(record);
  }

  private static void verify(byte[] signed) throws Exception {
    try (PDDocument document = Loader.loadPDF(signed)) {
      assertEquals(1, document.getSignatureDictionaries().size());
      PDSignature signature = document.getSignatureDictionaries().get(0);
      int[] range = signature.getByteRange();
      assertEquals(0, range[0]);
      assertEquals(signed.length, range[2] + range[3]);
      CMSSignedData cms =
          new CMSSignedData(
              new CMSProcessableByteArray(signature.getSignedContent(signed)),
              new ByteArrayInputStream(signature.getContents(signed)));
      SignerInformation signer = cms.getSignerInfos().getSigners().iterator().next();
      X509CertificateHolder certificate = cms.getCertificates().getMatches(null).iterator().next();
      assertTrue(signer.verify(new JcaSimpleSignerInfoVerifierBuilder().build(certificate)));
      byte[] spoilt = signature.getSignedContent(signed);
      spoilt[spoilt.length / 2] ^= 1;
      CMSSignedData other =
          new CMSSignedData(
              new CMSProcessableByteArray(spoilt),
              new ByteArrayInputStream(signature.getContents(signed)));
      SignerInformation otherSigner = other.getSignerInfos().getSigners().iterator().next();
      org.junit.jupiter.api.Assertions.assertThrows(
          org.bouncycastle.cms.CMSException.class,
          () -> otherSigner.verify(new JcaSimpleSignerInfoVerifierBuilder().build(certificate)));
    }
  }

  @Test
  void without_the_right_password_nothing_is_written() throws Exception {
    Path keystore =
        Files.write(folder.resolve("throwaway.p12"), ThrowawayKeystore.bytes("RSA", "right"));
    Path notOne = Files.writeString(folder.resolve("plain.p12"), "plain", StandardCharsets.UTF_8);
    Path filled = filled(EXAMPLE);
    Path record = folder.resolve("record.pdf");
    for (Path store : List.of(keystore, notOne, folder.resolve("none.p12"))) {
      for (Map<String, String> environment :
          List.of(Map.of(PASSWORD, "wrong"), Map.<String, String>of())) {
        Ran ran =
            new Cli()
                .terminal(environment)
                .with(
                    "readback",
                    filled.toString(),
                    "-o",
                    record.toString(),
                    "--sign",
                    store.toString());
        assertEquals(2, ran.code(), ran.err());
        assertTrue(ran.err().contains("No record was written."), ran.err());
        assertFalse(ran.err().contains("wrong"), "a password was printed");
        assertFalse(Files.exists(record));
      }
    }
  }

  @Test
  void a_keystore_that_cannot_be_used_is_told_in_our_own_words() throws Exception {
    Path store =
        Files.write(folder.resolve("throwaway.p12"), ThrowawayKeystore.bytes("RSA", "right"));
    Path plain =
        Files.writeString(folder.resolve("plain.pem"), "-----BEGIN", StandardCharsets.UTF_8);
    Map<String, String> said =
        Map.of(
            folder.resolve("none.p12").toString(), "there is no such file.",
            folder.toString(), "it cannot be read.",
            plain.toString(), "it is no PKCS#12 keystore.",
            store.toString(), "the password does not open it.");
    String filled = filled(EXAMPLE).toString();
    for (Map.Entry<String, String> each : said.entrySet()) {
      String record = folder.resolve("record.pdf").toString();
      Ran ran =
          new Cli()
              .terminal(Map.of(PASSWORD, "another"))
              .with("readback", filled, "-o", record, "--sign", each.getKey());
      assertEquals(2, ran.code(), ran.err());
      assertTrue(
          ran.err().startsWith(each.getKey() + " cannot be used to sign: " + each.getValue()),
          ran.err());
    }
  }

  @Test
  void a_final_record_is_not_read_back_but_says_where_its_sheet_is() throws IOException {
    Path record = folder.resolve("record.pdf");
    Cli.run("readback", filled(EXAMPLE).toString(), "-o", record.toString());
    Ran ran = Cli.run("readback", record.toString());
    assertEquals(2, ran.code(), ran.out());
    String said = ran.err().replaceAll("\\s+", " ");
    assertTrue(said.contains("attached in it as coilwright-filled-in.pdf."), ran.err());
    assertFalse(said.contains("form fields"), ran.err());
  }

  @Test
  void a_sheet_given_for_a_netlist_is_told_to_be_a_pdf() throws IOException {
    String sheet = Sheets.of(EXAMPLE, folder.resolve("sheet.pdf")).toString();
    String drawing = folder.resolve("x.svg").toString();
    String again = folder.resolve("x.pdf").toString();
    for (String[] command :
        List.of(
            new String[] {"check", sheet},
            new String[] {"draw", sheet, "-o", drawing},
            new String[] {"checklist", sheet, "-o", again})) {
      Ran ran = Cli.run(command);
      assertEquals(2, ran.code(), ran.out());
      String said = (ran.out() + ran.err()).replaceAll("\\s+", " ");
      assertTrue(said.contains("is a PDF and no netlist"), said);
      assertTrue(said.contains("coilwright readback reads a filled-in sheet"), said);
    }
  }

  @Test
  void signing_without_a_record_is_refused() throws IOException {
    assertEquals(2, Cli.run("readback", filled(EXAMPLE).toString(), "--sign", "x.p12").code());
  }
}
