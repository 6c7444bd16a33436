package org.coilwright.cli;

import java.util.List;
import org.coilwright.rule.Report;
import org.coilwright.rule.Weight;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** {@code coilwright check FILE…}. */
final class CheckCommand extends ConsoleCommand {
  private static final String AS = "--as";
  private static final String FAIL_ON = "--fail-on";
  private static final String BRIEF = "--brief";

  CheckCommand(Console console) {
    super(console);
  }

  @Override
  CommandSpec spec() {
    CommandSpec spec =
        spec(
            "Checks netlists and says what is wrong, where, and what to do.",
            "",
            "One file is reported in full; several make a line each and a total.",
            "",
            "Examples:",
            "  coilwright check boiler.yaml",
            "  coilwright check --brief boiler.yaml",
            "  coilwright check --as json --fail-on stop *.yaml",
            "  generate | coilwright check -",
            "",
            "Ends with 0: nothing at or above --fail-on, 1: findings, 2: a file or the command"
                + " line",
            "cannot be used (also if other files have findings), 3: a fault of coilwright itself.");
    spec.addPositional(
        PositionalParamSpec.builder()
            .arity("1..*")
            .required(true)
            .type(List.class)
            .auxiliaryTypes(String.class)
            .paramLabel("FILE")
            .description("Netlists; - reads standard input.")
            .build());
    spec.addOption(
        OptionSpec.builder(AS)
            .paramLabel("FORM")
            .type(Form.class)
            .description("Form of the result: text (default), json or sarif.")
            .build());
    spec.addOption(
        OptionSpec.builder(FAIL_ON)
            .paramLabel("WEIGHT")
            .type(FailOn.class)
            .description("Lightest finding that ends with 1: stop, fix (default) or note.")
            .build());
    spec.addOption(
        OptionSpec.builder(BRIEF)
            .type(boolean.class)
            .description("Only the titles of what is to stop and to fix, and the verdict.")
            .build());
    return spec;
  }

  @Override
  int run(ParseResult parsed) {
    List<String> files = parsed.matchedPositionalValue(0, List.<String>of());
    Form form = parsed.matchedOptionValue(AS, Form.TEXT);
    boolean brief = parsed.hasMatchedOption(BRIEF);
    if (brief && form != Form.TEXT) {
      return refuse(BRIEF + " shortens the text; leave it out with " + AS + " " + form + ".");
    }
    Inspector inspector = Inspector.standard();
    Account account =
        switch (form) {
          case TEXT ->
              files.size() > 1
                  ? new TotalText(console().out(), files, outStyle())
                  : new OneFile(brief);
          case JSON -> JsonReport.to(console().out());
          case SARIF -> new SarifReport(console().out(), inspector.facts());
        };
    return new ManyFiles(inspector, console(), this::tell)
        .judge(files, account, parsed.matchedOptionValue(FAIL_ON, FailOn.FIX).weight);
  }

  /** The report of the only file, in full or brief. */
  private final class OneFile implements Account {
    private final boolean brief;

    private OneFile(boolean brief) {
      this.brief = brief;
    }

    @Override
    public void add(Inspection inspection) {
      if (inspection instanceof Inspection.Done done) {
        Report report = done.report();
        console()
            .out()
            .print(
                brief ? TextReport.brief(report, outStyle()) : TextReport.of(report, outStyle()));
      }
    }

    @Override
    public void end() {
      // the report ends by itself
    }
  }

  enum Form {
    TEXT,
    JSON,
    SARIF;

    @Override
    public String toString() {
      return typed(this);
    }
  }

  enum FailOn {
    STOP(Weight.STOP),
    FIX(Weight.FIX),
    NOTE(Weight.NOTE);

    private final Weight weight;

    FailOn(Weight weight) {
      this.weight = weight;
    }

    @Override
    public String toString() {
      return typed(this);
    }
  }
}
