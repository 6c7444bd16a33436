package org.coilwright.cli;

import java.util.List;
import org.coilwright.rule.Report;
import org.coilwright.rule.Verdict;
import org.coilwright.rule.Weight;

/** Several files: a line each and a total. */
final class TotalText {
  private TotalText() {}

  static String of(List<Inspection> inspections, Style style) {
    int width =
        inspections.stream().mapToInt(i -> Lines.width(Lines.harmless(i.file()))).max().orElse(0);
    StringBuilder out = new StringBuilder();
    Verdict heaviest = Verdict.CLEAR;
    long[] counts = new long[6];
    int unread = 0;
    for (Inspection inspection : inspections) {
      out.append(Lines.padded(Lines.harmless(inspection.file()), width)).append("  ");
      if (inspection instanceof Inspection.Done done) {
        Report report = done.report();
        out.append(VerdictLine.of(report, style));
        if (report.verdict().compareTo(heaviest) < 0) {
          heaviest = report.verdict();
        }
        counts[0] += report.count(Weight.STOP);
        counts[1] += report.count(Weight.FIX);
        counts[2] += report.count(Weight.NOTE);
        counts[3] += report.satisfied().size();
        counts[4] += report.undecided().size();
        counts[5] += VerdictLine.accepted(report);
      } else {
        unread++;
        out.append(style.bad("not checked")).append(": it cannot be read.");
      }
      out.append('\n');
    }
    out.append('\n');
    Lines.wrap(out, "", TextReport.CAUTION, style.width());
    out.append(inspections.size()).append(" files");
    if (unread > 0) {
      out.append(", ").append(unread).append(" not checked");
    }
    if (unread < inspections.size()) {
      out.append("; ")
          .append(VerdictLine.painted(heaviest, style))
          .append(": ")
          .append(
              VerdictLine.counts(counts[0], counts[1], counts[2], counts[3], counts[4], counts[5]));
    } else {
      out.append('.');
    }
    out.append('\n');
    out.append("Next:  coilwright check FILE shows the findings of one file\n");
    return out.toString();
  }
}
