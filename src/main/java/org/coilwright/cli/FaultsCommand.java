package org.coilwright.cli;

import org.coilwright.solve.Faults;
import org.coilwright.solve.Study;
import picocli.CommandLine.Model.CommandSpec;

/** {@code coilwright faults FILE}. */
final class FaultsCommand extends TableCommand {
  FaultsCommand(Console console) {
    super(console);
  }

  @Override
  CommandSpec spec() {
    return tableSpec(
        "Breaks one thing at a time and tells what each load then does.",
        "",
        "Worst first, circuit by circuit where they do not act on one another; faults that behave",
        "alike are joined. Two faults at once are not looked at.",
        "",
        "Examples:",
        "  coilwright faults boiler.yaml",
        "  coilwright faults --as json boiler.yaml");
  }

  @Override
  String text(Study study) {
    return FaultsText.of(Faults.of(study).classes(), study.tables(), outStyle());
  }

  @Override
  String json(String file, Study study) {
    return FaultsJson.of(file, Faults.of(study).classes());
  }
}
