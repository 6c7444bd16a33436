package org.coilwright.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.Texts;
import org.coilwright.netlist.Includes;

/** Sheets as the command writes them, and the checklists behind them. */
final class Sheets {
  private Sheets() {}

  /** Writes the sheet of an example. */
  static Path of(String example, Path pdf, String... more) {
    List<String> args = new ArrayList<>(List.of("checklist", example, "-o", pdf.toString()));
    args.addAll(List.of(more));
    Cli.Ran ran = Cli.run(args.toArray(String[]::new));
    if (ran.code() > 1) {
      throw new AssertionError(ran.err());
    }
    return pdf;
  }

  /** The checklist of an example as the command makes it. */
  static Checklist checklist(String example) {
    try {
      Inspector inspector = Inspector.standard();
      Inspection inspection =
          inspector.inspect(
              new InputFile.Bytes(example, Files.readAllBytes(Path.of(example)), Includes.none()));
      return inspector.checklist(
          (Inspection.Done) inspection, LocalDate.of(2026, 3, 1), Texts.english());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
