package org.coilwright.drawing;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.Font;
import java.awt.FontFormatException;
import java.awt.font.FontRenderContext;
import java.awt.geom.AffineTransform;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Objects;
import org.junit.jupiter.api.Test;

class LettersTest {
  private static final Letters LETTERS = Letters.load();

  @Test
  void every_character_is_as_wide_as_the_graphics_library_draws_it()
      throws IOException, FontFormatException {
    try (InputStream in =
        Objects.requireNonNull(
            Letters.class.getResourceAsStream("/fonts/DejaVuSansCondensed.subset.ttf"))) {
      Font font = Font.createFont(Font.TRUETYPE_FONT, in).deriveFont(1000f);
      FontRenderContext exact = new FontRenderContext(new AffineTransform(), true, true);
      int compared = 0;
      for (int character = 0x20; character < 0x2720; character++) {
        boolean seen = Character.isLetterOrDigit(character) || isSign(character);
        if (font.canDisplay(character) && seen) {
          String text = Character.toString(character);
          double drawn = font.createGlyphVector(exact, text).getGlyphMetrics(0).getAdvanceX();
          assertEquals(drawn, LETTERS.width(text, 1000), 1, text);
          compared++;
        }
      }
      assertTrue(compared > 500, "compared " + compared);
    }
  }

  private static boolean isSign(int character) {
    return switch (Character.getType(character)) {
      case Character.MATH_SYMBOL,
          Character.OTHER_SYMBOL,
          Character.DASH_PUNCTUATION,
          Character.OTHER_PUNCTUATION,
          Character.SPACE_SEPARATOR ->
          true;
      default -> false;
    };
  }

  @Test
  void a_line_is_as_wide_as_its_characters() {
    double one = LETTERS.width("Ω", 10) + LETTERS.width("²", 10) + LETTERS.width("≤", 10);
    assertEquals(one, LETTERS.width("Ω²≤", 10), 1e-9);
  }

  @Test
  void an_svg_gives_each_text_its_width_and_escapes_what_xml_reserves() {
    Shape.Label label =
        new Shape.Label(new Shape.Point(5, 20), "4 mm² <BN> & Ω", 10, Shape.Anchor.END, false);
    String svg = Svg.of(new Picture(100, 50, "t", List.of(label)));
    String width = "%.2f".formatted(LETTERS.width(label.text(), 10)).replaceFirst("\\.?0+$", "");
    assertTrue(svg.contains("textLength=\"" + width + "\""), svg);
    assertTrue(svg.contains(">4 mm² &lt;BN&gt; &amp; Ω</text>"), svg);
  }
}
