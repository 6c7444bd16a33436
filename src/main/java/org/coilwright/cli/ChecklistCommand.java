package org.coilwright.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import org.coilwright.checklist.Checklist;
import org.coilwright.pdf.ChecklistPdf;
import org.coilwright.rule.Report;
import org.coilwright.rule.Verdict;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** {@code coilwright checklist FILE -o OUT.pdf}. */
final class ChecklistCommand extends ConsoleCommand {
  private static final String OUTPUT = "--output";

  ChecklistCommand(Console console) {
    super(console);
  }

  @Override
  CommandSpec spec() {
    CommandSpec spec =
        spec(
            "Writes the checklist for wiring and test as a PDF.",
            "",
            "The PDF is written whole or not at all. With SOURCE_DATE_EPOCH set, its date is that one.",
            "",
            "Example:",
            "  coilwright checklist boiler.yaml -o boiler.pdf",
            "",
            "Ends with 0: written, nothing above a note, 1: written, with findings, 2: the netlist",
            "cannot be used or the PDF cannot be written, 3: a fault of coilwright itself.");
    spec.addPositional(
        PositionalParamSpec.builder()
            .arity("1")
            .required(true)
            .type(String.class)
            .paramLabel("FILE")
            .description("Netlist; - reads standard input.")
            .build());
    spec.addOption(
        OptionSpec.builder("-o", OUTPUT)
            .required(true)
            .paramLabel("OUT.pdf")
            .type(String.class)
            .description("File to write; - is standard output.")
            .build());
    return spec;
  }

  @Override
  int run(ParseResult parsed) {
    String file = parsed.matchedPositionalValue(0, "");
    Inspector inspector = Inspector.standard();
    Inspection inspection = inspector.inspect(file, console());
    if (inspection instanceof Inspection.Unusable unusable) {
      tell(unusable);
      console().err().println("No PDF was written.");
    } else if (inspection instanceof Inspection.Done done) {
      byte[] pdf = pdf(inspector.checklist(done, console().today()));
      if (write(pdf, parsed.matchedOptionValue(OUTPUT, ""), file)) {
        console().err().println(VerdictLine.of(done.report(), errStyle()));
        return exit(done.report());
      }
    }
    return Exit.UNUSABLE;
  }

  private static byte[] pdf(Checklist checklist) {
    ByteArrayOutputStream pdf = new ByteArrayOutputStream();
    try {
      ChecklistPdf.write(checklist, List.of(), pdf);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return pdf.toByteArray();
  }

  private boolean write(byte[] pdf, String output, String input) {
    if (output.equals(InputFile.STDIN)) {
      console().out().write(pdf, 0, pdf.length);
    } else {
      OutputFile.Written written = new OutputFile(output).write(pdf, input);
      if (written instanceof OutputFile.Refused refused) {
        console().err().println(Lines.harmless(refused.why()) + " No PDF was written.");
        return false;
      }
      console().err().println("Wrote " + Lines.harmless(output) + ".");
    }
    return true;
  }

  private static int exit(Report report) {
    Verdict verdict = report.verdict();
    return verdict == Verdict.STOP || verdict == Verdict.FIX ? Exit.FINDINGS : Exit.NOTHING_FOUND;
  }
}
