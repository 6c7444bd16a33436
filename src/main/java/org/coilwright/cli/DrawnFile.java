package org.coilwright.cli;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.zip.CRC32;

/**
 * Drawings that coilwright wrote, as SVG or PNG. Each ends in a digest of what stands before, so
 * that nothing which somebody else drew, wrote or changed is taken for one.
 */
final class DrawnFile {
  private static final byte[] PNG = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'};

  /** The empty chunk at the end of every PNG: its length, name and checksum. */
  private static final int PNG_END = 12;

  private static final int MOST_BYTES = 64 << 20;

  private DrawnFile() {}

  /** The drawing with its digest. */
  static byte[] marked(byte[] drawing) {
    if (!isPng(drawing)) {
      return joined(drawing, comment(drawing));
    }
    byte[] body = Arrays.copyOf(drawing, drawing.length - PNG_END);
    byte[] end = Arrays.copyOfRange(drawing, body.length, drawing.length);
    return joined(joined(body, chunk(body)), end);
  }

  /**
   * Why a file must stay, as the end of a sentence; empty if it may go or is not there.
   *
   * @param coming what would stand in its place; the same bytes lose nothing
   */
  static Optional<String> refusal(Path target, byte[] coming) {
    try {
      if (!Files.isRegularFile(target) || Files.size(target) == 0) {
        return Optional.empty();
      }
      if (Files.size(target) <= MOST_BYTES) {
        byte[] there = FileBytes.of(target);
        if (Arrays.equals(there, coming) || isMarked(there)) {
          return Optional.empty();
        }
      }
      return Optional.of(
          "is no drawing of coilwright's, or was changed since, and is not written over.");
    } catch (IOException e) {
      return Optional.of("cannot be looked into, so it is not written over.");
    }
  }

  private static boolean isMarked(byte[] file) {
    int mark = isPng(file) ? chunk(file).length + PNG_END : comment(file).length;
    if (file.length <= mark) {
      return false;
    }
    byte[] body = Arrays.copyOf(file, file.length - mark);
    byte[] expected = isPng(file) ? chunk(body) : comment(body);
    return Arrays.equals(
        file, body.length, body.length + expected.length, expected, 0, expected.length);
  }

  private static boolean isPng(byte[] file) {
    return file.length > PNG.length + PNG_END
        && Arrays.equals(file, 0, PNG.length, PNG, 0, PNG.length);
  }

  private static byte[] comment(byte[] before) {
    return ("<!-- drawn by coilwright; SHA-256 of all above: " + Digest.of(before) + " -->\n")
        .getBytes(StandardCharsets.US_ASCII);
  }

  /** A text chunk (PNG, chunk tEXt): length, name, keyword, a zero, text, checksum. */
  private static byte[] chunk(byte[] before) {
    byte[] text =
        ("tEXtSoftware\0coilwright; SHA-256 of all above: " + Digest.of(before))
            .getBytes(StandardCharsets.US_ASCII);
    CRC32 check = new CRC32();
    check.update(text);
    return ByteBuffer.allocate(text.length + 8)
        .putInt(text.length - 4)
        .put(text)
        .putInt((int) check.getValue())
        .array();
  }

  private static byte[] joined(byte[] first, byte[] second) {
    byte[] both = Arrays.copyOf(first, first.length + second.length);
    System.arraycopy(second, 0, both, first.length, second.length);
    return both;
  }
}
