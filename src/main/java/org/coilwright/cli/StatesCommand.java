package org.coilwright.cli;

import java.util.Locale;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code coilwright states FILE}. */
@Command(
    name = "states",
    description = "Shows every reachable position, each coil's voltage and each load in it.",
    footer = {
      "",
      "Rows that a contact makes no difference to are joined and say \"either\".",
      "",
      "Examples:",
      "  coilwright states boiler.yaml",
      "  coilwright states --as json boiler.yaml"
    })
final class StatesCommand extends ConsoleCommand {
  @Parameters(paramLabel = "FILE", description = "Netlist; - reads standard input.")
  private String file = "";

  @Option(
      names = "--as",
      paramLabel = "FORM",
      defaultValue = "text",
      description = "Form of the result: ${COMPLETION-CANDIDATES}. Default: text.")
  private Form form = Form.TEXT;

  StatesCommand(Console console) {
    super(console);
  }

  @Override
  public Integer call() {
    Inspection inspection = Inspector.standard().inspect(file, console());
    if (inspection instanceof Inspection.Unusable u) {
      tell(u);
      return Exit.UNUSABLE;
    }
    if (inspection instanceof Inspection.Done done) {
      StatesView view = new StatesView(done.study());
      console()
          .out()
          .print(
              switch (form) {
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
      return name().toLowerCase(Locale.ROOT);
    }
  }
}
