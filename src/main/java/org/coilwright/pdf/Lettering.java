package org.coilwright.pdf;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.text.Normalizer;
import java.util.Arrays;
import java.util.Locale;
import org.apache.fontbox.ttf.CmapLookup;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;

/** One cut of the embedded typeface: how wide its characters are and which ones it has. */
final class Lettering {
  private final TrueTypeFont font;
  private final CmapLookup characters;
  private final double unitsPerEm;

  /** Widths in em of the characters that are common; NaN until asked for. */
  private final double[] widths = new double[0x2800];

  private Lettering(TrueTypeFont font) throws IOException {
    this.font = font;
    this.characters = font.getUnicodeCmapLookup();
    this.unitsPerEm = font.getUnitsPerEm();
    Arrays.fill(widths, Double.NaN);
  }

  /** Reads the cut from the class path. */
  static Lettering of(Face face) {
    String name = face == Face.BOLD ? "DejaVuSansCondensed-Bold" : "DejaVuSansCondensed";
    String resource = "/fonts/" + name + ".subset.ttf";
    try (InputStream in = Lettering.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("no font " + resource);
      }
      return new Lettering(new TTFParser().parse(new RandomAccessReadBuffer(in.readAllBytes())));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  TrueTypeFont font() {
    return font;
  }

  /** Width in points of text that {@link #printable} has seen. */
  double width(String text, double size) {
    double em = 0;
    for (int i = 0; i < text.length(); ) {
      int character = text.codePointAt(i);
      em += em(character);
      i += Character.charCount(character);
    }
    return em * size;
  }

  private double em(int character) {
    if (character >= widths.length) {
      return measured(character);
    }
    if (Double.isNaN(widths[character])) {
      widths[character] = measured(character);
    }
    return widths[character];
  }

  private double measured(int character) {
    try {
      return font.getAdvanceWidth(characters.getGlyphId(character)) / unitsPerEm;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * The text as this cut can print it: composed, white space as single spaces, and a character it
   * lacks as its number, so that two names that differ still differ on paper.
   */
  String printable(String text) {
    if (isPlain(text)) {
      return text;
    }
    String composed = Normalizer.normalize(text, Normalizer.Form.NFC);
    StringBuilder out = new StringBuilder(composed.length());
    for (int i = 0; i < composed.length(); ) {
      int character = composed.codePointAt(i);
      i += Character.charCount(character);
      if (Character.isWhitespace(character) || Character.isISOControl(character)) {
        if (out.isEmpty() || out.charAt(out.length() - 1) != ' ') {
          out.append(' ');
        }
      } else if (characters.getGlyphId(character) == 0) {
        out.append(String.format(Locale.ROOT, "{U+%04X}", character));
      } else {
        out.appendCodePoint(character);
      }
    }
    return out.toString().strip();
  }

  /** Most text is: letters, digits and signs of ASCII with single spaces between. */
  private static boolean isPlain(String text) {
    char before = ' ';
    for (int i = 0; i < text.length(); i++) {
      char character = text.charAt(i);
      if (character < ' ' || character > '~' || (character == ' ' && before == ' ')) {
        return false;
      }
      before = character;
    }
    return before != ' ';
  }
}
