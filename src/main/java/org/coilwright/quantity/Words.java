package org.coilwright.quantity;

import java.util.List;

/** Lists as a sentence has them. */
public final class Words {
  private Words() {}

  /** {@code a}, {@code a or b}, {@code a, b or c}. */
  public static String either(List<String> words) {
    return joined(words, " or ");
  }

  /** {@code a}, {@code a and b}, {@code a, b and c}. */
  public static String all(List<String> words) {
    return joined(words, " and ");
  }

  /** At most 40 characters of a text, so that a message stays one line. */
  public static String shortened(String text) {
    return text.codePointCount(0, text.length()) <= 40
        ? text
        : text.substring(0, text.offsetByCodePoints(0, 39)) + "…";
  }

  private static String joined(List<String> words, String last) {
    int n = words.size();
    if (n < 2) {
      return n == 0 ? "" : words.get(0);
    }
    return String.join(", ", words.subList(0, n - 1)) + last + words.get(n - 1);
  }
}
