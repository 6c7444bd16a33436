package org.coilwright.cli;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.coilwright.behaviour.DayFile;
import org.coilwright.behaviour.Improvement;
import org.coilwright.behaviour.RehearsalPicture;
import org.coilwright.behaviour.Rehearsed;
import org.coilwright.behaviour.Scene;
import org.coilwright.behaviour.Situation;
import org.coilwright.behaviour.Stage;
import org.coilwright.drawing.Picture;
import org.coilwright.drawing.Png;
import org.coilwright.drawing.Svg;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParseResult;

/** {@code coilwright rehearse FILE}. */
@Command(
    name = "rehearse",
    description = "Runs the switching settings against the plant and shows what they would do.",
    footer = {
      "",
      "What wins when several settings apply, strongest first:",
      "  1 longest-per-day is reached      open",
      "  2 a window of always-on           closed",
      "  3 shortest-run is not over        stays closed",
      "  4 stop: battery or import         open",
      "  5 start: export for its time      closed",
      "  6 none of these                   stays as it is",
      "",
      "DAY.csv begins with a line such as: time,pv W,house W,oven kW",
      "time is in seconds since midnight or in ISO 8601; rows are equally far apart.",
      "Where the clock is changed, write times with their offset: 2026-03-29T03:00:00+02:00;",
      "the time of day then goes on by the offset of the first row.",
      "Each column is the sum over the phases, as a summing meter tells it.",
      "",
      "Examples:",
      "  coilwright rehearse boiler.yaml",
      "  coilwright rehearse boiler.yaml --day monday.csv --plot monday.svg",
      "  coilwright rehearse boiler.yaml --improve",
      "",
      "Ends with 0: no false start, 1: false starts, 2: a file or the command line",
      "cannot be used, 3: a fault of coilwright itself."
    })
final class RehearseCommand extends ConsoleCommand {
  /**
   * Measured generation that no plant of the written peak gives: sun on a cloud's edge adds less.
   */
  private static final double MOST_OF_PEAK = 1.5;

  /** A year of seconds of a dozen loads fits. */
  private static final long MOST_BYTES = 4L << 30;

  /** Less than this of its peak a plant gives on the darkest days only. */
  private static final double LEAST_OF_PEAK = 0.05;

  @Parameters(paramLabel = "FILE", description = "Netlist; - reads standard input.")
  private String file = "";

  @Option(
      names = "--day",
      paramLabel = "DAY.csv",
      description = "Measured power over a day, or a year; without it, built-in situations.")
  private Optional<String> day = Optional.empty();

  @Option(
      names = "--as",
      paramLabel = "FORM",
      defaultValue = "text",
      description = "Form of the result: ${COMPLETION-CANDIDATES}. Default: text.")
  private Options.Form form = Options.Form.TEXT;

  @Option(
      names = "--plot",
      paramLabel = "OUT",
      description = "Draw it as well: OUT.svg or OUT.png. With --improve, draws what was tried.")
  private Optional<String> plot = Optional.empty();

  @Option(
      names = "--improve",
      description = "Try other confirm times and start thresholds as well.")
  private boolean improve;

  RehearseCommand(Console console) {
    super(console);
  }

  @Override
  int run(ParseResult parsed) throws IOException {
    if (plot.isPresent() && !hasEnding(plot.get(), ".svg") && !hasEnding(plot.get(), ".png")) {
      return refuse("A plot ends in .svg or .png, and this name does not: " + plot.get());
    }
    Tables tables = Tables.load();
    InputFile input = InputFile.read(file, console().in());
    Optional<Study> study = study(input, tables);
    return study.isPresent() ? rehearse(study.get(), tables, input.files()) : Exit.UNUSABLE;
  }

  private int rehearse(Study study, Tables tables, Collection<String> inputs) throws IOException {
    Stage stage = Stage.of(study, tables, day.isPresent());
    if (!stage.wants().isEmpty()) {
      console().err().print(StageText.missing(file, stage, errStyle()));
      return Exit.UNUSABLE;
    }
    List<Situation> situations = Situation.of(stage.scene());
    Optional<DayFile> measured = Optional.empty();
    if (day.isPresent()) {
      measured = begun(day.get());
      if (measured.isEmpty()) {
        return Exit.UNUSABLE;
      }
      String name = String.valueOf(Path.of(day.get()).getFileName());
      situations = List.of(Situation.measured(name, measured.get()));
    }
    List<Rehearsed> all = situations.stream().map(s -> rehearsed(s, stage.scene())).toList();
    if (measured.isPresent()
        && !holds(day.orElse(""), measured.get(), stage.scene().pvPeakWatts())) {
      return Exit.UNUSABLE;
    }
    Optional<Improvement> improvement =
        improve ? Optional.of(Improvement.of(stage.scene(), situations)) : Optional.empty();
    if (plot.isPresent()) {
      Picture picture =
          improvement
              .map(i -> ImprovementPicture.of(stage, i))
              .orElseGet(() -> RehearsalPicture.of(stage, all));
      Optional<String> refused = draw(picture, plot.get(), inputs);
      if (refused.isPresent()) {
        return refuse(refused.get());
      }
    }
    console()
        .out()
        .print(
            switch (form) {
              case TEXT -> RehearsalText.of(stage, all, improvement, outStyle());
              case JSON -> RehearsalJson.of(file, stage, all, improvement);
            });
    boolean anyFalse = all.stream().anyMatch(r -> !r.tally().falseStarts().isEmpty());
    return anyFalse ? Exit.FINDINGS : Exit.NOTHING_FOUND;
  }

  private Rehearsed rehearsed(Situation situation, Scene scene) {
    return plot.isPresent() ? Rehearsed.of(situation, scene) : Rehearsed.undrawn(situation, scene);
  }

  /** The measured day with its first rows looked at; empty if it cannot be used, which is told. */
  private Optional<DayFile> begun(String name) throws IOException {
    Path path;
    try {
      path = Path.of(name);
    } catch (InvalidPathException e) {
      refuse("No file can be called " + name + ".");
      return Optional.empty();
    }
    Optional<String> tooLong = FileNames.tooLong(path);
    if (tooLong.isPresent()) {
      refuse(name + " cannot be read: " + tooLong.get() + ".");
      return Optional.empty();
    }
    if (Files.exists(path) && !Files.isRegularFile(path)) {
      refuse(
          name + " is no file but a folder, a pipe or a device. Name a file that holds the day.");
      return Optional.empty();
    }
    if (!Files.isReadable(path)) {
      refuse(name + " cannot be read. Check the path and its permissions.");
      return Optional.empty();
    }
    if (Files.size(path) > MOST_BYTES) {
      refuse(
          "%s is larger than %s GiB; a year of seconds has half a one. Check that it is the file you mean."
              .formatted(name, MOST_BYTES >> 30));
      return Optional.empty();
    }
    DayFile.Read read = DayFile.begin(() -> Files.newInputStream(path));
    if (read instanceof DayFile.Begun begun) {
      return Optional.of(begun.day());
    }
    tell(name, (DayFile.Unusable) read);
    return Optional.empty();
  }

  private void tell(String name, DayFile.Unusable unusable) {
    console().err().print(StageText.problems(name, unusable.problems(), errStyle()));
  }

  /** Whether a day that was run through can be used, and is of this plant; if not, that is told. */
  private boolean holds(String name, DayFile day, double pvPeakWatts) {
    if (day.outcome() instanceof DayFile.Unusable unusable) {
      tell(name, unusable);
      return false;
    }
    DayFile.Usable usable = (DayFile.Usable) day.outcome();
    double share = pvPeakWatts > 0 ? usable.peakWatts() / pvPeakWatts : 1;
    if (share > MOST_OF_PEAK) {
      refuse(
          "The column pv of %s reaches %s, and switching.plant.pv-peak is %s: write the unit that it is in, W or kW, or the peak of the plant that was measured."
              .formatted(name, power(usable.peakWatts()), power(pvPeakWatts)));
      return false;
    }
    if (share < LEAST_OF_PEAK) {
      console()
          .err()
          .println(
              "The column pv of %s reaches no more than %s, and switching.plant.pv-peak is %s. A day that dark, or W written where the column is in kW?"
                  .formatted(Lines.harmless(name), power(usable.peakWatts()), power(pvPeakWatts)));
    }
    return true;
  }

  private static String power(double watts) {
    return Printed.of(watts, Dimension.POWER);
  }

  private Optional<String> draw(Picture picture, String name, Collection<String> inputs) {
    List<String> read = new ArrayList<>(inputs);
    day.ifPresent(read::add);
    byte[] bytes =
        hasEnding(name, ".svg")
            ? Svg.of(picture).getBytes(StandardCharsets.UTF_8)
            : Png.of(picture);
    OutputFile.Written written = new OutputFile(name).writeDrawing(bytes, read);
    if (written instanceof OutputFile.Refused refused) {
      return Optional.of(refused.why().replace("after -o", "after --plot"));
    }
    console().err().println("Wrote " + Lines.harmless(name) + ".");
    return Optional.empty();
  }

  private static boolean hasEnding(String name, String ending) {
    return name.toLowerCase(Locale.ROOT).endsWith(ending);
  }
}
