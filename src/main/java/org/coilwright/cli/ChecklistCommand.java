package org.coilwright.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import org.coilwright.checklist.Checklist;
import org.coilwright.pdf.ChecklistPdf;
import org.coilwright.rule.Report;
import org.coilwright.rule.Verdict;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** {@code coilwright checklist FILE -o OUT.pdf}. */
@Command(
    name = "checklist",
    description = "Writes the checklist for wiring and test as a PDF.",
    footer = {
      "",
      "The PDF is written whole or not at all. With SOURCE_DATE_EPOCH set, its date is that one.",
      "",
      "Example:",
      "  coilwright checklist boiler.yaml -o boiler.pdf",
      "",
      "Ends with 0: written, nothing above a note, 1: written, with findings, 2: the netlist cannot",
      "be used or the PDF cannot be written, 3: a fault of coilwright itself."
    })
final class ChecklistCommand extends ConsoleCommand {
  @Parameters(paramLabel = "FILE", description = "Netlist; - reads standard input.")
  private String file = "";

  @Option(
      names = {"-o", "--output"},
      required = true,
      paramLabel = "OUT.pdf",
      description = "File to write; - is standard output.")
  private String output = "";

  ChecklistCommand(Console console) {
    super(console);
  }

  @Override
  public Integer call() throws IOException {
    Inspector inspector = Inspector.standard();
    Inspection inspection = inspector.inspect(file, console());
    if (inspection instanceof Inspection.Unusable unusable) {
      tell(unusable);
      console().err().println("No PDF was written.");
    } else if (inspection instanceof Inspection.Done done) {
      return write(inspector.checklist(done, console().today()), done.report());
    }
    return Exit.UNUSABLE;
  }

  private int write(Checklist checklist, Report report) throws IOException {
    ByteArrayOutputStream pdf = new ByteArrayOutputStream();
    ChecklistPdf.write(checklist, pdf);
    if (output.equals(InputFile.STDIN)) {
      pdf.writeTo(console().out());
    } else {
      OutputFile.Written written = new OutputFile(output).write(pdf.toByteArray(), file);
      if (written instanceof OutputFile.Refused refused) {
        console().err().println(Lines.harmless(refused.why()) + " No PDF was written.");
        return Exit.UNUSABLE;
      }
      console().err().println("Wrote " + Lines.harmless(output) + ".");
    }
    console().err().println(VerdictLine.of(report, errStyle()));
    Verdict verdict = report.verdict();
    return verdict == Verdict.STOP || verdict == Verdict.FIX ? Exit.FINDINGS : Exit.NOTHING_FOUND;
  }
}
