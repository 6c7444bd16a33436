package org.coilwright.pdf;

/** A file that must not be read any further; caught where it was opened. */
final class Unfit extends Exception {
  private static final long serialVersionUID = 1L;

  private final String what;
  private final String remedy;

  /** Both without a full stop. */
  Unfit(String what, String remedy) {
    super(what, null, false, false);
    this.what = what;
    this.remedy = remedy;
  }

  String what() {
    return what;
  }

  String remedy() {
    return remedy;
  }
}
