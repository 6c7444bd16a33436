// Over 250 lines: one option after the other.
package org.coilwright.cli;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Parsed;
import org.coilwright.quantity.Quantity;
import org.coilwright.quantity.QuantityParser;
import org.coilwright.quantity.Rating;
import org.coilwright.quantity.Wanted;
import org.coilwright.quantity.Words;
import org.coilwright.sizing.Choice;
import org.coilwright.sizing.Chooser;
import org.coilwright.sizing.Question;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParseResult;

/** {@code coilwright choose}. */
@Command(
    name = "choose",
    description = {
      "Which contactor for this element? Current, derating, rating, life, breaker, wire, coil.",
      "With FILE and --part load, air, mounting and the wire's run come from the netlist.",
      "An option that says what FILE already gives is refused; what FILE leaves open is typed."
    },
    footer = {
      "",
      "Examples:",
      "  coilwright choose --power 9kW --voltage 400V --phases 3 --connection star --air 50C",
      "  coilwright choose --power 4.5kW --voltage 240V --phases split --practice nec",
      "  coilwright choose --power 3kW --table",
      "  coilwright choose boiler.yaml --part Q1"
    })
final class ChooseCommand extends ConsoleCommand {
  @Parameters(arity = "0..1", paramLabel = "FILE", description = "Netlist; - reads standard input.")
  private String file = "";

  @Option(names = "--part", paramLabel = "PART", description = "Contactor in FILE, such as Q1.")
  private String part = "";

  @Option(names = "--power", paramLabel = "P", description = "Power of the load, such as 9kW.")
  private String power = "";

  @Option(
      names = "--voltage",
      paramLabel = "U",
      description = "Voltage, line to line with several lines. Default: 230V, 400V, 240V (nec).")
  private String voltage = "";

  @Option(
      names = "--phases",
      paramLabel = "N",
      defaultValue = "1",
      description = "1, 3 or split. Default: 1.")
  private String phases = "1";

  @Option(
      names = "--connection",
      paramLabel = "HOW",
      description = "single, star, star-with-neutral or delta.")
  private String connection = "";

  @Option(
      names = "--kind",
      paramLabel = "KIND",
      defaultValue = "metal-sheathed",
      description = "metal-sheathed, carbide or ptc. Default: metal-sheathed.")
  private String kind = "metal-sheathed";

  @Option(
      names = "--air",
      paramLabel = "T",
      defaultValue = "40C",
      description = "Air around the contactor and the device before it. Default: 40C.")
  private String air = "40C";

  @Option(
      names = "--rated-air",
      paramLabel = "T",
      description = "Air up to which the contactor's rating holds. Default: 40C.")
  private String ratedAir = "";

  @Option(
      names = "--mounting",
      paramLabel = "HOW",
      defaultValue = "spaced",
      description = "side-by-side or spaced. Default: spaced.")
  private String mounting = "spaced";

  @Option(names = "--altitude", paramLabel = "H", description = "Height above the sea.")
  private String altitude = "";

  @Option(
      names = "--duty",
      paramLabel = "DUTY",
      defaultValue = "eight-hour",
      description = "eight-hour or uninterrupted. Default: eight-hour.")
  private String duty = "eight-hour";

  @Option(names = "--starts-per-day", paramLabel = "N", description = "Times it closes in a day.")
  private String starts = "";

  @Option(
      names = "--years",
      paramLabel = "N",
      defaultValue = "10",
      description = "Years it shall last. Default: 10.")
  private String years = "10";

  @Option(
      names = "--practice",
      paramLabel = "SET",
      defaultValue = "iec",
      description = "iec or nec. Default: iec.")
  private String practice = "iec";

  @Option(
      names = "--method",
      paramLabel = "M",
      defaultValue = "B2",
      description = "How the wire is laid: A1, A2, B1, B2, C or panel. Default: B2.")
  private String method = "B2";

  @Option(
      names = "--wire-air",
      paramLabel = "T",
      description = "Air around the wire. Default: that of the contactor.")
  private String wireAir = "";

  @Option(names = "--length", paramLabel = "L", description = "Length of the wire.")
  private String length = "";

  @Option(names = "--fault-current", paramLabel = "I", description = "Fault current of the mains.")
  private String fault = "";

  @Option(
      names = "--insulation",
      paramLabel = "WORD",
      description = "Insulation of the wire: pvc-70, xlpe-90; with nec pvc-60, pvc-75, pvc-90.")
  private String insulation = "";

  @Option(
      names = "--clamps",
      paramLabel = "T",
      description = "Temperature the wire's clamps are listed for, such as 75C.")
  private String clamps = "";

  @Option(
      names = "--loop-impedance",
      paramLabel = "R",
      description = "Earth loop impedance of the mains, such as 0.35ohm.")
  private String loop = "";

  @Option(
      names = "--life",
      paramLabel = "LIFE",
      description =
          "The contactor's electrical life in cycles, one closing and one opening each, such as"
              + " \"75000 at 25 A\".")
  private String life = "";

  @Option(
      names = "--output",
      paramLabel = "RATING",
      description = "What shall drive the coil: \"0.5 A at 30 V DC\", \"AC-15: 3 A at 230 V\".")
  private String output = "";

  @Option(names = "--table", description = "Print the rating needed against air temperature.")
  private boolean table;

  @Option(
      names = "--as",
      paramLabel = "FORM",
      defaultValue = "text",
      description = "Form of the result: ${COMPLETION-CANDIDATES}. Default: text.")
  private Options.Form form = Options.Form.TEXT;

  ChooseCommand(Console console) {
    super(console);
  }

  @Override
  int run(ParseResult parsed) {
    Tables tables = Tables.load();
    Question question;
    Optional<Study> study = Optional.empty();
    try {
      if (file.isEmpty()) {
        question = new ChooseQuestion(this::amount, tables).of(asked());
      } else {
        study = study(file, tables);
        if (study.isEmpty()) {
          return Exit.UNUSABLE;
        }
        question =
            ChooseFromFile.of(study.get(), part, asked(), typed(parsed), this::amount, tables);
      }
    } catch (ChooseQuestion.Refused refused) {
      console().err().println("coilwright: " + Lines.harmless(refused.sentence()));
      console().err().println("Try:   coilwright choose --help");
      return Exit.UNUSABLE;
    }
    if (table) {
      console().out().print(ChooseText.table(question, tables));
      return Exit.NOTHING_FOUND;
    }
    Choice answer = Chooser.answer(question, tables);
    Choice choice = study.map(s -> PartInFile.judged(answer, part, s, tables)).orElse(answer);
    console()
        .out()
        .print(
            switch (form) {
              case TEXT -> ChooseText.of(choice, outStyle());
              case JSON -> ChooseJson.of(choice);
            });
    return choice.fits() ? Exit.NOTHING_FOUND : Exit.UNUSABLE;
  }

  private ChooseQuestion.Asked asked() throws ChooseQuestion.Refused {
    return new ChooseQuestion.Asked(
        power,
        voltage,
        oneOf("--phases", phases, List.of("1", "3", "split")),
        connection.isEmpty()
            ? ""
            : oneOf(
                "--connection",
                connection,
                List.of("single", "star", "star-with-neutral", "delta")),
        oneOf("--kind", kind, List.of("metal-sheathed", "carbide", "ptc")),
        air,
        ratedAir,
        oneOf("--mounting", mounting, List.of("side-by-side", "spaced")).equals("side-by-side"),
        altitude,
        oneOf("--duty", duty, List.of("eight-hour", "uninterrupted")),
        starts,
        years,
        oneOf("--practice", practice, List.of("iec", "nec")).equals("nec"),
        oneOf("--method", method, List.of("A1", "A2", "B1", "B2", "C", "panel")),
        wireAir,
        length,
        fault,
        insulation.isEmpty()
            ? ""
            : oneOf(
                "--insulation",
                insulation,
                List.of("pvc-60", "pvc-70", "pvc-75", "pvc-90", "xlpe-90", "rubber-60")),
        clamps,
        loop,
        false,
        life.isEmpty() ? Optional.empty() : Optional.of(rating("--life", life, Dimension.COUNT)),
        driver(),
        Optional.empty());
  }

  private static String oneOf(String option, String typed, List<String> words)
      throws ChooseQuestion.Refused {
    for (String word : words) {
      if (word.equalsIgnoreCase(typed)) {
        return word;
      }
    }
    throw new ChooseQuestion.Refused(
        "%s takes %s, not %s.".formatted(option, Words.either(words), typed));
  }

  /** The options that stand on the command line. */
  private static Set<String> typed(ParseResult parsed) {
    return parsed.matchedOptionsSet().stream()
        .map(OptionSpec::longestName)
        .collect(Collectors.toSet());
  }

  private static final Pattern CATEGORY = Pattern.compile("([AD]C-[0-9]+[a-z]?): *(.*)");

  private List<Question.Output> driver() throws ChooseQuestion.Refused {
    if (output.isEmpty()) {
      return List.of();
    }
    Matcher category = CATEGORY.matcher(output);
    boolean said = category.matches();
    return List.of(
        new Question.Output(
            "the output",
            Optional.of(rating("--output", said ? category.group(2) : output, Dimension.CURRENT)),
            said ? category.group(1) : ""));
  }

  private static Rating rating(String option, String typed, Dimension amount)
      throws ChooseQuestion.Refused {
    Wanted at = Wanted.of(amount == Dimension.COUNT ? Dimension.CURRENT : Dimension.VOLTAGE);
    Parsed<Rating> parsed = QuantityParser.rating(typed, Wanted.of(amount), Optional.of(at), false);
    if (parsed instanceof Parsed.Good<Rating> good) {
      return good.value();
    }
    Parsed.Bad<Rating> bad = (Parsed.Bad<Rating>) parsed;
    throw new ChooseQuestion.Refused("%s: %s; %s.".formatted(option, bad.what(), bad.remedy()));
  }

  /** A value as a person types it at a prompt: the space before the unit may be left out. */
  private Quantity amount(String option, String typed, Dimension dimension)
      throws ChooseQuestion.Refused {
    String text = typed.replaceAll("(?<=[0-9])\\s*°?C$", " °C");
    Wanted wanted = Wanted.of(dimension);
    Parsed<Quantity> parsed = QuantityParser.quantity(text, wanted);
    if (parsed instanceof Parsed.Bad<Quantity>) {
      String spaced = text.replaceFirst("^([0-9.]+)(?=[A-Za-zµ])", "$1 ");
      parsed = QuantityParser.quantity(spaced, wanted);
    }
    if (parsed instanceof Parsed.Good<Quantity> good) {
      return good.value();
    }
    Parsed.Bad<Quantity> bad = (Parsed.Bad<Quantity>) parsed;
    throw new ChooseQuestion.Refused(
        String.format(Locale.ROOT, "%s %s: %s; %s.", option, typed, bad.what(), bad.remedy()));
  }
}
