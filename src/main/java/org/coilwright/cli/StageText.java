package org.coilwright.cli;

import java.util.List;
import org.coilwright.behaviour.DayFile;
import org.coilwright.behaviour.Stage;
import org.coilwright.quantity.Words;

/** Why a netlist or a file of measurements cannot be rehearsed. */
final class StageText {
  private StageText() {}

  /** What the netlist does not say. */
  static String missing(String file, Stage stage, Style style) {
    StringBuilder out = new StringBuilder();
    String name = file.equals(InputFile.STDIN) ? "standard input" : file;
    Lines.wrap(
        out,
        "",
        "%s cannot be rehearsed for want of %s.".formatted(name, Words.all(stage.wants())),
        style.width());
    Lines.wrap(
        out,
        "      Do:    ",
        "Add what is missing; coilwright new shows a netlist with all of it.",
        style.width());
    return out.toString();
  }

  /** What is wrong with the lines of a file. */
  static String problems(String file, List<DayFile.Problem> problems, Style style) {
    StringBuilder out = new StringBuilder();
    for (DayFile.Problem problem : problems) {
      String where = problem.line() == 0 ? file : file + ", line " + problem.line();
      out.append(style.strong(Lines.harmless(where))).append('\n');
      Lines.wrap(out, "      ", problem.what(), style.width());
      Lines.wrap(out, "      Do:    ", problem.remedy(), style.width());
      out.append('\n');
    }
    out.append(Lines.harmless(file))
        .append(" was not used: ")
        .append(problems.size() == 1 ? "1 problem" : problems.size() + " problems")
        .append(" in reading it.\n");
    return out.toString();
  }
}
