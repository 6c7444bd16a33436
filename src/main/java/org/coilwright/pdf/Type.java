package org.coilwright.pdf;

/** Sizes in points. Body text is never below ten, the running foot never below nine. */
final class Type {
  static final double BODY = 10;

  /** What is read at arm's length while both hands hold something: step, place, expected value. */
  static final double STEP = 12;

  /** Between baselines, for text of {@link #BODY}; other sizes keep the ratio. */
  static final double LEADING = 13.5;

  static final double HEADING = 14;
  static final double TITLE = 17;
  static final double FOOT = 9;

  /** Boxes and rules: no thicker than needed. */
  static final double HAIRLINE = 0.5;

  /** Part of the size that stands above the baseline, accents included. */
  static final double ASCENT = 0.93;

  /** Between baselines. */
  static double leading(double size) {
    return size * LEADING / BODY;
  }

  private Type() {}
}
