package org.coilwright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.coilwright.rule.Report;
import org.coilwright.rule.Weight;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code coilwright check FILE…}. */
@Command(
    name = "check",
    description = "Checks netlists and says what is wrong, where, and what to do.",
    footer = {
      "",
      "One file is reported in full; several make a line each and a total.",
      "",
      "Examples:",
      "  coilwright check boiler.yaml",
      "  coilwright check --as json --fail-on stop *.yaml",
      "  generate | coilwright check -",
      "",
      "Ends with 0: nothing at or above --fail-on, 1: findings, 2: a file or the command line",
      "cannot be used (also if other files have findings), 3: a fault of coilwright itself."
    })
final class CheckCommand extends ConsoleCommand {
  @Parameters(
      arity = "1..*",
      paramLabel = "FILE",
      description = "Netlists; - reads standard input.")
  private List<String> files = new ArrayList<>();

  @Option(
      names = "--as",
      paramLabel = "FORM",
      defaultValue = "text",
      description = "Form of the result: ${COMPLETION-CANDIDATES}. Default: text.")
  private Form form = Form.TEXT;

  @Option(
      names = "--fail-on",
      paramLabel = "WEIGHT",
      defaultValue = "fix",
      description = "Lightest finding that ends with 1: ${COMPLETION-CANDIDATES}. Default: fix.")
  private FailOn failOn = FailOn.FIX;

  CheckCommand(Console console) {
    super(console);
  }

  @Override
  public Integer call() {
    Inspector inspector = Inspector.standard();
    List<Inspection> inspections = new ArrayList<>();
    for (String file : files) {
      inspections.add(inspector.inspect(file, console()));
    }
    for (Inspection inspection : inspections) {
      if (inspection instanceof Inspection.Unusable u) {
        tell(u);
      }
    }
    Style style = outStyle();
    console()
        .out()
        .print(
            switch (form) {
              case TEXT -> text(inspections, style);
              case JSON -> JsonReport.of(inspections);
              case SARIF -> SarifReport.of(inspections, inspector.facts());
            });
    return exit(inspections);
  }

  private static String text(List<Inspection> inspections, Style style) {
    if (inspections.size() > 1) {
      return TotalText.of(inspections, style);
    }
    return inspections.get(0) instanceof Inspection.Done done
        ? TextReport.of(done.report(), style)
        : "";
  }

  private int exit(List<Inspection> inspections) {
    if (inspections.stream().anyMatch(Inspection.Unusable.class::isInstance)) {
      return Exit.UNUSABLE;
    }
    return inspections.stream().anyMatch(i -> i instanceof Inspection.Done d && fails(d.report()))
        ? Exit.FINDINGS
        : Exit.NOTHING_FOUND;
  }

  private boolean fails(Report report) {
    return report.findings().stream()
        .anyMatch(f -> report.counts(f) && f.weight().compareTo(failOn.weight) <= 0);
  }

  enum Form {
    TEXT,
    JSON,
    SARIF;

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
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
      return name().toLowerCase(Locale.ROOT);
    }
  }
}
