package org.coilwright.cli;

import java.util.ArrayList;
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
            "  coilwright check --as json --fail-on stop *.yaml",
            "  generate | coilwright check -",
            "",
            "Ends with 0: nothing at or above --fail-on, 1: findings, 2: a file or the command line",
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
    return spec;
  }

  @Override
  int run(ParseResult parsed) {
    List<String> files = parsed.matchedPositionalValue(0, List.<String>of());
    Inspector inspector = Inspector.standard();
    List<Inspection> inspections = new ArrayList<>();
    for (String file : files) {
      inspections.add(inspector.inspect(file, console()));
    }
    for (Inspection inspection : inspections) {
      if (inspection instanceof Inspection.Unusable unusable) {
        tell(unusable);
      }
    }
    console()
        .out()
        .print(
            switch (parsed.matchedOptionValue(AS, Form.TEXT)) {
              case TEXT -> text(inspections, outStyle());
              case JSON -> JsonReport.of(inspections);
              case SARIF -> SarifReport.of(inspections, inspector.facts());
            });
    return exit(inspections, parsed.matchedOptionValue(FAIL_ON, FailOn.FIX).weight);
  }

  private static String text(List<Inspection> inspections, Style style) {
    if (inspections.size() > 1) {
      return TotalText.of(inspections, style);
    }
    return inspections.get(0) instanceof Inspection.Done done
        ? TextReport.of(done.report(), style)
        : "";
  }

  private static int exit(List<Inspection> inspections, Weight lightest) {
    int code = Exit.NOTHING_FOUND;
    for (Inspection inspection : inspections) {
      if (inspection instanceof Inspection.Unusable) {
        return Exit.UNUSABLE;
      } else if (inspection instanceof Inspection.Done done && fails(done.report(), lightest)) {
        code = Exit.FINDINGS;
      }
    }
    return code;
  }

  private static boolean fails(Report report, Weight lightest) {
    return report.findings().stream()
        .anyMatch(f -> report.counts(f) && f.weight().compareTo(lightest) <= 0);
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
