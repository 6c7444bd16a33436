package org.coilwright.cli;

import java.util.List;
import org.coilwright.netlist.ReadingProblem;
import org.coilwright.rule.Report;
import org.coilwright.solve.Study;

/** What came of looking at one file. */
public sealed interface Inspection {
  /** The file as the user named it. */
  String file();

  /** It could be read and solved; no rule was asked. */
  record Solved(String file, Study study) implements Inspection {}

  /** It could be read, solved and checked. */
  record Done(String file, Study study, Report report) implements Inspection {}

  /** It could not be used; at least one problem. */
  record Unusable(String file, List<ReadingProblem> problems) implements Inspection {}

  /**
   * The program itself was at fault; nothing was judged.
   *
   * @param fault what it met, one line
   */
  record Faulted(String file, String fault) implements Inspection {}
}
