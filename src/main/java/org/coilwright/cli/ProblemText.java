package org.coilwright.cli;

import java.util.List;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.ReadingProblem;

/** Reading problems as a person reads them: where, what, the line with a caret, what to do. */
final class ProblemText {
  /** After this many the first ones are what a person mends first. */
  private static final int MOST = 20;

  private ProblemText() {}

  static String of(String file, List<ReadingProblem> problems, Style style) {
    StringBuilder out = new StringBuilder();
    for (ReadingProblem problem : problems.subList(0, Math.min(MOST, problems.size()))) {
      append(out, problem, style);
      out.append('\n');
    }
    if (problems.size() > MOST) {
      out.append(problems.size() - MOST).append(" more are not shown.\n");
    }
    String name = file.equals(InputFile.STDIN) ? "standard input" : Lines.harmless(file);
    out.append(name)
        .append(" was not checked: ")
        .append(problems.size() == 1 ? "1 problem" : problems.size() + " problems")
        .append(" in reading it.\n");
    return out.toString();
  }

  private static void append(StringBuilder out, ReadingProblem problem, Style style) {
    StringBuilder where = new StringBuilder(Lines.harmless(problem.file()));
    problem
        .mark()
        .ifPresent(
            mark ->
                where
                    .append(", line ")
                    .append(mark.line())
                    .append(", column ")
                    .append(mark.column()));
    out.append(style.strong(where.toString())).append('\n');
    Lines.wrap(out, "      ", problem.what(), style.width());
    if (problem.mark().isPresent() && problem.excerpt().isPresent()) {
      Mark mark = problem.mark().get();
      out.append('\n');
      new Excerpt(style).append(out, mark, problem.excerpt().get(), "", style::bad);
      out.append('\n');
    }
    Lines.wrap(out, "      Do:    ", problem.remedy(), style.width());
  }
}
