package org.coilwright.netlist;

import java.util.List;

/** What came of reading a file: a netlist, or every problem that stands in the way of one. */
public sealed interface Reading {
  /** The file could be read. */
  record Read(Netlist netlist) implements Reading {}

  /** The file could not be used; at least one problem. */
  record Unusable(List<ReadingProblem> problems) implements Reading {}
}
