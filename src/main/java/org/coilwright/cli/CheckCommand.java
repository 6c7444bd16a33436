package org.coilwright.cli;

import java.util.Iterator;
import java.util.List;
import java.util.OptionalInt;
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
            "  find . -name '*.yaml' | coilwright check --as ndjson -",
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
            .description(
                "Netlists; - reads standard input:",
                "a netlist, or with --as ndjson names of netlists, a line each.")
            .build());
    spec.addOption(
        OptionSpec.builder(AS)
            .paramLabel("FORM")
            .type(Form.class)
            .description(
                "Form of the result: text (default), json, sarif, or ndjson:",
                "a line of JSON a file, also for one that cannot be used.")
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
    return judge(files, form, brief, parsed.matchedOptionValue(FAIL_ON, FailOn.FIX));
  }

  @Override
  OptionalInt plainly(List<String> words) {
    return !words.isEmpty() && words.stream().allMatch(ConsoleCommand::isName)
        ? OptionalInt.of(judge(words, Form.TEXT, false, FailOn.FIX))
        : OptionalInt.empty();
  }

  private int judge(List<String> files, Form form, boolean brief, FailOn failOn) {
    Inspector inspector = Inspector.standard();
    Account account =
        switch (form) {
          case TEXT ->
              files.size() > 1
                  ? new TotalText(console().out(), files, outStyle())
                  : new OneFile(brief);
          case JSON -> JsonReport.to(console().out());
          case NDJSON -> JsonReport.lines(console().out());
          case SARIF -> new SarifReport(console().out(), inspector.facts());
        };
    if (form == Form.NDJSON) {
      return judgeInLines(inspector, files, account, failOn.weight);
    }
    return new ManyFiles(inspector, console(), this::tell).judge(files, account, failOn.weight);
  }

  /** What stands in the way of reading a file is in its line and told nowhere else. */
  private int judgeInLines(
      Inspector inspector, List<String> files, Account account, Weight lightest) {
    boolean listed = files.contains(InputFile.STDIN);
    if (listed && files.size() > 1) {
      return refuse("Name the files, or - to read their names from standard input, not both.");
    }
    Iterator<String> names = listed ? new ListedNames(console().in()) : files.iterator();
    if (!names.hasNext()) {
      return refuse("No file was named on standard input, so nothing was judged.");
    }
    return new ManyFiles(inspector, console(), unusable -> {})
        .judge(names, false, account, lightest);
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
    SARIF,
    NDJSON;

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
