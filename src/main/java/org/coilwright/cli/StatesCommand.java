package org.coilwright.cli;

import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** {@code coilwright states FILE}. */
final class StatesCommand extends ConsoleCommand {
  private static final String AS = "--as";

  StatesCommand(Console console) {
    super(console);
  }

  @Override
  CommandSpec spec() {
    CommandSpec spec =
        spec(
            "Shows every reachable position, each coil's voltage and each load in it.",
            "",
            "Rows that a contact makes no difference to are joined and say \"either\".",
            "",
            "Examples:",
            "  coilwright states boiler.yaml",
            "  coilwright states --as json boiler.yaml");
    spec.addPositional(
        PositionalParamSpec.builder()
            .arity("1")
            .required(true)
            .type(String.class)
            .paramLabel("FILE")
            .description("Netlist; - reads standard input.")
            .build());
    spec.addOption(
        OptionSpec.builder(AS)
            .paramLabel("FORM")
            .type(Form.class)
            .description("Form of the result: text (default) or json.")
            .build());
    return spec;
  }

  @Override
  int run(ParseResult parsed) {
    String file = parsed.matchedPositionalValue(0, "");
    Inspection inspection = Inspector.standard().inspect(file, console());
    if (inspection instanceof Inspection.Unusable unusable) {
      tell(unusable);
      return Exit.UNUSABLE;
    }
    if (inspection instanceof Inspection.Done done) {
      StatesView view = new StatesView(done.study());
      console()
          .out()
          .print(
              switch (parsed.matchedOptionValue(AS, Form.TEXT)) {
                case TEXT -> StatesText.of(view, outStyle());
                case JSON -> StatesJson.of(file, view);
              });
    }
    return Exit.NOTHING_FOUND;
  }

  enum Form {
    TEXT,
    JSON;

    @Override
    public String toString() {
      return typed(this);
    }
  }
}
