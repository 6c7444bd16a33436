package org.coilwright.diagram;

/** Sizes in points. Capital letters are 2.5 mm high at least, the least of ISO 3098 at A4. */
final class Type {
  static final double SIZE = 9.8;
  static final double NAME = 11;
  static final double TITLE = 12;
  static final double LEADING = 11.5;

  static final double THIN = 0.7;
  static final double THICK = 1.8;

  private Type() {}
}
