package org.coilwright.checklist;

/** What somebody wrote down as a reading, in the unit of its row. */
public sealed interface Reading {
  /** A value. */
  record Exact(double value) implements Reading {}

  /** More than the instrument shows, which is {@code bound}: {@code > 500 MΩ}. */
  record Above(double bound) implements Reading {}

  /** Less than {@code bound}: {@code < 0.1 Ω}. */
  record Below(double bound) implements Reading {}

  /** Over the range of the instrument, which was not written down: {@code OL}. */
  record OverRange() implements Reading {}

  /**
   * Can be read in more than one way or in none.
   *
   * @param why one sentence without its full stop
   */
  record Unclear(String why) implements Reading {}
}
