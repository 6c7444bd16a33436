package org.coilwright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.netlist.Site;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.quantity.Rating;
import org.coilwright.sizing.Core;
import org.coilwright.sizing.LoadCurrent;
import org.coilwright.sizing.MainsBand;
import org.coilwright.sizing.Question;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** Turns what was typed after {@code choose} into a question. */
final class ChooseQuestion {
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

  /** Reads a value of an option. */
  @FunctionalInterface
  interface Amounts {
    Quantity of(String option, String typed, Dimension dimension) throws Refused;
  }

  /** The options as typed; empty text where one was left out. */
  record Asked(
      String power,
      String voltage,
      String phases,
      String connection,
      String kind,
      String air,
      String ratedAir,
      boolean close,
      String altitude,
      String duty,
      String starts,
      String years,
      boolean nec,
      String method,
      String wireAir,
      String length,
      String fault,
      String insulation,
      String clamps,
      String loop,
      boolean tt,
      Optional<Rating> life,
      List<Question.Output> outputs,
      Optional<Question.Coil> coil) {}

  private final Amounts amounts;
  private final Tables tables;

  ChooseQuestion(Amounts amounts, Tables tables) {
    this.amounts = amounts;
    this.tables = tables;
  }

  Question of(Asked asked) throws Refused {
    if (asked.power().isEmpty()) {
      throw new Refused("choose needs --power, such as --power 3kW, or a netlist and --part.");
    }
    Quantity power = amounts.of("--power", asked.power(), Dimension.POWER);
    boolean three = asked.phases().equals("3");
    boolean split = asked.phases().equals("split");
    if (three && asked.nec() && asked.voltage().isEmpty()) {
      throw new Refused(
          "--practice nec with --phases 3 needs --voltage: 208V, 240V, 480V or what there is.");
    }
    String usual = three ? "400 V" : split ? "240 V" : asked.nec() ? "120 V" : "230 V";
    Quantity volts =
        amounts.of(
            "--voltage", asked.voltage().isEmpty() ? usual : asked.voltage(), Dimension.VOLTAGE);
    String connection = connection(asked, three);
    MainsBand mains =
        MainsBand.of(volts, asked.nec() ? Site.Practice.NEC : Site.Practice.IEC, tables);
    double high = mains.high();
    List<Cited<?>> basis = new ArrayList<>();
    mains.taken().ifPresent(basis::add);
    if (power.isExact()) {
      LoadCurrent.tolerance(power.nominal(), tables).ifPresent(basis::add);
    }
    double root = three ? Math.sqrt(3) : 1;
    double nominal = power.nominal() / (root * volts.nominal());
    double tolerance =
        power.isExact()
            ? LoadCurrent.tolerance(power.nominal(), tables).map(t -> t.value()).orElse(1.0)
            : power.high() / power.nominal();
    double air = amounts.of("--air", asked.air(), Dimension.TEMPERATURE).high();
    String title =
        "%s, %s%s, %s, in %s air, %s%s"
            .formatted(
                Printed.of(power.nominal(), Dimension.POWER),
                Printed.volts(volts.nominal()),
                connection.equals("single") ? "" : " " + connection.replace('-', ' '),
                three ? "three phases" : split ? "two lines" : "one phase",
                Printed.of(air, Dimension.TEMPERATURE),
                asked.close() ? "close-mounted" : "spaced",
                asked.starts().isEmpty()
                    ? ""
                    : ", %s starts a day, %s years".formatted(asked.starts(), asked.years()));
    return place(
        asked,
        title,
        nominal,
        nominal * tolerance * high / volts.nominal(),
        "at %s and +%s power".formatted(Printed.volts(high), Printed.percent(tolerance - 1)),
        volts.nominal(),
        three,
        three
            ? (connection.equals("star-with-neutral") ? 4 : 3)
            : asked.nec() && !split && toNeutral(volts, basis) ? 1 : 2,
        connection.equals("delta"),
        air,
        basis);
  }

  /** Under the NEC one phase is line to neutral at two voltages only; any other has two lines. */
  private boolean toNeutral(Quantity volts, List<Cited<?>> basis) {
    for (String name : List.of("sizing.nec-to-neutral", "sizing.nec-to-neutral-high")) {
      Cited<Double> figure = tables.figure(name);
      if (Math.abs(volts.nominal() - figure.value()) < 1e-6) {
        basis.add(figure);
        return true;
      }
    }
    return false;
  }

  private static String connection(Asked asked, boolean three) throws Refused {
    String usual = three ? "star" : "single";
    String connection = asked.connection().isEmpty() ? usual : asked.connection();
    if (three == connection.equals("single")) {
      throw new Refused(
          "--connection %s does not go with --phases %s.".formatted(connection, asked.phases()));
    }
    return connection;
  }

  /** Everything that does not depend on where the load's current comes from. */
  Question place(
      Asked asked,
      String title,
      double nominal,
      double worst,
      String worstWords,
      double volts,
      boolean three,
      int poles,
      boolean delta,
      double air,
      List<Cited<?>> basis)
      throws Refused {
    return new Question(
        title,
        nominal,
        worst,
        worstWords,
        volts,
        three ? 3 : 2,
        poles,
        asked.kind(),
        air,
        optional("--rated-air", asked.ratedAir(), Dimension.TEMPERATURE),
        asked.close(),
        optional("--altitude", asked.altitude(), Dimension.LENGTH),
        asked.nec() ? 60 : 50,
        optional("--starts-per-day", asked.starts(), Dimension.COUNT),
        amounts.of("--years", asked.years(), Dimension.COUNT).nominal(),
        asked.nec(),
        asked.duty(),
        asked.method(),
        optional("--wire-air", asked.wireAir(), Dimension.TEMPERATURE).orElse(air),
        optional("--length", asked.length(), Dimension.LENGTH),
        optional("--fault-current", asked.fault(), Dimension.CURRENT),
        new Core(
            true,
            Optional.of(asked.insulation()).filter(i -> !i.isEmpty()),
            optional("--clamps", asked.clamps(), Dimension.TEMPERATURE)),
        optional("--loop-impedance", asked.loop(), Dimension.RESISTANCE),
        delta,
        asked.tt(),
        asked.life(),
        asked.outputs(),
        asked.coil(),
        true,
        List.copyOf(basis));
  }

  private OptionalDouble optional(String option, String typed, Dimension dimension) throws Refused {
    return typed.isEmpty()
        ? OptionalDouble.empty()
        : OptionalDouble.of(amounts.of(option, typed, dimension).high());
  }
}
