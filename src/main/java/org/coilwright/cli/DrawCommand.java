package org.coilwright.cli;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.coilwright.checklist.Checklist.Paper;
import org.coilwright.checklist.Figures;
import org.coilwright.checklist.Texts;
import org.coilwright.diagram.Diagram;
import org.coilwright.drawing.Picture;
import org.coilwright.drawing.Png;
import org.coilwright.drawing.Shape;
import org.coilwright.drawing.Svg;
import org.coilwright.netlist.Site;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParseResult;

/** {@code coilwright draw FILE -o OUT.svg}. */
final class DrawCommand extends ConsoleCommand {
  private static final String OUTPUT = "--output";
  private static final String SHEET = "--sheet";

  /** Room for holes on the left, for a thumb above: 20 mm and 12 mm. */
  private static final double LEFT = 56.7;

  private static final double ABOVE = 34;

  DrawCommand(Console console) {
    super(console);
  }

  @Override
  CommandSpec spec() {
    CommandSpec spec =
        spec(
            "Draws the circuit diagram.",
            "",
            "Current paths side by side, the power circuit apart from the control circuits, with",
            "graphical symbols after IEC 60617. Findings are marked at their place. A circuit that",
            "does not fit on one sheet gets several. Without --sheet all of them stand one under"
                + " the",
            "other in one tall picture, which shrinks when it is printed on one page; with --sheet"
                + " N",
            "sheet N alone is drawn, at the exact size of its paper.",
            "",
            "Examples:",
            "  coilwright draw boiler.yaml -o boiler.svg",
            "  coilwright draw boiler.yaml -o boiler.png --paper letter",
            "  coilwright draw boiler.yaml -o boiler-2.svg --sheet 2",
            "",
            "Ends with 0: drawn, nothing above a note, 1: drawn, with findings, 2: the netlist",
            "cannot be used or the file cannot be written, 3: a fault of coilwright itself.");
    Options.netlist(spec);
    spec.addOption(
        OptionSpec.builder("-o", OUTPUT)
            .required(true)
            .paramLabel("OUT")
            .type(String.class)
            .description("File to write: OUT.svg or OUT.png.")
            .build());
    spec.addOption(
        OptionSpec.builder(SHEET)
            .paramLabel("N")
            .type(String.class)
            .description("One sheet alone, from 1, ready to print.")
            .build());
    Options.paper(spec);
    return spec;
  }

  @Override
  int run(ParseResult parsed) {
    String file = Options.file(parsed);
    String output = parsed.matchedOptionValue(OUTPUT, "");
    boolean vectors = output.toLowerCase(Locale.ROOT).endsWith(".svg");
    if (!vectors && !output.toLowerCase(Locale.ROOT).endsWith(".png")) {
      return refuse("A drawing ends in .svg or .png, and this name does not: " + output);
    }
    InputFile input = InputFile.read(file, console().in());
    Inspection inspection = Inspector.standard().inspect(input);
    if (inspection instanceof Inspection.Unusable unusable) {
      tell(unusable);
      return refuse("Nothing was drawn.");
    } else if (inspection instanceof Inspection.Done done) {
      Site.Practice practice = done.report().netlist().site().practice().value();
      Paper paper = Options.paper(parsed, Paper.usual(practice));
      List<Diagram.Sheet> sheets =
          Diagram.of(done.study().circuit(), Figures.findings(done.report()), Texts.english()::of);
      if (parsed.hasMatchedOption(SHEET)) {
        String wanted = parsed.matchedOptionValue(SHEET, "");
        Optional<Diagram.Sheet> one = sheet(sheets, wanted);
        if (one.isEmpty()) {
          return refuse(
              "There is no sheet %s: this circuit has %s. Nothing was drawn."
                  .formatted(
                      wanted,
                      sheets.size() == 1 ? "one sheet, 1" : "sheets 1 to " + sheets.size()));
        }
        sheets = List.of(one.get());
      }
      Picture picture = stacked(sheets, paper);
      byte[] bytes = vectors ? Svg.of(picture).getBytes(StandardCharsets.UTF_8) : Png.of(picture);
      OutputFile.Written written = new OutputFile(output).writeDrawing(bytes, input.files());
      if (written instanceof OutputFile.Refused refused) {
        return refuse(refused.why() + " Nothing was drawn.");
      }
      console().err().println("Wrote " + Lines.harmless(output) + ".");
      console().err().println(VerdictLine.of(done.report(), errStyle()));
      return Options.exit(done.report());
    }
    return Exit.UNUSABLE;
  }

  /** The sheet with that number; empty if it is none. */
  private static Optional<Diagram.Sheet> sheet(List<Diagram.Sheet> sheets, String number) {
    return IntStream.range(0, sheets.size())
        .filter(i -> String.valueOf(i + 1).equals(number))
        .mapToObj(sheets::get)
        .findFirst();
  }

  /** The sheets one under the other, each on its paper. */
  private static Picture stacked(List<Diagram.Sheet> sheets, Paper paper) {
    List<Shape> shapes = new ArrayList<>();
    for (int i = 0; i < sheets.size(); i++) {
      shapes.addAll(sheets.get(i).picture().moved(LEFT, ABOVE + i * paper.height()));
    }
    String title = sheets.stream().map(s -> s.picture().title()).collect(Collectors.joining("; "));
    return new Picture(paper.width(), paper.height() * sheets.size(), title, List.copyOf(shapes));
  }
}
