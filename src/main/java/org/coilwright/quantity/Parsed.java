package org.coilwright.quantity;

/** What came of parsing a text: a value, or what is wrong with the text and what to write. */
public sealed interface Parsed<T> {
  /** The text means this value. */
  record Good<T>(T value) implements Parsed<T> {}

  /**
   * The text means nothing that fits.
   *
   * @param offset first offending character, 0 for the start of the text
   * @param length how many characters offend; at least 1
   * @param what what is wrong, one sentence without its full stop
   * @param remedy what to write instead, same form
   */
  record Bad<T>(int offset, int length, String what, String remedy) implements Parsed<T> {}
}
