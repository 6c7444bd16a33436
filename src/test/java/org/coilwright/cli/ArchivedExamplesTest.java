package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.cos.COSArray;
import org.apache.pdfbox.cos.COSName;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.common.filespecification.PDComplexFileSpecification;
import org.coilwright.pdf.Validator;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What the command writes for every example, with all that travels in it. */
class ArchivedExamplesTest {
  @TempDir Path folder;

  static Stream<Path> examples() throws IOException {
    try (Stream<Path> files = Files.list(Path.of("wiring-examples"))) {
      return files.filter(f -> f.toString().endsWith(".yaml")).sorted().toList().stream();
    }
  }

  private byte[] sheet(Path example, String... more) throws IOException {
    Path pdf = folder.resolve("sheet.pdf");
    String[] args =
        Stream.concat(
                Stream.of("checklist", example.toString(), "-o", pdf.toString()), Stream.of(more))
            .toArray(String[]::new);
    Cli.Ran ran = Cli.run(args);
    assertTrue(ran.code() < 2, ran.err());
    return Files.readAllBytes(pdf);
  }

  @ParameterizedTest
  @MethodSource("examples")
  void the_sheet_can_be_archived_and_read_aloud(Path example) throws Exception {
    assertEquals(List.of(), Validator.broken(sheet(example)));
  }

  @Test
  void so_can_a_sheet_on_letter_paper() throws Exception {
    byte[] letter = sheet(Path.of("wiring-examples/wash-room-tub.yaml"), "--paper", "letter");
    assertEquals(List.of(), Validator.broken(letter));
    try (PDDocument document = Loader.loadPDF(letter)) {
      document.getPages().forEach(page -> assertEquals(612, page.getMediaBox().getWidth()));
    }
  }

  @Test
  void so_can_a_german_sheet_and_its_record() throws Exception {
    byte[] german = sheet(Path.of("wiring-examples/attic-mistakes.yaml"), "--language", "de");
    assertEquals(List.of(), Validator.broken(german));
    Path record = folder.resolve("record.pdf");
    Cli.Ran ran = new Cli().stdin(german).with("readback", "-", "-o", record.toString());
    assertEquals(1, ran.code(), ran.err());
    assertEquals(List.of(), Validator.broken(Files.readAllBytes(record)));
  }

  @ParameterizedTest
  @MethodSource("examples")
  void netlist_and_results_travel_in_it_and_say_what_they_are(Path example) throws IOException {
    byte[] sheet = sheet(example);
    Map<String, String> relations = new TreeMap<>();
    Map<String, byte[]> files = new TreeMap<>();
    try (PDDocument document = Loader.loadPDF(sheet)) {
      COSArray associated = document.getDocumentCatalog().getCOSObject().getCOSArray(COSName.AF);
      for (int i = 0; i < associated.size(); i++) {
        PDComplexFileSpecification file =
            new PDComplexFileSpecification(
                (org.apache.pdfbox.cos.COSDictionary) associated.getObject(i));
        relations.put(file.getFilename(), file.getCOSObject().getNameAsString("AFRelationship"));
        files.put(file.getFilename(), file.getEmbeddedFile().toByteArray());
      }
    }
    String netlist = String.valueOf(example.getFileName());
    assertEquals("Source", relations.get(netlist));
    assertArrayEquals(Files.readAllBytes(example), files.get(netlist));
    assertEquals("Data", relations.get(SheetFiles.RESULTS));
  }
}
