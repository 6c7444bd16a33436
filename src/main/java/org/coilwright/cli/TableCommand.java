package org.coilwright.cli;

import java.util.Optional;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** A command that takes one netlist and prints one table of what its circuit does. */
abstract class TableCommand extends ConsoleCommand {
  private static final String AS = "--as";

  TableCommand(Console console) {
    super(console);
  }

  /** What it prints for a person. */
  abstract String text(Study study);

  /** What it prints for a program. */
  abstract String json(String file, Study study);

  /** Its help and the options that all such commands have. */
  static CommandSpec tableSpec(String description, String... footer) {
    CommandSpec spec = spec(description, footer);
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
  final int run(ParseResult parsed) {
    String file = parsed.matchedPositionalValue(0, "");
    Optional<Study> study = study(file, Tables.load());
    if (study.isEmpty()) {
      return Exit.UNUSABLE;
    }
    console()
        .out()
        .print(
            switch (parsed.matchedOptionValue(AS, Form.TEXT)) {
              case TEXT -> text(study.get());
              case JSON -> json(file, study.get());
            });
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
