package org.coilwright.table;

/** How sure a figure is. The order is from surest to least sure. */
public enum Standing {
  /** Read in a publication or a reprint of one, or computed from such by textbook theory. */
  PUBLISHED("published"),
  /** Used in the trade, no source. */
  COMMON_PRACTICE("common-practice"),
  /** Remembered, no page seen: confirm before relying on it. */
  FROM_MEMORY("from-memory");

  private final String word;

  Standing(String word) {
    this.word = word;
  }

  /** The word used in table files and in JSON. */
  public String word() {
    return word;
  }

  /** The less sure of the two: what a result that rests on both is worth. */
  public Standing weaker(Standing other) {
    return compareTo(other) >= 0 ? this : other;
  }
}
