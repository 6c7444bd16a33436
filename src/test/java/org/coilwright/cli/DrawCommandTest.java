package org.coilwright.cli;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import javax.imageio.ImageIO;
import org.coilwright.cli.Cli.Ran;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DrawCommandTest {
  private static final String CLEAR = "wiring-examples/wash-room-tub.yaml";
  private static final String FAULTY = "wiring-examples/attic-mistakes.yaml";
  private static final double POINTS_HIGH = 841.89;

  @TempDir Path folder;

  private List<Path> files() throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.sorted().toList();
    }
  }

  @Test
  void it_writes_one_svg_with_signs_of_many_bytes_and_says_where() throws IOException {
    Path svg = folder.resolve("out put.svg");
    Ran ran = Cli.run("draw", CLEAR, "-o", svg.toString());
    assertEquals(0, ran.code(), ran.err());
    assertEquals("", ran.out());
    assertTrue(ran.err().contains("Wrote " + svg), ran.err());
    assertEquals(List.of(svg), files());
    String text = Files.readString(svg);
    assertTrue(text.contains(">4 mm² BN<"), text);
    assertTrue(text.contains(">230 V ± 10 %<"), text);
    assertTrue(text.contains("Soaking tub element, wash room"), text);
    assertTrue(text.contains(">sheet 1 of 2<"), text);
  }

  @Test
  void a_png_is_as_large_as_its_sheets_and_not_empty() throws IOException {
    Path png = folder.resolve("out.PNG");
    Ran ran = Cli.run("draw", FAULTY, "--output", png.toString());
    assertEquals(1, ran.code(), ran.err());
    assertTrue(ran.err().contains("STOP: "), ran.err());
    BufferedImage image = ImageIO.read(png.toFile());
    double sheets = image.getHeight() / 2.0 / POINTS_HIGH;
    assertEquals(Math.rint(sheets), sheets, 0.01);
    assertEquals(2 * 72 / 0.0254, dotsPerMetre(Files.readAllBytes(png)), 1);
    int dark = 0;
    for (int y = 0; y < image.getHeight(); y++) {
      for (int x = 0; x < image.getWidth(); x++) {
        dark += (image.getRGB(x, y) & 0xff) < 128 ? 1 : 0;
      }
    }
    assertTrue(dark > 10_000, "dark dots: " + dark);
  }

  @Test
  void one_sheet_alone_is_as_large_as_its_paper() throws IOException {
    Path both = folder.resolve("both.svg");
    Path second = folder.resolve("second.svg");
    assertEquals(0, Cli.run("draw", CLEAR, "-o", both.toString()).code());
    assertEquals(0, Cli.run("draw", CLEAR, "-o", second.toString(), "--sheet", "2").code());
    String text = Files.readString(second);
    assertTrue(text.contains(">sheet 2 of 2<") && !text.contains(">sheet 1 of 2<"), text);
    String tall = Files.readString(both);
    assertTrue(tall.contains(">sheet 1 of 2<") && tall.contains(">sheet 2 of 2<"), tall);
    Path png = folder.resolve("second.png");
    assertEquals(0, Cli.run("draw", CLEAR, "-o", png.toString(), "--sheet", "2").code());
    assertEquals(2 * POINTS_HIGH, ImageIO.read(png.toFile()).getHeight(), 1);
  }

  @ParameterizedTest
  @ValueSource(strings = {"0", "3", "-1", "two", "1.0", "99999999999"})
  void a_sheet_that_is_not_there_is_refused_and_nothing_is_drawn(String number) throws IOException {
    Path svg = folder.resolve("out.svg");
    Ran ran = Cli.run("draw", CLEAR, "-o", svg.toString(), "--sheet=" + number);
    assertEquals(2, ran.code(), ran.err());
    assertTrue(ran.err().contains("this circuit has sheets 1 to 2"), ran.err());
    assertEquals(List.of(), files());
  }

  private static int dotsPerMetre(byte[] png) {
    String text = new String(png, StandardCharsets.ISO_8859_1);
    return ByteBuffer.wrap(png).getInt(text.indexOf("pHYs") + 4);
  }

  @Test
  void the_same_netlist_gives_the_same_bytes() throws IOException {
    for (String ending : List.of(".svg", ".png")) {
      Path first = folder.resolve("1" + ending);
      Path second = folder.resolve("2" + ending);
      Cli.run("draw", CLEAR, "-o", first.toString());
      Cli.run("draw", CLEAR, "-o", second.toString());
      assertArrayEquals(Files.readAllBytes(first), Files.readAllBytes(second));
    }
  }

  @Test
  void paper_changes_the_page() throws IOException {
    Path svg = folder.resolve("letter.svg");
    Cli.run("draw", CLEAR, "-o", svg.toString(), "--paper", "letter");
    assertTrue(Files.readString(svg).contains("width=\"612pt\" height=\"1584pt\""));
  }

  @ParameterizedTest
  @ValueSource(strings = {"out.pdf", "out", ".svgz", "-"})
  void an_ending_that_is_neither_is_refused_before_anything_is_read(String name)
      throws IOException {
    Ran ran = Cli.run("draw", "no-such-file.yaml", "-o", folder.resolve("x") + name);
    assertEquals(2, ran.code(), ran.err());
    assertTrue(ran.err().contains("ends in .svg or .png"), ran.err());
    assertEquals(List.of(), files());
  }

  @Test
  void a_file_that_is_not_there_is_named_and_nothing_is_drawn() throws IOException {
    Ran ran = Cli.run("draw", "no-such-file.yaml", "-o", folder.resolve("x.svg").toString());
    assertEquals(2, ran.code());
    assertTrue(ran.err().contains("no-such-file.yaml"), ran.err());
    assertTrue(ran.err().contains("Nothing was drawn."), ran.err());
    assertEquals(List.of(), files());
  }

  @Test
  void a_folder_that_is_not_there_is_named_and_nothing_is_left() throws IOException {
    Path svg = folder.resolve("nowhere").resolve("x.svg");
    Ran ran = Cli.run("draw", CLEAR, "-o", svg.toString());
    assertEquals(2, ran.code());
    assertTrue(ran.err().contains("folder does not exist"), ran.err());
    assertFalse(ran.err().contains("Exception"), ran.err());
    assertEquals(List.of(), files());
  }

  @Test
  void an_unusable_netlist_leaves_an_older_drawing_as_it_is() throws IOException {
    Path bad = folder.resolve("bad.yaml");
    Path svg = folder.resolve("old.svg");
    Files.writeString(bad, "coilwright: 1\nparts: [");
    Files.writeString(svg, "old");
    Ran ran = Cli.run("draw", bad.toString(), "-o", svg.toString());
    assertEquals(2, ran.code());
    assertEquals("old", Files.readString(svg));
    assertEquals(List.of(bad, svg), files());
  }
}
