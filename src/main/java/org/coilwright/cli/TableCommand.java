package org.coilwright.cli;

import java.util.Optional;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParseResult;

/** A command that takes one netlist and prints one table of what its circuit does. */
abstract class TableCommand extends ConsoleCommand {
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
    Options.netlist(spec);
    Options.form(spec, "result");
    return spec;
  }

  @Override
  final int run(ParseResult parsed) {
    String file = Options.file(parsed);
    Optional<Study> study = study(file, Tables.load());
    if (study.isEmpty()) {
      return Exit.UNUSABLE;
    }
    console()
        .out()
        .print(
            switch (Options.form(parsed)) {
              case TEXT -> text(study.get());
              case JSON -> json(file, study.get());
            });
    return Exit.NOTHING_FOUND;
  }
}
