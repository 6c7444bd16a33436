package org.coilwright.cli;

import org.coilwright.solve.Study;
import picocli.CommandLine.Model.CommandSpec;

/** {@code coilwright states FILE}. */
final class StatesCommand extends TableCommand {
  StatesCommand(Console console) {
    super(console);
  }

  @Override
  CommandSpec spec() {
    return tableSpec(
        "Shows every reachable position, each coil's voltage and each load in it.",
        "",
        "Rows that a contact makes no difference to are joined and say \"either\".",
        "",
        "Examples:",
        "  coilwright states boiler.yaml",
        "  coilwright states --as json boiler.yaml");
  }

  @Override
  String text(Study study) {
    return StatesText.of(new StatesView(study), outStyle());
  }

  @Override
  String json(String file, Study study) {
    return StatesJson.of(file, new StatesView(study));
  }
}
