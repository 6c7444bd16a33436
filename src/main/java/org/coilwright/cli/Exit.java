package org.coilwright.cli;

/** What the process ends with. */
final class Exit {
  /** Judged, and nothing at or above the asked weight. */
  static final int NOTHING_FOUND = 0;

  /** Judged, and something to stop or to fix. */
  static final int FINDINGS = 1;

  /** Not judged: the input or the command line cannot be used. */
  static final int UNUSABLE = 2;

  /** Not judged: a fault of the program. */
  static final int DEFECT = 3;

  private Exit() {}
}
