// Over 250 lines: one option after the other.
package org.coilwright.cli;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.coilwright.netlist.Method;
import org.coilwright.netlist.Mounting;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Site;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Parsed;
import org.coilwright.quantity.Quantity;
import org.coilwright.quantity.QuantityParser;
import org.coilwright.quantity.Rating;
import org.coilwright.quantity.Wanted;
import org.coilwright.quantity.Worded;
import org.coilwright.quantity.Words;
import org.coilwright.sizing.Duty;
import org.coilwright.sizing.Question;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.Model.PositionalParamSpec;
import picocli.CommandLine.ParseResult;

/** The options of {@code choose}: what they are, and what was typed behind them, as values. */
final class ChooseOptions {
  private static final String PART = "--part";
  private static final String POWER = "--power";
  private static final String VOLTAGE = "--voltage";
  private static final String PHASES = "--phases";
  private static final String CONNECTION = "--connection";
  private static final String KIND = "--kind";
  private static final String AIR = "--air";
  private static final String RATED_AIR = "--rated-air";
  private static final String MOUNTING = "--mounting";
  private static final String ALTITUDE = "--altitude";
  private static final String DUTY = "--duty";
  private static final String STARTS = "--starts-per-day";
  private static final String YEARS = "--years";
  private static final String PRACTICE = "--practice";
  private static final String METHOD = "--method";
  private static final String WIRE_AIR = "--wire-air";
  private static final String LENGTH = "--length";
  private static final String FAULT_CURRENT = "--fault-current";
  private static final String INSULATION = "--insulation";
  private static final String CLAMPS = "--clamps";
  private static final String LOOP_IMPEDANCE = "--loop-impedance";
  private static final String LIFE = "--life";
  private static final String OUTPUT = "--output";
  private static final String TABLE = "--table";

  private static final double USUAL_AIR = 40;
  private static final String USUAL_YEARS = "10";
  private static final String USUAL_KIND = "metal-sheathed";

  private static final Pattern CATEGORY = Pattern.compile("([AD]C-[0-9]+[a-z]?): *(.*)");

  private final ParseResult parsed;

  /**
   * What was typed.
   *
   * @throws Refused if a word is none of those that its option takes, or a rating none
   */
  ChooseOptions(ParseResult parsed) throws Refused {
    this.parsed = parsed;
    phases();
    connection();
    kind();
    mounting();
    duty();
    practice();
    method();
    insulation();
    life();
    output();
  }

  /** What was typed cannot be used. */
  static final class Refused extends Exception {
    private static final long serialVersionUID = 1L;

    Refused(String sentence) {
      super(sentence);
    }

    String sentence() {
      return String.valueOf(getMessage());
    }
  }

  /** Makes the command take them. */
  static void declare(CommandSpec spec) {
    spec.addPositional(
        PositionalParamSpec.builder()
            .arity("0..1")
            .type(String.class)
            .paramLabel("FILE")
            .description("Netlist; - reads standard input.")
            .build());
    add(spec, PART, "PART", "Contactor in FILE, such as Q1.");
    add(spec, POWER, "P", "Power of the load, such as 9kW.");
    add(
        spec,
        VOLTAGE,
        "U",
        "Voltage, line to line with several lines. Default: 230V, 400V, 240V (nec).");
    add(spec, PHASES, "N", either(Site.Phases.class) + ". Default: 1.");
    add(spec, CONNECTION, "HOW", either(Part.Connection.class) + ".");
    add(spec, KIND, "KIND", Words.either(Part.Heater.KINDS) + ". Default: " + USUAL_KIND + ".");
    add(spec, AIR, "T", "Air around the contactor and the device before it. Default: 40C.");
    add(spec, RATED_AIR, "T", "Air up to which the contactor's rating holds. Default: 40C.");
    add(spec, MOUNTING, "HOW", either(Mounting.class) + ". Default: spaced.");
    add(spec, ALTITUDE, "H", "Height above the sea.");
    add(spec, DUTY, "DUTY", either(Duty.class) + ". Default: eight-hour.");
    add(spec, STARTS, "N", "Times it closes in a day.");
    add(spec, YEARS, "N", "Years it shall last. Default: " + USUAL_YEARS + ".");
    add(spec, PRACTICE, "SET", either(Site.Practice.class) + ". Default: iec.");
    add(spec, METHOD, "M", "How the wire is laid: " + either(Method.class) + ". Default: B2.");
    add(spec, WIRE_AIR, "T", "Air around the wire. Default: that of the contactor.");
    add(spec, LENGTH, "L", "Length of the wire.");
    add(spec, FAULT_CURRENT, "I", "Fault current of the mains.");
    add(
        spec,
        INSULATION,
        "WORD",
        "Insulation of the wire: pvc-70, xlpe-90; with nec pvc-60, pvc-75, pvc-90.");
    add(spec, CLAMPS, "T", "Temperature the wire's clamps are listed for, such as 75C.");
    add(spec, LOOP_IMPEDANCE, "R", "Earth loop impedance of the mains, such as 0.35ohm.");
    add(
        spec,
        LIFE,
        "LIFE",
        "The contactor's electrical life in cycles, one closing and one opening each, such as"
            + " \"75000 at 25 A\".");
    add(
        spec,
        OUTPUT,
        "RATING",
        "What shall drive the coil: \"0.5 A at 30 V DC\", \"AC-15: 3 A at 230 V\".");
    spec.addOption(
        OptionSpec.builder(TABLE)
            .type(boolean.class)
            .description("Print the rating needed against air temperature.")
            .build());
    spec.addOption(
        OptionSpec.builder("--as")
            .paramLabel("FORM")
            .type(Options.Form.class)
            .description("Form of the result: text, json. Default: text.")
            .build());
  }

  private static void add(CommandSpec spec, String name, String label, String description) {
    spec.addOption(
        OptionSpec.builder(name)
            .paramLabel(label)
            .type(String.class)
            .description(description)
            .build());
  }

  private static <E extends Enum<E> & Worded> String either(Class<E> list) {
    return Words.either(Worded.words(list));
  }

  String file() {
    return Options.file(parsed);
  }

  String part() {
    return text(PART);
  }

  boolean asTable() {
    return parsed.hasMatchedOption(TABLE);
  }

  Options.Form form() {
    return Options.form(parsed);
  }

  Optional<Quantity> power() throws Refused {
    return amount(POWER, Dimension.POWER);
  }

  Optional<Quantity> voltage() throws Refused {
    return amount(VOLTAGE, Dimension.VOLTAGE);
  }

  Optional<Site.Phases> phases() throws Refused {
    return word(PHASES, Site.Phases.class);
  }

  Optional<Part.Connection> connection() throws Refused {
    return word(CONNECTION, Part.Connection.class);
  }

  Site.Practice practice() throws Refused {
    return word(PRACTICE, Site.Practice.class).orElse(Site.Practice.IEC);
  }

  /** Kind of the load, as the file says or as typed. */
  String kind(Optional<String> inFile) throws Refused {
    return one(KIND, inFile, kind()).orElse(USUAL_KIND);
  }

  private Optional<String> kind() throws Refused {
    return word(KIND, Part.Heater.KINDS);
  }

  /** Air around the contactor, as typed. */
  Optional<Quantity> typedAir() throws Refused {
    return amount(AIR, Dimension.TEMPERATURE);
  }

  /** Air around the contactor, as written or typed; empty if neither is. */
  Optional<Quantity> air(Optional<Quantity> written) throws Refused {
    return one(AIR, written, typedAir());
  }

  /** Air around the contactor, °C, where no file says it. */
  double air() throws Refused {
    return high(air(Optional.empty())).orElse(USUAL_AIR);
  }

  /** Where it stands. */
  Question.Place place(
      double air,
      Optional<Quantity> ratedAir,
      Optional<Mounting> mounting,
      Optional<Quantity> altitude)
      throws Refused {
    return new Question.Place(
        air,
        high(one(RATED_AIR, ratedAir, amount(RATED_AIR, Dimension.TEMPERATURE))),
        one(MOUNTING, mounting, mounting()).orElse(Mounting.SPACED),
        high(one(ALTITUDE, altitude, amount(ALTITUDE, Dimension.LENGTH))));
  }

  private Optional<Mounting> mounting() throws Refused {
    return word(MOUNTING, Mounting.class);
  }

  /** How it is laid, as the file says or as typed. */
  Method method(Optional<Method> inFile) throws Refused {
    return one(METHOD, inFile, method()).orElse(Method.B2);
  }

  private Optional<Method> method() throws Refused {
    return word(METHOD, Method.class);
  }

  /** Air around the wire, °C; empty if neither the file nor what was typed says it. */
  OptionalDouble wireAir(Optional<Quantity> inFile) throws Refused {
    return high(one(WIRE_AIR, inFile, amount(WIRE_AIR, Dimension.TEMPERATURE)));
  }

  /** Its length, m. */
  OptionalDouble metres(OptionalDouble inFile) throws Refused {
    return high(
        one(
            LENGTH,
            inFile.stream().mapToObj(m -> Quantity.of(m, Dimension.LENGTH)).findFirst(),
            amount(LENGTH, Dimension.LENGTH)));
  }

  Optional<String> insulation(Optional<String> inFile) throws Refused {
    return one(INSULATION, inFile, insulation());
  }

  private Optional<String> insulation() throws Refused {
    return word(INSULATION, Run.INSULATION_MATERIALS);
  }

  /** What its clamps are listed for, °C. */
  OptionalDouble clamps(OptionalDouble inFile) throws Refused {
    return high(
        one(
            CLAMPS,
            inFile.stream().mapToObj(c -> Quantity.of(c, Dimension.TEMPERATURE)).findFirst(),
            amount(CLAMPS, Dimension.TEMPERATURE)));
  }

  OptionalDouble faultAmps(Optional<Quantity> inFile) throws Refused {
    return high(one(FAULT_CURRENT, inFile, amount(FAULT_CURRENT, Dimension.CURRENT)));
  }

  OptionalDouble loopOhms(Optional<Quantity> inFile) throws Refused {
    return high(one(LOOP_IMPEDANCE, inFile, amount(LOOP_IMPEDANCE, Dimension.RESISTANCE)));
  }

  /** What it is asked to do. */
  Question.Service service(Optional<Rating> lifeInFile) throws Refused {
    return new Question.Service(
        high(amount(STARTS, Dimension.COUNT)),
        amount(YEARS, years(), Dimension.COUNT).nominal(),
        duty(),
        one(LIFE, lifeInFile, life()));
  }

  private Duty duty() throws Refused {
    return word(DUTY, Duty.class).orElse(Duty.EIGHT_HOUR);
  }

  private Optional<Rating> life() throws Refused {
    return isTyped(LIFE)
        ? Optional.of(rating(LIFE, text(LIFE), Dimension.COUNT))
        : Optional.empty();
  }

  /** {@code , 12 starts a day, 10 years} as typed; empty if life is not asked. */
  String serviceWords() {
    return isTyped(STARTS) ? ", %s starts a day, %s years".formatted(text(STARTS), years()) : "";
  }

  private String years() {
    return isTyped(YEARS) ? text(YEARS) : USUAL_YEARS;
  }

  /** What drives the coil: the contacts of the file, or the output that was typed. */
  List<Question.Output> outputs(List<Question.Output> inFile) throws Refused {
    return one(OUTPUT, Optional.of(inFile).filter(o -> !o.isEmpty()), output()).orElse(List.of());
  }

  private Optional<List<Question.Output>> output() throws Refused {
    if (!isTyped(OUTPUT)) {
      return Optional.empty();
    }
    Matcher category = CATEGORY.matcher(ampsFirst(text(OUTPUT)));
    boolean said = category.matches();
    return Optional.of(
        List.of(
            new Question.Output(
                "the output",
                Optional.of(
                    rating(
                        OUTPUT,
                        said ? category.group(2) : ampsFirst(text(OUTPUT)),
                        Dimension.CURRENT)),
                said ? category.group(1) : "")));
  }

  /** Manuals put the volts first: {@code 12 V DC 100 mA}. */
  private static String ampsFirst(String typed) {
    return typed.replaceFirst("^\\s*([0-9.]+ *V(?: *[AD]C)?)[ ,/]+([0-9.]+ *m?A)\\s*$", "$2 at $1");
  }

  /** Refuses what describes a load, where the file has it. */
  void refuseLoad() throws Refused {
    for (String option : List.of(CONNECTION, PHASES, POWER, PRACTICE, VOLTAGE)) {
      if (isTyped(option)) {
        throw given(option);
      }
    }
  }

  private static Refused given(String option) {
    return new Refused(
        "The file already gives what %s says: leave it out, or change the file.".formatted(option));
  }

  /** What a netlist says cannot be typed as well: it would be two answers to one question. */
  private static <T> Optional<T> one(String option, Optional<T> inFile, Optional<T> typed)
      throws Refused {
    if (inFile.isPresent() && typed.isPresent()) {
      throw given(option);
    }
    return inFile.or(() -> typed);
  }

  private static OptionalDouble high(Optional<Quantity> quantity) {
    return quantity.stream().mapToDouble(Quantity::high).findFirst();
  }

  private String text(String option) {
    return parsed.matchedOptionValue(option, "");
  }

  private boolean isTyped(String option) {
    return !text(option).isEmpty();
  }

  private <E extends Enum<E> & Worded> Optional<E> word(String option, Class<E> list)
      throws Refused {
    return word(option, Worded.words(list)).flatMap(word -> Worded.find(list, word));
  }

  private Optional<String> word(String option, List<String> words) throws Refused {
    if (!parsed.hasMatchedOption(option)) {
      return Optional.empty();
    }
    String typed = text(option);
    for (String word : words) {
      if (word.equalsIgnoreCase(typed)) {
        return Optional.of(word);
      }
    }
    throw new Refused("%s takes %s, not %s.".formatted(option, Words.either(words), typed));
  }

  private static Rating rating(String option, String typed, Dimension amount) throws Refused {
    Wanted at = Wanted.of(amount == Dimension.COUNT ? Dimension.CURRENT : Dimension.VOLTAGE);
    Parsed<Rating> parsed = QuantityParser.rating(typed, Wanted.of(amount), Optional.of(at), false);
    if (parsed instanceof Parsed.Good<Rating> good) {
      return good.value();
    }
    Parsed.Bad<Rating> bad = (Parsed.Bad<Rating>) parsed;
    throw new Refused("%s: %s; %s.".formatted(option, bad.what(), bad.remedy()));
  }

  private Optional<Quantity> amount(String option, Dimension dimension) throws Refused {
    return isTyped(option)
        ? Optional.of(amount(option, text(option), dimension))
        : Optional.empty();
  }

  /** A value as a person types it at a prompt: the space before the unit may be left out. */
  private static Quantity amount(String option, String typed, Dimension dimension) throws Refused {
    String text =
        (dimension == Dimension.TEMPERATURE ? Fahrenheit.asCelsius(typed) : typed)
            .replaceAll("(?<=[0-9])\\s*°?C$", " °C");
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
    throw new Refused(
        String.format(Locale.ROOT, "%s %s: %s; %s.", option, typed, bad.what(), bad.remedy()));
  }
}
