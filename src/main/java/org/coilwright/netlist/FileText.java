package org.coilwright.netlist;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.ArrayList;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * A file's bytes as text, once it is sure that they are text.
 *
 * @param text without a byte order mark
 * @param lines without line ends
 * @param sha256 computes the digest of the bytes
 */
record FileText(String file, String text, List<String> lines, Supplier<String> sha256) {
  /**
   * Decodes.
   *
   * @throws Refusal if the bytes are too many, or no UTF-8 text
   */
  static FileText of(String file, byte[] bytes) {
    if (bytes.length > LargestFile.BYTES) {
      throw new Refusal(
          Optional.empty(),
          "the file has "
              + LargestFile.words(bytes.length)
              + "; at most "
              + LargestFile.words()
              + " are read",
          "check that this is a netlist, or split it");
    }
    if (bytes.length >= 2 && (startsWith(bytes, 0xFE, 0xFF) || startsWith(bytes, 0xFF, 0xFE))) {
      throw new Refusal(
          Optional.empty(), "the file is written in UTF-16", "save it as UTF-8 and try again");
    }
    boolean byteOrderMark = bytes.length >= 3 && startsWith(bytes, 0xEF, 0xBB, 0xBF);
    String text = decoded(file, bytes, byteOrderMark ? 3 : 0);
    refuseControlCharacters(file, text);
    return new FileText(file, text, lines(text), () -> digest(bytes));
  }

  /** Lines without their ends; a last one that is empty counts, since a message may point there. */
  private static List<String> lines(String text) {
    List<String> lines = new ArrayList<>(text.lines().toList());
    if (text.isEmpty() || text.endsWith("\n") || text.endsWith("\r")) {
      lines.add("");
    }
    return List.copyOf(lines);
  }

  /** A line for a message: control characters made visible, at most 160 characters. */
  static String excerpt(String line) {
    boolean isLong = line.codePointCount(0, line.length()) > 160;
    return harmless(isLong ? line.substring(0, line.offsetByCodePoints(0, 160)) + "…" : line);
  }

  /** The same text with control characters made visible. */
  static String harmless(String text) {
    StringBuilder shown = new StringBuilder(text.length());
    text.codePoints()
        .forEach(c -> shown.appendCodePoint(c == '\t' ? ' ' : isHarmful(c) ? '\uFFFD' : c));
    return shown.toString();
  }

  private static boolean startsWith(byte[] bytes, int... start) {
    for (int i = 0; i < start.length; i++) {
      if ((bytes[i] & 0xFF) != start[i]) {
        return false;
      }
    }
    return true;
  }

  private static String decoded(String file, byte[] bytes, int from) {
    ByteBuffer in = ByteBuffer.wrap(bytes, from, bytes.length - from);
    CharBuffer out = CharBuffer.allocate(bytes.length);
    var decoder =
        StandardCharsets.UTF_8
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    try {
      var end = decoder.decode(in, out, true);
      if (end.isError()) {
        end.throwException();
      }
    } catch (CharacterCodingException e) {
      String before = out.flip().toString();
      throw new Refusal(
          Optional.of(markAtEnd(file, before)),
          "the file is not UTF-8 text from here on",
          "save it as UTF-8, or check that this is a netlist");
    }
    return out.flip().toString();
  }

  private static void refuseControlCharacters(String file, String text) {
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      boolean usual = (c >= ' ' && c <= '~') || c == '\t' || c == '\n' || c == '\r';
      if (!usual && isHarmful(c)) {
        throw new Refusal(
            Optional.of(markAtEnd(file, text.substring(0, i))),
            String.format("a control character (U+%04X) stands here", (int) c),
            "take it out; a netlist is plain text");
      }
    }
  }

  /**
   * Control characters, and those that turn the reading direction around or hide: a message must
   * show what is there.
   */
  static boolean isHarmful(int c) {
    return Character.isISOControl(c)
        || c == 0x200B
        || c == 0x200E
        || c == 0x200F
        || (c >= 0x2028 && c <= 0x202E)
        || (c >= 0x2060 && c <= 0x2069)
        || (c >= 0xFFF9 && c <= 0xFFFB)
        || c == 0xFEFF
        || c == 0xFFFE
        || c == 0xFFFF;
  }

  private static Mark markAtEnd(String file, String before) {
    String[] lines = before.split("\r\n|\r|\n", -1);
    String last = lines[lines.length - 1];
    int column = last.codePointCount(0, last.length()) + 1;
    return new Mark(file, lines.length, column, column + 1);
  }

  private static String digest(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
