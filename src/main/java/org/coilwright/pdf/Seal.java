package org.coilwright.pdf;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Arrays;
import java.util.HexFormat;

/**
 * Tells a sheet as it was written from one that anything was done to since. The second part of a
 * PDF's file identifier changes with each change of the file (ISO 32000-1:2008, 14.4); here it is
 * the SHA-256 of the file, in which it counts as zeros itself.
 */
public final class Seal {
  private static final byte[] KEY = "/ID [<".getBytes(StandardCharsets.US_ASCII);
  private static final byte[] BETWEEN = "> <".getBytes(StandardCharsets.US_ASCII);
  private static final int DIGITS = 64;

  private Seal() {}

  /**
   * The same file, sealed.
   *
   * @throws IllegalStateException if it has no identifier of 32 bytes twice
   */
  static byte[] on(byte[] pdf) {
    int at = place(pdf);
    if (at < 0) {
      throw new IllegalStateException("the PDF was written without a file identifier");
    }
    byte[] sealed = pdf.clone();
    System.arraycopy(digest(pdf, at), 0, sealed, at, DIGITS);
    return sealed;
  }

  /** True if the file is, byte by byte, a sheet as it was written. */
  public static boolean isWhole(byte[] pdf) {
    int at = place(pdf);
    return at >= 0 && Arrays.equals(pdf, at, at + DIGITS, digest(pdf, at), 0, DIGITS);
  }

  /** Where the second identifier begins; negative if there is none of this form. */
  private static int place(byte[] pdf) {
    int whole = KEY.length + DIGITS + BETWEEN.length + DIGITS;
    for (int i = pdf.length - whole; i >= 0; i--) {
      int second = i + KEY.length + DIGITS;
      if (Arrays.equals(pdf, i, i + KEY.length, KEY, 0, KEY.length)
          && Arrays.equals(pdf, second, second + BETWEEN.length, BETWEEN, 0, BETWEEN.length)) {
        return second + BETWEEN.length;
      }
    }
    return -1;
  }

  private static byte[] digest(byte[] pdf, int at) {
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      sha.update(pdf, 0, at);
      sha.update("0".repeat(DIGITS).getBytes(StandardCharsets.US_ASCII));
      sha.update(pdf, at + DIGITS, pdf.length - at - DIGITS);
      return HexFormat.of()
          .withUpperCase()
          .formatHex(sha.digest())
          .getBytes(StandardCharsets.US_ASCII);
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }
}
