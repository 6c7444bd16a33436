package org.coilwright.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.cli.ChooseOptions.Refused;
import org.coilwright.netlist.Part.Connection;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Site.Phases;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.sizing.Core;
import org.coilwright.sizing.LoadCurrent;
import org.coilwright.sizing.MainsBand;
import org.coilwright.sizing.Question;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** The question that is typed after {@code choose}, without a netlist. */
final class ChooseQuestion {
  private final ChooseOptions typed;
  private final Tables tables;
  private final Phases phases;
  private final Connection connection;
  private final boolean nec;

  private ChooseQuestion(ChooseOptions typed, Tables tables) throws Refused {
    this.typed = typed;
    this.tables = tables;
    phases = typed.phases().orElse(Phases.ONE);
    nec = typed.practice() == Site.Practice.NEC;
    connection =
        typed.connection().orElse(phases == Phases.THREE ? Connection.STAR : Connection.SINGLE);
  }

  static Question of(ChooseOptions typed, Tables tables) throws Refused {
    return new ChooseQuestion(typed, tables).question();
  }

  private Question question() throws Refused {
    Optional<Quantity> asked = typed.power();
    if (asked.isEmpty()) {
      throw new Refused("choose needs --power, such as --power 3kW, or a netlist and --part.");
    }
    Quantity power = asked.get();
    Quantity volts = voltage();
    if ((phases == Phases.THREE) == (connection == Connection.SINGLE)) {
      throw new Refused(
          "--connection %s does not go with --phases %s."
              .formatted(connection.word(), phases.word()));
    }
    double air = typed.air();
    Question.Place place = typed.place(air, Optional.empty(), Optional.empty(), Optional.empty());
    List<Cited<?>> basis = new ArrayList<>();
    Question.Load load = load(power, volts, basis);
    String title =
        "%s, %s%s, %s, in %s air, %s%s"
            .formatted(
                Printed.of(power.nominal(), Dimension.POWER),
                Printed.volts(volts.nominal()),
                connection == Connection.SINGLE ? "" : " " + connection.word().replace('-', ' '),
                switch (phases) {
                  case ONE -> "one phase";
                  case SPLIT -> "two lines";
                  case THREE -> "three phases";
                },
                Printed.of(air, Dimension.TEMPERATURE),
                words(place),
                typed.serviceWords());
    return new Question(
        title,
        load,
        place,
        new Question.Laid(
            typed.method(Optional.empty()),
            typed.wireAir(Optional.empty()).orElse(air),
            typed.metres(OptionalDouble.empty()),
            new Core(
                true, typed.insulation(Optional.empty()), typed.clamps(OptionalDouble.empty()))),
        new Question.Supply(
            typed.practice(),
            false,
            typed.faultAmps(Optional.empty()),
            typed.loopOhms(Optional.empty())),
        typed.service(Optional.empty()),
        new Question.Drive(typed.outputs(List.of()), Optional.empty()),
        List.copyOf(basis));
  }

  /** {@code close-mounted} or {@code spaced}. */
  static String words(Question.Place place) {
    return switch (place.mounting()) {
      case SIDE_BY_SIDE -> "close-mounted";
      case SPACED -> "spaced";
    };
  }

  private Quantity voltage() throws Refused {
    Optional<Quantity> given = typed.voltage();
    if (given.isEmpty() && nec && phases == Phases.THREE) {
      throw new Refused(
          "--practice nec with --phases 3 needs --voltage: 208V, 240V, 480V or what there is.");
    }
    double usual =
        switch (phases) {
          case ONE -> nec ? 120 : 230;
          case SPLIT -> 240;
          case THREE -> 400;
        };
    return given.orElse(Quantity.of(usual, Dimension.VOLTAGE));
  }

  private Question.Load load(Quantity power, Quantity volts, List<Cited<?>> basis) throws Refused {
    boolean three = phases == Phases.THREE;
    MainsBand mains = MainsBand.of(volts, typed.practice(), tables);
    mains.taken().ifPresent(basis::add);
    Optional<Cited<Double>> usual =
        power.isExact() ? LoadCurrent.tolerance(power.nominal(), tables) : Optional.empty();
    usual.ifPresent(basis::add);
    double tolerance =
        power.isExact() ? usual.map(Cited::value).orElse(1.0) : power.high() / power.nominal();
    double nominal = power.nominal() / ((three ? Math.sqrt(3) : 1) * volts.nominal());
    int poles =
        three
            ? (connection == Connection.STAR_WITH_NEUTRAL ? 4 : 3)
            : nec && phases == Phases.ONE && toNeutral(volts, basis) ? 1 : 2;
    return new Question.Load(
        nominal,
        nominal * tolerance * mains.high() / volts.nominal(),
        "at %s and +%s power"
            .formatted(Printed.volts(mains.high()), Printed.percent(tolerance - 1)),
        volts.nominal(),
        three ? 3 : 2,
        poles,
        typed.kind(Optional.empty()),
        connection == Connection.DELTA);
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
}
