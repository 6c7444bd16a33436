package org.coilwright.checklist;

/** How a row is answered on the page. */
public enum Manner {
  /** A reading is written down; the boxes of its line say how it lies. */
  READ,
  /** A reading or setting is compared with what is printed; only the boxes are ticked. */
  COMPARED,
  /** What is there is ticked as the one listed, or else written down. */
  LISTED,
  /** Something seen, heard or felt; only boxes are ticked. */
  SEEN,
  /** Something that is taken off, moved or put back; one box is ticked. */
  DONE,
  /** A supply or a breaker is switched: one box and initials, for that is where people get hurt. */
  SWITCHED;

  /** True if its only box says that it was done. */
  public boolean isDone() {
    return this == DONE || this == SWITCHED;
  }

  /** What fits an expectation if nothing else is said. */
  static Manner of(Expected expected) {
    return expected instanceof Expected.Seen ? SEEN : READ;
  }
}
