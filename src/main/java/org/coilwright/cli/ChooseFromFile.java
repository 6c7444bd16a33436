package org.coilwright.cli;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.circuit.Branch;
import org.coilwright.cli.ChooseOptions.Refused;
import org.coilwright.netlist.Method;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.quantity.Rating;
import org.coilwright.quantity.Words;
import org.coilwright.rules.CoilContact;
import org.coilwright.sizing.Core;
import org.coilwright.sizing.LoadCurrent;
import org.coilwright.sizing.PowerSide;
import org.coilwright.sizing.PowerSide.Demand;
import org.coilwright.sizing.Question;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** The question that a contactor in a netlist puts; what the netlist leaves open is typed. */
final class ChooseFromFile {
  private final Study study;
  private final Part.Relay relay;
  private final ChooseOptions typed;
  private final Tables tables;
  private final PowerSide side;
  private final Site site;
  private final Demand demand;
  private final LoadCurrent first;
  private final int lines;

  private ChooseFromFile(Study study, Part.Relay relay, ChooseOptions typed, Tables tables)
      throws Refused {
    this.study = study;
    this.relay = relay;
    this.typed = typed;
    this.tables = tables;
    side = PowerSide.of(study, tables);
    site = study.circuit().netlist().site();
    demand =
        study.circuit().branchesOf(relay.name()).stream()
            .filter(Branch.Contact.class::isInstance)
            .flatMap(b -> side.demand(b).stream())
            .max(Comparator.comparingDouble(Demand::worst))
            .orElseThrow(
                () ->
                    new Refused(
                        "No load whose power is written hangs on the contacts of %s."
                            .formatted(relay.name())));
    first = demand.loads().get(0);
    if (first.hertz() == 0) {
      throw new Refused(
          "%s switches direct current; choose works for alternating mains."
              .formatted(relay.name()));
    }
    lines = demand.loads().stream().mapToInt(l -> side.linesOf(l.load()).size()).max().orElse(1);
  }

  static Question of(Study study, ChooseOptions typed, Tables tables) throws Refused {
    String name = typed.part();
    var parts = study.circuit().netlist().parts();
    List<String> relays =
        parts.values().stream().filter(Part.Relay.class::isInstance).map(Part::name).toList();
    if (name.isEmpty()) {
      throw new Refused(
          relays.isEmpty()
              ? "The file has no relay or contactor to judge."
              : "Say which relay or contactor of the file: --part %s."
                  .formatted(Words.either(relays)));
    }
    if (!(parts.get(name) instanceof Part.Relay relay)) {
      throw new Refused(
          "The file has no relay or contactor %s.%s".formatted(name, Near.question(name, relays)));
    }
    return new ChooseFromFile(study, relay, typed, tables).question();
  }

  private Question question() throws Refused {
    double air = air();
    typed.refuseLoad();
    Question.Load load = load();
    LoadWay way =
        LoadWay.of(
            side,
            relay.name(),
            demand.loads().stream().map(LoadCurrent::load).toList(),
            new LoadWay.Place(air, high(site.ambient()).orElse(air), load.wires(), isNec()),
            tables);
    Question.Place place =
        typed.place(
            air,
            relay.ratedAir().map(Written::value),
            relay.mounting().map(Written::value),
            site.altitude().map(Written::value));
    return new Question(
        "%s for %s, %s, in %s air, %s%s"
            .formatted(
                relay.name(),
                demand.names(),
                lines > 2 ? "three lines" : lines > 1 ? "two lines" : "one line",
                Printed.of(air, Dimension.TEMPERATURE),
                ChooseQuestion.words(place),
                way.worst()
                    .flatMap(Branch.Conductor::run)
                    .map(run -> ", wired as " + run.name())
                    .orElse("")),
        load,
        place,
        wire(way, air),
        supply(),
        typed.service(life()),
        new Question.Drive(typed.outputs(drivers()), coil()),
        demand.loads().stream().flatMap(l -> l.power().stream()).<Cited<?>>map(c -> c).toList());
  }

  /**
   * Air around the contactor, °C: as written; else as typed; else as computed from the losses in
   * the box.
   */
  private double air() throws Refused {
    Optional<Quantity> room = site.ambient().map(Written::value);
    Optional<Quantity> written =
        site.enclosure().isPresent()
            ? site.enclosureAir().map(Written::value)
            : site.enclosureAir().map(Written::value).or(() -> room);
    Optional<Quantity> known = typed.air(written).or(study.circuit()::unwrittenAir);
    if (known.isEmpty() && site.enclosure().isPresent()) {
      throw new Refused(
          "What %s needs could not be worked out: the air in the box is not known; give site.enclosure-air, or --air."
              .formatted(relay.name()));
    }
    return known.isPresent() ? known.get().high() : typed.air();
  }

  private boolean isNec() {
    return site.practice().value() == Site.Practice.NEC;
  }

  private Question.Load load() throws Refused {
    Optional<Part.Heater> heater =
        Optional.of(first.load())
            .filter(Part.Heater.class::isInstance)
            .map(Part.Heater.class::cast);
    Optional<Part.Connection> connection = heater.map(h -> h.connection().value());
    boolean neutral = connection.filter(Part.Connection.STAR_WITH_NEUTRAL::equals).isPresent();
    return new Question.Load(
        demand.nominal(),
        demand.worst(),
        demand.words(),
        first.volts(),
        lines > 2 ? 3 : 2,
        lines > 2 ? (neutral ? 4 : 3) : isNec() && lines == 1 ? 1 : 2,
        typed.kind(
            heater.isPresent()
                ? heater.flatMap(Part.Heater::kind).map(Written::value)
                : Optional.of(first.load().head().is())),
        connection.filter(Part.Connection.DELTA::equals).isPresent());
  }

  private Question.Laid wire(LoadWay way, double air) throws Refused {
    Method method = typed.method(way.method());
    OptionalDouble outside = typed.wireAir(site.ambient().map(Written::value));
    Optional<Branch.Conductor> line = way.worst();
    return new Question.Laid(
        method,
        way.method().filter(m -> m == Method.PANEL).isPresent() ? air : outside.orElse(air),
        typed.metres(way.metres()),
        new Core(
            true,
            typed.insulation(line.flatMap(Branch.Conductor::insulationMaterial)),
            typed.clamps(
                line.map(Branch.Conductor::clampTemperature).orElse(OptionalDouble.empty()))));
  }

  private Question.Supply supply() throws Refused {
    Optional<Site.MainsSupply> mains = site.mains();
    return new Question.Supply(
        site.practice().value(),
        mains.flatMap(Site.MainsSupply::earthing).filter(e -> e.value().equals("TT")).isPresent(),
        typed.faultAmps(mains.flatMap(Site.MainsSupply::faultCurrent).map(Written::value)),
        typed.loopOhms(mains.flatMap(Site.MainsSupply::loopImpedance).map(Written::value)));
  }

  /** How often it closes a heater, as its part gives it. */
  private Optional<Rating> life() {
    return first.load() instanceof Part.Heater
        ? Optional.ofNullable(relay.life().get("AC-1")).map(Written::value)
        : Optional.empty();
  }

  /** The coil as its part gives it; empty on alternating voltage where it gives no figure. */
  private Optional<Question.Coil> coil() {
    Part.CoilSpec coil = relay.coil();
    double volts = coil.voltage().value().nominal();
    if (study.coilKind(relay.name()) == CurrentKind.DC) {
      double watts =
          coil.power()
              .map(p -> p.value().high())
              .or(
                  () ->
                      coil.resistance()
                          .filter(r -> r.value().low() > 0)
                          .map(r -> volts * volts / r.value().low()))
              .orElse(0.0);
      return Optional.of(new Question.Coil(volts, true, watts, OptionalDouble.empty()));
    }
    if (study.coilKind(relay.name()) != CurrentKind.AC || coil.hold().isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new Question.Coil(
            volts,
            false,
            coil.hold().get().value().nominal(),
            coil.pickUp().stream().mapToDouble(p -> p.value().nominal()).findFirst()));
  }

  /** Every contact that stands in the way of the coil. */
  private List<Question.Output> drivers() {
    return CoilContact.before(relay.name(), study, tables).stream()
        .map(c -> new Question.Output(c.name(), c.rating(), c.category()))
        .toList();
  }

  private static OptionalDouble high(Optional<Written<Quantity>> written) {
    return written.stream().mapToDouble(w -> w.value().high()).findFirst();
  }
}
