package org.coilwright.drawing;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;

/**
 * How wide text is in the typeface that comes with the program. Read from the tables {@code head},
 * {@code hhea}, {@code hmtx} and {@code cmap} of the font file (ISO/IEC 14496-22).
 */
public final class Letters {
  /** Capital letters stand this part of the size above the base line. */
  public static final double CAPITAL = 0.729;

  private static final String FONT = "/fonts/DejaVuSansCondensed.subset.ttf";

  private final ByteBuffer font;
  private final double unitsPerEm;
  private final int advances;
  private final int metrics;
  private final int characters;

  /** Advances of the characters that are common; below zero until asked for. */
  private final int[] known = new int[0x2800];

  private Letters(ByteBuffer font) {
    this.font = font;
    this.unitsPerEm = unsigned(table("head") + 18);
    this.advances = unsigned(table("hhea") + 34);
    this.metrics = table("hmtx");
    this.characters = unicode(table("cmap"));
    Arrays.fill(known, -1);
  }

  /** Reads the typeface. */
  public static Letters load() {
    try (InputStream in = Letters.class.getResourceAsStream(FONT)) {
      if (in == null) {
        throw new IllegalStateException("the font is missing: " + FONT);
      }
      return new Letters(ByteBuffer.wrap(in.readAllBytes()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Width of a line of text, in the unit of {@code size}. */
  public double width(String text, double size) {
    return text.codePoints().map(this::advance).sum() / unitsPerEm * size;
  }

  private int advance(int character) {
    if (character >= known.length) {
      return read(character);
    }
    if (known[character] < 0) {
      known[character] = read(character);
    }
    return known[character];
  }

  private int read(int character) {
    return unsigned(metrics + 4 * Math.min(glyph(character), advances - 1));
  }

  /** Table of segments, the format that holds all characters this program prints. */
  private int glyph(int character) {
    int segments = unsigned(characters + 6) / 2;
    int ends = characters + 14;
    int starts = ends + 2 * segments + 2;
    int deltas = starts + 2 * segments;
    int offsets = deltas + 2 * segments;
    for (int i = 0; i < segments; i++) {
      if (character > unsigned(ends + 2 * i)) {
        continue;
      }
      int start = unsigned(starts + 2 * i);
      if (character < start) {
        return 0;
      }
      int delta = unsigned(deltas + 2 * i);
      int at = offsets + 2 * i;
      int offset = unsigned(at);
      if (offset == 0) {
        return (character + delta) & 0xffff;
      }
      int glyph = unsigned(at + offset + 2 * (character - start));
      return glyph == 0 ? 0 : (glyph + delta) & 0xffff;
    }
    return 0;
  }

  private int unicode(int table) {
    int count = unsigned(table + 2);
    for (int i = 0; i < count; i++) {
      int subtable = table + font.getInt(table + 8 + 8 * i);
      if (unsigned(subtable) == 4) {
        return subtable;
      }
    }
    throw new IllegalStateException("the font has no table of characters in segments: " + FONT);
  }

  private int table(String tag) {
    int wanted = ByteBuffer.wrap(tag.getBytes(StandardCharsets.US_ASCII)).getInt();
    int count = unsigned(4);
    for (int i = 0; i < count; i++) {
      int entry = 12 + 16 * i;
      if (font.getInt(entry) == wanted) {
        return font.getInt(entry + 8);
      }
    }
    throw new IllegalStateException("the font lacks " + tag + ": " + FONT);
  }

  private int unsigned(int at) {
    return font.getShort(at) & 0xffff;
  }
}
