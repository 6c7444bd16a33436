package org.coilwright.pdf;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TTFSubsetter;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The program carries small fonts, so that a checklist starts quickly. Here they are made again
 * from the whole ones and compared; {@code -Daccept=true} writes them.
 */
class FontsAreSubsetsTest {
  private static final String WHOLE = "/net/sf/jasperreports/fonts/dejavu/";
  private static final Path SHIPPED = Path.of("src/main/resources/fonts");

  /** No GSUB, GPOS or kern: a ligature would spoil what a search finds in the page. */
  private static final List<String> TABLES =
      List.of(
          "OS/2", "cmap", "cvt ", "fpgm", "gasp", "glyf", "head", "hhea", "hmtx", "loca", "maxp",
          "name", "post", "prep");

  /** First and last of each stretch of characters kept. */
  private static final int[][] KEPT = {
    {0x20, 0x7E}, // Latin
    {0xA0, 0x17F}, // western and central European letters, ± ² ° µ
    {0x218, 0x21B}, // Romanian
    {0x370, 0x3FF}, // Greek, Ω
    {0x400, 0x45F}, // Cyrillic
    {0x490, 0x491},
    {0x2010, 0x2015},
    {0x2018, 0x201E},
    {0x2020, 0x2022},
    {0x2026, 0x2026},
    {0x2030, 0x2030},
    {0x2032, 0x2033},
    {0x2039, 0x203A},
    {0x2070, 0x208E}, // superscripts and subscripts
    {0x20AC, 0x20AC},
    {0x2116, 0x2116},
    {0x2122, 0x2122},
    {0x2126, 0x2126},
    {0x2150, 0x215E},
    {0x2190, 0x2195},
    {0x21D2, 0x21D2},
    {0x2205, 0x2206},
    {0x2211, 0x2212},
    {0x221A, 0x221A},
    {0x221E, 0x221E},
    {0x2220, 0x2220},
    {0x2227, 0x2228},
    {0x2248, 0x2248},
    {0x2260, 0x2260},
    {0x2264, 0x2265},
    {0x25A0, 0x25A1},
    {0x25CB, 0x25CB},
    {0x25CF, 0x25CF},
    {0x2610, 0x2612},
    {0x26A0, 0x26A1},
    {0x2713, 0x2713},
    {0x2717, 0x2717},
    {0xFFFD, 0xFFFD},
  };

  @ParameterizedTest
  @ValueSource(strings = {"DejaVuSansCondensed", "DejaVuSansCondensed-Bold"})
  void the_shipped_font_is_the_named_part_of_the_whole_one(String name) throws IOException {
    byte[] made = subset(name);
    Path shipped = SHIPPED.resolve(name + ".subset.ttf");
    if (Boolean.getBoolean("accept")) {
      Files.write(shipped, made);
    }
    assertArrayEquals(made, Files.readAllBytes(shipped));
    assertTrue(made.length < 120_000, "it should stay small, and is " + made.length + " bytes");
  }

  private static byte[] subset(String name) throws IOException {
    try (InputStream in = FontsAreSubsetsTest.class.getResourceAsStream(WHOLE + name + ".ttf");
        TrueTypeFont whole = new TTFParser().parse(new RandomAccessReadBuffer(in))) {
      TTFSubsetter subsetter = new TTFSubsetter(whole, TABLES);
      for (int[] stretch : KEPT) {
        for (int character = stretch[0]; character <= stretch[1]; character++) {
          subsetter.add(character);
        }
      }
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      subsetter.writeToStream(out);
      return out.toByteArray();
    }
  }
}
