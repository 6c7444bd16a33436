package org.coilwright.sizing;

import java.util.Optional;

/** What came of a question: an answer, or the key that is missing for one. */
public sealed interface Found<T> {
  /** The answer. */
  record Known<T>(T value) implements Found<T> {}

  /**
   * No answer.
   *
   * @param missing the key that would decide it, such as {@code rated-air of Q1}
   * @param why one sentence
   * @param settledBy one sentence on who or what settles it where no key can; else empty
   */
  record Unknown<T>(String missing, String why, String settledBy) implements Found<T> {
    public Unknown(String missing, String why) {
      this(missing, why, "");
    }
  }

  /** The answer, if there is one. */
  default Optional<T> known() {
    return this instanceof Known<T> known ? Optional.of(known.value()) : Optional.empty();
  }
}
