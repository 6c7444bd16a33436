package org.coilwright.cli;

import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** {@code coilwright verify FILE.pdf}. */
final class VerifyCommand extends SheetCommand {
  VerifyCommand(Console console) {
    super(console);
  }

  @Override
  CommandSpec spec() {
    CommandSpec spec =
        spec(
            "Checks the netlist that travels in a checklist again, and says what comes out"
                + " otherwise.",
            "",
            "The checklist may be empty, filled in or a final record. A difference is named with"
                + " the",
            "rule or row it shows in and the tables whose figures have changed.",
            "",
            "Example:",
            "  coilwright verify boiler.pdf",
            "",
            "Ends with 0: the same, 1: different, 2: the file cannot be used, 3: a fault of",
            "coilwright itself.");
    Options.file(spec, "FILE.pdf", "Checklist; - reads standard input.");
    return spec;
  }

  @Override
  int run(ParseResult parsed) {
    String file = Options.file(parsed);
    Optional<Sheet> sheet = open(file);
    if (sheet.isEmpty()) {
      return Exit.UNUSABLE;
    }
    Remade remade = sheet.get().remade();
    Origin again = remade.again();
    Differences differences = Differences.between(remade.origin(), again);
    console().out().print(text(file, remade.origin(), again, differences));
    return differences.isSame() ? Exit.NOTHING_FOUND : Exit.FINDINGS;
  }

  private String text(String file, Origin then, Origin now, Differences differences) {
    StringBuilder out = new StringBuilder();
    int width = outStyle().width();
    Lines.wrap(
        out,
        "",
        file
            + ": made by "
            + then.program()
            + " on "
            + then.printed()
            + ", checked again by "
            + now.program()
            + ".",
        width);
    section(out, "Results that differ", differences.outcomes(), width);
    section(out, "Expected readings that differ", differences.rows(), width);
    section(out, "Tables whose figures have changed", differences.tables(), width);
    out.append('\n');
    Lines.wrap(out, "", differences.sentence(), width);
    Lines.wrap(
        out,
        "",
        "What was filled in was not looked at; coilwright readback does that. "
            + TextReport.CAUTION,
        width);
    return out.toString();
  }

  private static void section(StringBuilder out, String head, List<String> lines, int width) {
    if (!lines.isEmpty()) {
      out.append('\n').append(head).append('\n');
      lines.forEach(line -> Lines.wrap(out, "  ", line, width));
    }
  }
}
