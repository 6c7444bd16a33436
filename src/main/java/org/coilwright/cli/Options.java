package org.coilwright.cli;

import java.util.Locale;
import org.coilwright.checklist.Checklist.Paper;
import org.coilwright.rule.Report;
import org.coilwright.rule.Verdict;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** What several commands take, said and read in one place. */
final class Options {
  private static final String AS = "--as";
  private static final String PAPER = "--paper";

  private Options() {}

  /** Makes the command take one netlist. */
  static void netlist(CommandSpec spec) {
    file(spec, "FILE", "Netlist; - reads standard input.");
  }

  /** Makes the command take one file. */
  static void file(CommandSpec spec, String label, String description) {
    spec.addPositional(
        PositionalParamSpec.builder()
            .arity("1")
            .required(true)
            .type(String.class)
            .paramLabel(label)
            .description(description)
            .build());
  }

  /** The file that was given. */
  static String file(ParseResult parsed) {
    return parsed.matchedPositionalValue(0, "");
  }

  /** Lets the form of what is printed be chosen. */
  static void form(CommandSpec spec, String what) {
    spec.addOption(
        OptionSpec.builder(AS)
            .paramLabel("FORM")
            .type(Form.class)
            .description("Form of the " + what + ": text (default) or json.")
            .build());
  }

  /** True if a form was named. */
  static boolean hasForm(ParseResult parsed) {
    return parsed.hasMatchedOption(AS);
  }

  /** The form that was named, or text. */
  static Form form(ParseResult parsed) {
    return parsed.matchedOptionValue(AS, Form.TEXT);
  }

  /** Lets the sheet be chosen. */
  static void paper(CommandSpec spec) {
    spec.addOption(
        OptionSpec.builder(PAPER)
            .paramLabel("SIZE")
            .type(Paper.class)
            .description(
                "Sheet: a4 or letter. Without it: letter where the netlist's",
                "practice is the NEC's, a4 elsewhere.")
            .build());
  }

  /** The sheet that was named, or the usual one. */
  static Paper paper(ParseResult parsed, Paper usual) {
    return parsed.matchedOptionValue(PAPER, usual);
  }

  /** What a command that writes something ends with. */
  static int exit(Report report) {
    Verdict verdict = report.verdict();
    return verdict == Verdict.STOP || verdict == Verdict.FIX ? Exit.FINDINGS : Exit.NOTHING_FOUND;
  }

  /** For a person or for a program. */
  enum Form {
    TEXT,
    JSON;

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }
}
