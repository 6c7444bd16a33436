package org.coilwright.table;

/**
 * What a table says of a number that lies between two of its rows. Outside of them it is silent.
 */
public enum Between {
  /** Nothing: only the rows themselves are known. */
  NONE("none"),
  /** The row below holds until the next one starts. */
  LOWER_ROW("lower-row"),
  /** Each row holds up to and including its own key, the first one from the least value on. */
  UP_TO("up-to"),
  /** A straight line from row to row. */
  INTERPOLATE("interpolate");

  private final String word;

  Between(String word) {
    this.word = word;
  }

  /** The word used in table files. */
  public String word() {
    return word;
  }
}
