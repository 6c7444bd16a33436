package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.interactive.annotation.PDAnnotationText;
import org.coilwright.cli.Cli.Ran;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a command that writes a file never writes over. */
class KeptFilesTest {
  private static final String TUB = "wiring-examples/wash-room-tub.yaml";
  private static final String OTHER = "wiring-examples/cabin-water-heater.yaml";

  @TempDir Path folder;

  /** What is done to a sheet. */
  private interface Change {
    void to(PDDocument document) throws IOException;
  }

  private static byte[] changed(byte[] pdf, Change change, boolean added) throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (PDDocument document = Loader.loadPDF(pdf)) {
      change.to(document);
      if (added) {
        document.saveIncremental(out);
      } else {
        document.save(out);
      }
    }
    return out.toByteArray();
  }

  private static byte[] scan() throws IOException {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    try (PDDocument document = new PDDocument()) {
      document.addPage(new PDPage());
      document.save(out);
    }
    return out.toByteArray();
  }

  private static void annotated(PDDocument document) throws IOException {
    PDAnnotationText note = new PDAnnotationText();
    note.setContents("K1 was changed on site");
    note.setRectangle(new PDRectangle(100, 100, 20, 20));
    document.getPage(0).getAnnotations().add(note);
    document.getPage(0).getCOSObject().setNeedToBeUpdated(true);
  }

  private void stays(Path target, byte[] before, String... command) throws IOException {
    Ran ran = Cli.run(command);
    assertEquals(2, ran.code(), String.join(" ", command) + "\n" + ran.out() + ran.err());
    assertTrue(ran.err().contains("Give another name"), ran.err());
    assertArrayEquals(before, Files.readAllBytes(target));
  }

  private List<String> names() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.map(f -> f.getFileName().toString()).sorted().toList();
    }
  }

  @Test
  void an_untouched_sheet_gives_way_and_any_other_pdf_stays() throws IOException {
    Path pdf = folder.resolve("sheet.pdf");
    byte[] first = Files.readAllBytes(Sheets.of(TUB, pdf));
    byte[] second = Files.readAllBytes(Sheets.of(OTHER, pdf));
    assertNotEquals(first.length, second.length);
    byte[] behind =
        (new String(first, StandardCharsets.ISO_8859_1) + "\n")
            .getBytes(StandardCharsets.ISO_8859_1);
    byte[] oneBit = first.clone();
    oneBit[first.length / 2] ^= 1;
    List<byte[]> kept =
        List.of(
            scan(),
            changed(first, d -> d.getDocumentCatalog().getAcroForm(null).flatten(), false),
            changed(first, KeptFilesTest::annotated, false),
            changed(first, KeptFilesTest::annotated, true),
            changed(first, d -> {}, false),
            behind,
            oneBit);
    for (byte[] there : kept) {
      Files.write(pdf, there);
      stays(pdf, there, "checklist", OTHER, "-o", pdf.toString());
    }
    assertEquals(List.of("sheet.pdf"), names());
  }

  @Test
  void a_drawing_of_our_own_gives_way_and_anything_else_under_its_name_stays() throws IOException {
    for (String name : List.of("d.svg", "d.png")) {
      Path drawing = folder.resolve(name);
      Cli.run("draw", TUB, "-o", drawing.toString());
      byte[] first = Files.readAllBytes(drawing);
      assertEquals(0, Cli.run("draw", OTHER, "-o", drawing.toString()).code());
      byte[] edited = first.clone();
      edited[first.length / 2] ^= 1;
      BufferedImage photo = new BufferedImage(2, 2, BufferedImage.TYPE_INT_RGB);
      ByteArrayOutputStream png = new ByteArrayOutputStream();
      assertTrue(ImageIO.write(photo, "png", png));
      for (byte[] there :
          List.of(
              edited,
              png.toByteArray(),
              "notes: call the plumber\n".getBytes(StandardCharsets.UTF_8),
              "<svg xmlns=\"http://www.w3.org/2000/svg\"/>\n".getBytes(StandardCharsets.UTF_8),
              scan())) {
        Files.write(drawing, there);
        stays(drawing, there, "draw", OTHER, "-o", drawing.toString());
        stays(drawing, there, "rehearse", TUB, "--plot", drawing.toString());
      }
    }
  }

  @Test
  void no_input_is_written_over_under_whatever_name() throws IOException {
    String day = "time,pv W,house W\n0,5500,350\n60,5000,350\n";
    Path measured = Files.writeString(folder.resolve("day.svg"), day);
    Path link = Files.createSymbolicLink(folder.resolve("link.svg"), measured);
    Path hard = Files.createLink(folder.resolve("hard.svg"), measured);
    for (Path name : List.of(measured, link, hard)) {
      stays(
          measured,
          day.getBytes(StandardCharsets.UTF_8),
          "rehearse",
          TUB,
          "--day",
          measured.toString(),
          "--plot",
          name.toString());
    }
    Path included = Files.createDirectory(folder.resolve("inc")).resolve("types.svg");
    Files.writeString(included, "types: {}\n");
    Path netlist = folder.resolve("inc/m.yaml");
    String tub = Files.readString(Path.of(TUB));
    Files.writeString(netlist, tub + "\ninclude: [types.svg]\n");
    Path elsewhere = Files.createSymbolicLink(folder.resolve("m.yaml"), netlist);
    assertTrue(Cli.run("check", netlist.toString()).code() < 2);
    for (Path named : List.of(netlist, elsewhere)) {
      Ran ran = Cli.run("draw", named.toString(), "-o", included.toString());
      assertEquals(2, ran.code(), ran.err());
      assertTrue(ran.err().contains("is a file that is read"), ran.err());
    }
    Path itself = Files.writeString(folder.resolve("netlist.svg"), tub);
    stays(itself, tub.getBytes(StandardCharsets.UTF_8), "draw", itself + "", "-o", itself + "");
  }

  @Test
  void through_a_link_the_file_behind_it_is_meant() throws IOException {
    Path behind = Files.createDirectory(folder.resolve("there")).resolve("sheet.pdf");
    Path link = Files.createSymbolicLink(folder.resolve("link.pdf"), Path.of("there/sheet.pdf"));
    Path second = Files.createSymbolicLink(folder.resolve("second.pdf"), link.getFileName());
    Sheets.of(TUB, second);
    assertTrue(Files.isSymbolicLink(link) && Files.isSymbolicLink(second));
    byte[] sheet = Files.readAllBytes(behind);
    byte[] touched = changed(sheet, KeptFilesTest::annotated, true);
    Files.write(behind, touched);
    stays(behind, touched, "checklist", OTHER, "-o", second.toString());
    assertTrue(Files.isSymbolicLink(link) && Files.isSymbolicLink(second));

    Path circle = folder.resolve("circle.pdf");
    Files.createSymbolicLink(circle, circle.getFileName());
    Ran ran = Cli.run("checklist", TUB, "-o", circle.toString());
    assertEquals(2, ran.code());
    assertTrue(ran.err().contains("is a link that leads nowhere"), ran.err());

    Path fresh = Files.createSymbolicLink(folder.resolve("fresh.yaml"), Path.of("new.yaml"));
    assertEquals(0, Cli.run("new", fresh.toString()).code());
    assertTrue(Files.isSymbolicLink(fresh) && Files.size(folder.resolve("new.yaml")) > 0);
    assertEquals(2, Cli.run("new", fresh.toString()).code());
  }

  @Test
  void a_name_that_is_too_long_is_called_that_and_a_long_one_is_not() throws IOException {
    for (String ending : List.of(".pdf", ".svg", ".yaml")) {
      String fits = folder.resolve("x".repeat(255 - ending.length()) + ending).toString();
      String tooLong = folder.resolve("x".repeat(256 - ending.length()) + ending).toString();
      String[] write =
          switch (ending) {
            case ".pdf" -> new String[] {"checklist", TUB, "-o", ""};
            case ".svg" -> new String[] {"draw", TUB, "-o", ""};
            default -> new String[] {"new", ""};
          };
      write[write.length - 1] = fits;
      Ran ran = Cli.run(write);
      assertEquals(0, ran.code(), ran.err());
      assertTrue(Files.size(Path.of(fits)) > 0);
      write[write.length - 1] = tooLong;
      ran = Cli.run(write);
      assertEquals(2, ran.code(), ran.err());
      assertTrue(ran.err().contains("its name is too long: 256 bytes"), ran.err());
      for (String[] read :
          List.of(
              new String[] {"check", tooLong},
              new String[] {"verify", tooLong},
              new String[] {"rehearse", TUB, "--day", tooLong})) {
        ran = Cli.run(read);
        assertEquals(2, ran.code(), ran.err());
        assertTrue(ran.err().contains("its name is too long: 256 bytes"), ran.err());
      }
    }
    assertFalse(names().stream().anyMatch(name -> name.endsWith(".part")), names().toString());
  }
}
