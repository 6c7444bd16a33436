package org.coilwright.cli;

import java.io.PrintStream;
import java.util.List;
import org.coilwright.rule.Report;
import org.coilwright.rule.Verdict;
import org.coilwright.rule.Weight;

/** Several files: a line each and a total. */
final class TotalText implements Account {
  private final PrintStream out;
  private final Style style;
  private final int width;
  private final long[] counts = new long[6];
  private Verdict heaviest = Verdict.CLEAR;
  private int files;
  private int unread;

  /**
   * Begins.
   *
   * @param out where it goes, line by line
   * @param names of all the files there will be
   */
  TotalText(PrintStream out, List<String> names, Style style) {
    this.out = out;
    this.style = style;
    this.width = names.stream().mapToInt(n -> Lines.width(Lines.harmless(n))).max().orElse(0);
  }

  @Override
  public void add(Inspection inspection) {
    String name = Lines.padded(Lines.harmless(inspection.file()), width) + "  ";
    if (inspection instanceof Inspection.Done done) {
      Report report = done.report();
      out.print(name + VerdictLine.of(report, style) + "\n");
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
      boolean fault = inspection instanceof Inspection.Faulted;
      out.print(name + style.bad("not checked"));
      out.print(fault ? ": a fault of coilwright itself.\n" : ": it cannot be read.\n");
      unread++;
    }
    files++;
  }

  @Override
  public void end() {
    StringBuilder text = new StringBuilder("\n");
    Lines.wrap(text, "", TextReport.CAUTION, style.width());
    text.append(files).append(" files");
    if (unread > 0) {
      text.append(", ").append(unread).append(" not checked");
    }
    if (unread < files) {
      text.append("; ")
          .append(VerdictLine.painted(heaviest, style))
          .append(": ")
          .append(
              VerdictLine.counts(counts[0], counts[1], counts[2], counts[3], counts[4], counts[5]));
    } else {
      text.append('.');
    }
    text.append("\nNext:  coilwright check FILE shows the findings of one file\n");
    out.print(text);
  }
}
