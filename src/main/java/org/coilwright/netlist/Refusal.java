package org.coilwright.netlist;

import java.util.Optional;

/** Ends the reading of one file at once; it becomes a {@link ReadingProblem} in the reader. */
final class Refusal extends RuntimeException {
  private static final long serialVersionUID = 1L;
  private final transient Optional<Mark> mark;
  private final String what;
  private final String remedy;

  Refusal(Optional<Mark> mark, String what, String remedy) {
    super(what, null, false, false);
    this.mark = mark;
    this.what = what;
    this.remedy = remedy;
  }

  Optional<Mark> mark() {
    return mark;
  }

  String what() {
    return what;
  }

  String remedy() {
    return remedy;
  }
}
