package org.coilwright.cli;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.UnaryOperator;
import org.coilwright.checklist.Checklist;
import org.coilwright.checklist.Checklist.Part;
import org.coilwright.checklist.Coverage;
import org.coilwright.checklist.Texts;
import org.coilwright.pdf.Attachment;
import org.coilwright.pdf.ChecklistPdf;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** {@code coilwright checklist FILE -o OUT.pdf}. */
final class ChecklistCommand extends ConsoleCommand {
  private static final String OUTPUT = "--output";
  private static final String COVERAGE = "--coverage";
  private static final String LANGUAGE = "--language";
  private static final String WITHOUT = "--without";
  private static final String WITH = "--with";

  ChecklistCommand(Console console) {
    super(console);
  }

  @Override
  CommandSpec spec() {
    CommandSpec spec =
        spec(
            "Writes the checklist for wiring and test as a PDF.",
            "",
            "It can be printed, or filled in on a screen and read back with coilwright readback.",
            "The netlist, the results and the drawings travel inside it.",
            "The PDF is written whole or not at all. With SOURCE_DATE_EPOCH set, its date is that"
                + " one.",
            "With --coverage no PDF is written but a table of every single wiring mistake: the step"
                + " it",
            "shows at, whether that is before the mains is applied, and what is read then.",
            "",
            "The work sheet comes first. Behind it stands an annex for owner and planner; the"
                + " archive (where",
            "readings come from, what was satisfied) is in the attached results and printed on"
                + " wish.",
            "With a STOP the sheet is a mend sheet: nothing is switched on by it.",
            "",
            "Examples:",
            "  coilwright checklist boiler.yaml -o boiler.pdf",
            "  coilwright checklist boiler.yaml -o boiler.pdf --without annex --with archive",
            "  coilwright checklist boiler.yaml --coverage --as json",
            "",
            "Ends with 0: written, nothing above a note, 1: written, with findings, 2: the netlist",
            "cannot be used or the PDF cannot be written, 3: a fault of coilwright itself.");
    Options.netlist(spec);
    spec.addOption(
        OptionSpec.builder("-o", OUTPUT)
            .paramLabel("OUT.pdf")
            .type(String.class)
            .description("File to write; - is standard output.")
            .build());
    Options.paper(spec);
    spec.addOption(
        OptionSpec.builder(LANGUAGE)
            .paramLabel("LANG")
            .type(String.class)
            .completionCandidates(Texts.LANGUAGES)
            .description(
                "Language: en (without it) or de. What the rules say",
                "stays in English, and the sheet says so.")
            .build());
    spec.addOption(
        OptionSpec.builder(WITHOUT)
            .paramLabel("PART")
            .type(Part.class)
            .description("Leave a part out: annex.")
            .build());
    spec.addOption(
        OptionSpec.builder(WITH)
            .paramLabel("PART")
            .type(Part.class)
            .description("Print a part more: archive.")
            .build());
    spec.addOption(
        OptionSpec.builder(COVERAGE)
            .type(boolean.class)
            .arity("0")
            .description("Print which wiring mistake shows at which step.")
            .build());
    Options.form(spec, "coverage");
    return spec;
  }

  @Override
  int run(ParseResult parsed) {
    String file = Options.file(parsed);
    boolean coverage = parsed.hasMatchedOption(COVERAGE);
    boolean output = parsed.hasMatchedOption(OUTPUT);
    if (coverage && output) {
      return refuse(
          "Not both: --output (-o) writes the PDF, --coverage prints the table of wiring mistakes."
              + " Give one of them.");
    } else if (!coverage && !output) {
      return refuse(
          "-o is missing: give --output OUT.pdf (-o) for the PDF, or --coverage for the table of"
              + " wiring mistakes.");
    } else if (!coverage && Options.hasForm(parsed)) {
      return refuse("--as FORM goes with --coverage only: a PDF has one form.");
    } else if (coverage && parsed.hasMatchedOption(LANGUAGE)) {
      return refuse("--language goes with the PDF only: the table of --coverage is in English.");
    }
    if (coverage && (parsed.hasMatchedOption(WITH) || parsed.hasMatchedOption(WITHOUT))) {
      return refuse("--with and --without go with the PDF only.");
    }
    return coverage
        ? table(file, parsed)
        : sheet(
            file,
            parsed.matchedOptionValue(LANGUAGE, Texts.english().language()),
            parsed.matchedOptionValue(OUTPUT, ""),
            usual -> usual.on(Options.paper(parsed, usual.paper())).with(parts(parsed)));
  }

  /** What is printed behind the work sheet. */
  private static Set<Part> parts(ParseResult parsed) {
    Set<Part> parts = EnumSet.copyOf(Part.USUAL);
    if (parsed.hasMatchedOption(WITHOUT)) {
      parts.remove(parsed.<Part>matchedOptionValue(WITHOUT, Part.ANNEX));
    }
    if (parsed.hasMatchedOption(WITH)) {
      parts.add(parsed.<Part>matchedOptionValue(WITH, Part.ARCHIVE));
    }
    return parts;
  }

  @Override
  OptionalInt plainly(List<String> words) {
    boolean plain =
        words.size() == 3
            && isName(words.get(0))
            && words.get(1).equals("-o")
            && isName(words.get(2));
    return plain
        ? OptionalInt.of(
            sheet(words.get(0), Texts.english().language(), words.get(2), usual -> usual))
        : OptionalInt.empty();
  }

  /** The table of wiring mistakes; nothing is written to a file. */
  private int table(String file, ParseResult parsed) {
    Inspector inspector = Inspector.standard();
    Inspection inspection = inspector.inspectForSheet(InputFile.read(file, console().in()));
    if (inspection instanceof Inspection.Done done) {
      Coverage mistakes = inspector.coverage(done);
      console()
          .out()
          .print(
              switch (Options.form(parsed)) {
                case TEXT -> CoverageText.of(mistakes, outStyle());
                case JSON -> CoverageJson.of(file, mistakes);
              });
      return Exit.NOTHING_FOUND;
    }
    if (inspection instanceof Inspection.Unusable unusable) {
      tell(unusable);
    }
    return Exit.UNUSABLE;
  }

  private int sheet(String file, String language, String output, UnaryOperator<Checklist> wanted) {
    if (!Texts.LANGUAGES.contains(language)) {
      return refuse(
          "There is no sheet in '%s'. Use one of %s. No PDF was written."
              .formatted(language, String.join(", ", Texts.LANGUAGES)));
    }
    InputFile input = InputFile.read(file, console().in());
    Inspector inspector = Inspector.standard();
    if (input instanceof InputFile.Missing missing) {
      return unusable(new Inspection.Unusable(file, List.of(missing.problem())));
    } else if (input instanceof InputFile.Bytes bytes) {
      KeptIncludes includes = new KeptIncludes(bytes.includes());
      InputFile.Bytes kept = new InputFile.Bytes(bytes.name(), bytes.bytes(), includes);
      Inspection inspection = inspector.inspectForSheet(kept);
      if (inspection instanceof Inspection.Unusable unusable) {
        return unusable(unusable);
      } else if (inspection instanceof Inspection.Done done) {
        Checklist usual = inspector.checklist(done, console().today(), Texts.in(language));
        Checklist checklist = wanted.apply(usual);
        SheetFiles files = new SheetFiles(kept, includes.all());
        byte[] pdf = pdf(checklist, files.of(done, checklist, inspector.tables()));
        if (write(pdf, output, kept.files())) {
          console().err().println(VerdictLine.of(done.report(), errStyle()));
          return Options.exit(done.report());
        }
      }
    }
    return Exit.UNUSABLE;
  }

  private int unusable(Inspection.Unusable unusable) {
    tell(unusable);
    return refuse("No PDF was written.");
  }

  private static byte[] pdf(Checklist checklist, List<Attachment> attachments) {
    ByteArrayOutputStream pdf = new ByteArrayOutputStream();
    try {
      ChecklistPdf.write(checklist, attachments, pdf);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return pdf.toByteArray();
  }

  private boolean write(byte[] pdf, String output, Collection<String> inputs) {
    if (output.equals(InputFile.STDIN)) {
      console().out().write(pdf, 0, pdf.length);
    } else {
      OutputFile.Written written = new OutputFile(output).writePdf(pdf, inputs);
      if (written instanceof OutputFile.Refused refused) {
        refuse(refused.why() + " No PDF was written.");
        return false;
      }
      console().err().println("Wrote " + Lines.harmless(output) + ".");
    }
    return true;
  }
}
