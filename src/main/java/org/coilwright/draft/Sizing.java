package org.coilwright.draft;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.netlist.Method;
import org.coilwright.netlist.Mounting;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.sizing.Choice;
import org.coilwright.sizing.Chooser;
import org.coilwright.sizing.Core;
import org.coilwright.sizing.Duty;
import org.coilwright.sizing.LoadCurrent;
import org.coilwright.sizing.MainsBand;
import org.coilwright.sizing.Question;
import org.coilwright.sizing.Series;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** The first figures of a draft, from the same sizing as {@code choose}. */
final class Sizing {
  private static final List<String> GAUGES =
      List.of("18", "16", "14", "12", "10", "8", "6", "4", "3", "2", "1");
  private static final List<Integer> RCD = List.of(25, 40, 63, 80, 100, 125);

  private final Job job;
  private final Tables tables;

  Sizing(Job job, Tables tables) {
    this.job = job;
    this.tables = tables;
  }

  /** What came of it: figures, or why there are none. */
  record Begun(Optional<Figures> figures, String why) {}

  Begun begin() {
    Question question = question(Method.B2);
    Choice choice = Chooser.answer(question, tables);
    boolean open = choice.value("breaker").isEmpty() && job.warmest() > usualAir();
    if (open) {
      // no table says what such a breaker carries there: one is asked for whose sheet does
      choice = Chooser.answer(question.inAir(usualAir()), tables);
    }
    for (String key : List.of("choose", "breaker", "wire")) {
      if (choice.value(key).isEmpty()) {
        return new Begun(Optional.empty(), lineOf(choice, key));
      }
    }
    double breaker = choice.value("breaker").getAsDouble();
    double contactor = choice.value("choose").getAsDouble();
    double control = job.nec() ? 15 : 6;
    Choice fed = Chooser.wireBehind(breaker + control, question(Method.PANEL), tables);
    Figures figures =
        new Figures(Map.of())
            .with("contactor", JobReader.plain(contactor))
            .with("breaker", JobReader.plain(breaker))
            .with("control-breaker", JobReader.plain(control))
            .with("load.size", size(choice))
            .with("supply.size", fed.value("wire").isPresent() ? size(fed) : size(choice))
            .with("control.size", job.nec() ? "14 AWG" : "1.5 mm²")
            .with("elv.size", job.nec() ? "18 AWG" : "0.75 mm²")
            .with("capacity", capacity())
            .with("breaker-air", open ? JobReader.plain(job.warmest()) : "")
            .with("F0.amps", Integer.toString(rcd(breaker + control)));
    return new Begun(Optional.of(withCoil(figures)), "");
  }

  /** The figures of the contactor's coil go with its rating. */
  Figures withCoil(Figures figures) {
    double rating = figures.number("contactor");
    Cited<Double> multiple = tables.figure("coil.pick-up-multiple");
    double holding = column(rating, "holding");
    // a direct coil takes what a frame of that size takes: 3.5 W up to 20 A, 6 W up to 40 A
    return figures
        .with("hold", JobReader.plain(holding))
        .with("pick-up", JobReader.plain(holding * multiple.value()))
        .with("hold-watts", JobReader.plain(column(rating, "watts")))
        .with("coil-watts", rating <= 20 ? "3.5" : rating <= 40 ? "6" : "12");
  }

  private double column(double rating, String column) {
    return tables
        .lookup("contactor-ratings", Map.of(), rating, column)
        .map(Cited::value)
        .orElseThrow(() -> new IllegalStateException("no contactor of " + rating));
  }

  /** The next larger of a series; empty at its end. */
  Optional<Figures> larger(Figures figures, String name) {
    if (name.endsWith(".size")) {
      return thicker(figures.must(name)).map(s -> figures.with(name, s));
    }
    double above = figures.number(name) * 1.001;
    Optional<Cited<Double>> next =
        name.equals("contactor")
            ? Series.contactorAtLeast(above, tables)
            : job.nec() ? Series.atLeast(above, tables) : Series.breakerAtLeast(above, tables);
    Optional<Figures> more = next.map(n -> figures.with(name, JobReader.plain(n.value())));
    return name.equals("contactor") ? more.map(this::withCoil) : more;
  }

  private Optional<String> thicker(String size) {
    if (size.endsWith("AWG")) {
      int at = GAUGES.indexOf(size.replace(" AWG", ""));
      return at < 0 || at + 1 == GAUGES.size()
          ? Optional.empty()
          : Optional.of(GAUGES.get(at + 1) + " AWG");
    }
    double mm2 = Double.parseDouble(size.replace(" mm²", ""));
    return Series.wireOf(mm2 * 1.001, tables).map(s -> Printed.given(s, Dimension.AREA));
  }

  private static String size(Choice choice) {
    String line = lineOf(choice, "wire");
    return line.substring(0, line.indexOf(" copper"));
  }

  private static String lineOf(Choice choice, String key) {
    return choice.lines().stream()
        .filter(l -> l.key().equals(key))
        .map(Choice.Line::text)
        .reduce((a, b) -> b)
        .or(() -> choice.lines().stream().map(Choice.Line::text).reduce((a, b) -> b))
        .orElse("");
  }

  private String capacity() {
    double fault = amount("mains.fault-current", job.nec() ? 10_000 : 6000);
    return fault <= 6000 && !job.nec() ? "6 kA" : fault <= 10_000 ? "10 kA" : "25 kA";
  }

  private static int rcd(double amps) {
    return RCD.stream().filter(r -> r >= amps).findFirst().orElse(RCD.get(RCD.size() - 1));
  }

  private double amount(String path, double usual) {
    return job.brief().quantity(path).map(w -> w.value().high()).orElse(usual);
  }

  private OptionalDouble known(String path) {
    return job.brief()
        .quantity(path)
        .map(w -> OptionalDouble.of(w.value().high()))
        .orElse(OptionalDouble.empty());
  }

  /** The worst current of the load, A. */
  double worst() {
    return question(Method.B2).load().worst();
  }

  private Question question(Method method) {
    double nominal = job.power().nominal() / ((job.isThree() ? Math.sqrt(3) : 1) * job.volts());
    MainsBand mains =
        MainsBand.of(job.mainsVoltage(), job.nec() ? Site.Practice.NEC : Site.Practice.IEC, tables);
    double high = mains.high() / job.mainsVoltage().nominal();
    Quantity power = job.power();
    double tolerance =
        power.isExact()
            ? LoadCurrent.tolerance(power.nominal(), tables).map(Cited::value).orElse(1.0)
            : power.high() / power.nominal();
    double highVolts = fed() * high;
    boolean panel = method == Method.PANEL;
    return new Question(
        Printed.given(power.nominal(), Dimension.POWER),
        new Question.Load(
            nominal,
            nominal * tolerance * highVolts / job.volts(),
            "at %s and +%s power"
                .formatted(Printed.volts(highVolts), Printed.percent(tolerance - 1)),
            job.volts(),
            job.isThree() ? 3 : 2,
            job.lines() + (job.neutral() && !job.nec() ? 1 : 0),
            job.brief().word("load.kind").map(Written::value).orElse("metal-sheathed"),
            job.connection().equals("delta")),
        new Question.Place(
            job.warmest(),
            // the part that is bought has to carry its rating in the air it stands in
            OptionalDouble.of(Math.max(job.warmest(), usualAir())),
            Mounting.SPACED,
            known("altitude")),
        new Question.Laid(
            method,
            panel ? job.warmest() : amount("room", job.warmest()),
            panel ? OptionalDouble.empty() : OptionalDouble.of(job.boardToLoad()),
            Core.ASSUMED),
        new Question.Supply(
            job.nec() ? Site.Practice.NEC : Site.Practice.IEC,
            job.brief().word("mains.earthing").filter(w -> w.value().equals("TT")).isPresent(),
            known("mains.fault-current"),
            known("mains.loop-impedance")),
        new Question.Service(
            job.brief()
                .whole("load.starts-per-day")
                .map(w -> OptionalDouble.of(w.value()))
                .orElse(OptionalDouble.empty()),
            10,
            Duty.EIGHT_HOUR,
            Optional.empty()),
        new Question.Drive(List.of(), Optional.empty()),
        List.of());
  }

  /** °C up to which ratings usually hold. */
  private double usualAir() {
    return tables.figure("sizing.rated-air").value();
  }

  /** The voltage that feeds the load, nominal. */
  private double fed() {
    double mains = job.mainsVoltage().nominal();
    boolean across = job.lines() > 1 || job.phases().equals("1");
    return across ? mains : job.phases().equals("3") ? mains / Math.sqrt(3) : mains / 2;
  }
}
