package org.coilwright.cli;

import java.util.List;
import java.util.Locale;
import org.coilwright.solve.FaultClass;
import org.coilwright.solve.Faults;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParseResult;

/** {@code coilwright faults FILE}. */
@Command(
    name = "faults",
    description = "Breaks one thing at a time and tells what each load then does.",
    footer = {
      "",
      "Worst first; faults that behave alike are joined. Two faults at once are not looked at.",
      "",
      "Examples:",
      "  coilwright faults boiler.yaml",
      "  coilwright faults --as json boiler.yaml"
    })
final class FaultsCommand extends ConsoleCommand {
  @Parameters(paramLabel = "FILE", description = "Netlist; - reads standard input.")
  private String file = "";

  @Option(
      names = "--as",
      paramLabel = "FORM",
      defaultValue = "text",
      description = "Form of the result: ${COMPLETION-CANDIDATES}. Default: text.")
  private Form form = Form.TEXT;

  FaultsCommand(Console console) {
    super(console);
  }

  @Override
  int run(ParseResult parsed) {
    Inspection inspection = Inspector.standard().inspect(file, console());
    if (inspection instanceof Inspection.Unusable u) {
      tell(u);
      return Exit.UNUSABLE;
    }
    if (inspection instanceof Inspection.Done done) {
      List<FaultClass> classes = Faults.of(done.study()).classes();
      console()
          .out()
          .print(
              switch (form) {
                case TEXT -> FaultsText.of(classes, outStyle());
                case JSON -> FaultsJson.of(file, classes);
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
