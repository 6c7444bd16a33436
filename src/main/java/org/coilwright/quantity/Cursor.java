package org.coilwright.quantity;

import java.math.BigDecimal;
import java.util.function.IntPredicate;

/** Walks through the text of a quantity; every failure knows its place. */
final class Cursor {
  /** So many digits are more than any meter shows, and keep every product finite. */
  private static final int MOST_DIGITS = 15;

  private final String text;
  private int at;

  Cursor(String text) {
    this.text = text;
    spaces();
  }

  int at() {
    return at;
  }

  void back(int to) {
    at = to;
  }

  boolean atEnd() {
    return at >= text.length();
  }

  String rest() {
    return text.substring(at);
  }

  String from(int start) {
    return text.substring(start, at).strip();
  }

  void spaces() {
    while (at < text.length() && isSpace(text.charAt(at))) {
      at++;
    }
  }

  /** Takes this text, if it stands here, and the spaces after it. */
  boolean take(String expected) {
    if (!text.startsWith(expected, at)) {
      return false;
    }
    at += expected.length();
    spaces();
    return true;
  }

  /** Takes this word in any case, if it stands here and ends here. */
  boolean takeWord(String word) {
    int end = at + word.length();
    if (!text.regionMatches(true, at, word, 0, word.length())
        || (end < text.length() && Character.isLetterOrDigit(text.charAt(end)))) {
      return false;
    }
    at = end;
    spaces();
    return true;
  }

  /** The longest run of characters that fit, without spaces around. */
  String run(IntPredicate fits) {
    int start = at;
    while (at < text.length() && fits.test(text.charAt(at))) {
      at++;
    }
    String run = text.substring(start, at);
    spaces();
    return run;
  }

  boolean isDigit() {
    return at < text.length() && Character.digit(text.charAt(at), 10) >= 0 && text.charAt(at) < 128;
  }

  /** A number, with its sign. */
  BigDecimal number() {
    int start = at;
    boolean minus = text.startsWith("-", at) || text.startsWith("\u2212", at);
    if (minus || text.startsWith("+", at)) {
      at++;
    }
    int digits = at;
    skipDigits();
    if (digits == at) {
      throw new Misread(start, 1, "a number is missing here", "start with a number");
    }
    if (at + 1 < text.length() && text.charAt(at) == '.' && isAsciiDigit(text.charAt(at + 1))) {
      at++;
      skipDigits();
    }
    String plain = text.substring(digits, at);
    refuseOtherNumberForms(start, plain);
    if (plain.length() > MOST_DIGITS) {
      throw new Misread(start, at - start, "the number is too long", "write at most 15 digits");
    }
    BigDecimal number = new BigDecimal(plain);
    spaces();
    return minus ? number.negate() : number;
  }

  private void refuseOtherNumberForms(int start, String plain) {
    if (at + 1 >= text.length() || !isAsciiDigit(text.charAt(at + 1))) {
      return;
    }
    char next = text.charAt(at);
    String after = text.substring(at + 1).split("[^0-9]", 2)[0];
    int length = at + 1 + after.length() - start;
    if (next == ',') {
      String remedy = "write a point for decimals and nothing between thousands: ";
      String meant = after.length() == 3 ? plain + after : plain + "." + after;
      throw new Misread(start, length, "a number here has no comma", remedy + meant);
    }
    if (next == '_' || next == '\'' || (isSpace(next) && after.length() == 3)) {
      throw new Misread(
          start, length, "the number is split in two", "write it in one piece: " + plain + after);
    }
    if (next == 'e' || next == 'E') {
      throw new Misread(start, length, "the number has an exponent", "write all its digits");
    }
  }

  private void skipDigits() {
    while (at < text.length() && isAsciiDigit(text.charAt(at))) {
      at++;
    }
  }

  private static boolean isAsciiDigit(char c) {
    return c >= '0' && c <= '9';
  }

  private static boolean isSpace(char c) {
    return c == ' ' || c == '\t' || c == '\u00a0' || c == '\u2009' || c == '\u202f';
  }

  /** Ends a parse; it never leaves the package. */
  static final class Misread extends RuntimeException {
    private static final long serialVersionUID = 1L;
    final int offset;
    final int length;
    final String what;
    final String remedy;

    Misread(int offset, int length, String what, String remedy) {
      super(what, null, false, false);
      this.offset = offset;
      this.length = Math.max(1, length);
      this.what = what;
      this.remedy = remedy;
    }

    <T> Parsed<T> asBad() {
      return new Parsed.Bad<>(offset, length, what, remedy);
    }
  }
}
