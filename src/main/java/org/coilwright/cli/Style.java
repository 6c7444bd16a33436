package org.coilwright.cli;

/**
 * How text is laid out.
 *
 * @param colour true for ANSI colours
 * @param width characters a line may have where text can be wrapped; at least 40
 */
public record Style(boolean colour, int width) {
  /** No colour, 80 characters: the form that files and tests compare. */
  public static final Style PLAIN = new Style(false, 80);

  private static final String RESET = "\u001b[0m";

  String bad(String text) {
    return paint("\u001b[1;31m", text);
  }

  String mend(String text) {
    return paint("\u001b[1;33m", text);
  }

  String know(String text) {
    return paint("\u001b[1;36m", text);
  }

  String faint(String text) {
    return paint("\u001b[2m", text);
  }

  String strong(String text) {
    return paint("\u001b[1m", text);
  }

  private String paint(String code, String text) {
    return colour && !text.isEmpty() ? code + text + RESET : text;
  }
}
