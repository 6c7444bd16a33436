package org.coilwright.cli;

import org.coilwright.rule.Report;
import org.coilwright.rule.Verdict;
import org.coilwright.rule.Weight;

/** The line a report ends with. */
final class VerdictLine {
  private VerdictLine() {}

  /** {@code STOP: 2 to stop, 1 to fix, 3 notes; 47 checks satisfied, 4 could not be made.} */
  static String of(Report report, Style style) {
    return painted(report.verdict(), style)
        + ": "
        + counts(
            report.count(Weight.STOP),
            report.count(Weight.FIX),
            report.count(Weight.NOTE),
            report.satisfied().size(),
            report.undecided().size(),
            accepted(report));
  }

  /** The counts in words. */
  static String counts(
      long stops, long fixes, long notes, long satisfied, long undecided, long accepted) {
    return stops
        + " to stop, "
        + fixes
        + " to fix, "
        + notes
        + (notes == 1 ? " note" : " notes")
        + (accepted == 0 ? "" : ", " + accepted + " accepted")
        + "; "
        + satisfied
        + (satisfied == 1 ? " check" : " checks")
        + " satisfied, "
        + undecided
        + " could not be made.";
  }

  /** Findings that an entry accepts and that therefore do not count. */
  static long accepted(Report report) {
    return report.findings().stream().filter(f -> !report.counts(f)).count();
  }

  static String painted(Verdict verdict, Style style) {
    return switch (verdict) {
      case STOP -> style.bad(verdict.name());
      case FIX -> style.mend(verdict.name());
      case NOTE -> style.know(verdict.name());
      case CLEAR -> verdict.name();
    };
  }
}
