// Over 250 lines: one entry of the netlist after the other.
package org.coilwright.cli;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.TreeMap;
import org.coilwright.circuit.Branch;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rules.CoilContact;
import org.coilwright.sizing.LoadCurrent;
import org.coilwright.sizing.PowerSide;
import org.coilwright.sizing.PowerSide.Demand;
import org.coilwright.sizing.Question;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** The question that a contactor in a netlist puts. */
final class ChooseFromFile {
  private ChooseFromFile() {}

  static Question of(
      Study study,
      String name,
      ChooseQuestion.Asked asked,
      Set<String> typed,
      ChooseQuestion.Amounts amounts,
      Tables tables)
      throws ChooseQuestion.Refused {
    List<String> relays =
        study.circuit().netlist().parts().values().stream()
            .filter(Part.Relay.class::isInstance)
            .map(Part::name)
            .toList();
    if (name.isEmpty()) {
      throw new ChooseQuestion.Refused("Say which contactor of the file: --part Q1.");
    }
    if (!(study.circuit().netlist().parts().get(name) instanceof Part.Relay relay)) {
      throw new ChooseQuestion.Refused(
          "The file has no relay or contactor %s.%s".formatted(name, Near.question(name, relays)));
    }
    PowerSide side = PowerSide.of(study, tables);
    Optional<Demand> demand =
        study.circuit().branchesOf(name).stream()
            .filter(Branch.Contact.class::isInstance)
            .flatMap(b -> side.demand(b).stream())
            .max((a, b) -> Double.compare(a.worst(), b.worst()));
    if (demand.isEmpty()) {
      throw new ChooseQuestion.Refused(
          "No load whose power is written hangs on the contacts of %s.".formatted(name));
    }
    Site site = study.circuit().netlist().site();
    LoadCurrent first = demand.get().loads().get(0);
    if (first.hertz() == 0) {
      throw new ChooseQuestion.Refused(
          "%s switches direct current; choose works for alternating mains.".formatted(name));
    }
    int lines =
        demand.get().loads().stream().mapToInt(l -> side.linesOf(l.load()).size()).max().orElse(1);
    boolean nec = site.practice().value() == Site.Practice.NEC;
    boolean boxUnknown = site.enclosure().isPresent() && site.enclosureAir().isEmpty();
    if (boxUnknown && !typed.contains("--air")) {
      throw new ChooseQuestion.Refused(
          "What %s needs could not be worked out: the air in the box is not known; give site.enclosure-air, or --air."
              .formatted(name));
    }
    Optional<Written<Quantity>> written =
        boxUnknown ? Optional.empty() : site.enclosureAir().or(site::ambient);
    double air =
        written.isPresent()
            ? written.get().value().high()
            : amounts.of("--air", asked.air(), Dimension.TEMPERATURE).high();
    boolean close =
        relay.mounting().map(m -> m.value().equals("side-by-side")).orElse(asked.close());
    String kind =
        first.load() instanceof Part.Heater heater
            ? heater.kind().map(Written::value).orElse(asked.kind())
            : first.load().head().is();
    double outside = site.ambient().map(a -> a.value().high()).orElse(air);
    LoadWay way =
        LoadWay.of(
            side,
            name,
            demand.get().loads().stream().map(LoadCurrent::load).toList(),
            new LoadWay.Place(air, outside, lines > 2 ? 3 : 2, nec),
            tables);
    Optional<Branch.Conductor> line = way.worst();
    List<Question.Output> drivers = drivers(study, name, tables);
    Optional<Site.MainsSupply> mains = site.mains();
    Map<String, Boolean> given = new TreeMap<>();
    for (String always :
        List.of("--power", "--voltage", "--phases", "--connection", "--practice")) {
      given.put(always, true);
    }
    given.put("--kind", !(first.load() instanceof Part.Heater h) || h.kind().isPresent());
    given.put("--air", written.isPresent());
    given.put("--rated-air", relay.ratedAir().isPresent());
    given.put("--mounting", relay.mounting().isPresent());
    given.put("--altitude", site.altitude().isPresent());
    given.put("--method", way.method().isPresent());
    given.put("--wire-air", site.ambient().isPresent());
    given.put("--length", way.metres().isPresent());
    given.put("--insulation", line.flatMap(Branch.Conductor::insulationMaterial).isPresent());
    given.put("--clamps", line.filter(w -> w.clampTemperature().isPresent()).isPresent());
    given.put("--fault-current", mains.flatMap(Site.MainsSupply::faultCurrent).isPresent());
    given.put("--loop-impedance", mains.flatMap(Site.MainsSupply::loopImpedance).isPresent());
    given.put("--life", relay.life().containsKey("AC-1") && first.load() instanceof Part.Heater);
    given.put("--output", !drivers.isEmpty());
    refuseTyped(typed, given);
    ChooseQuestion.Asked here =
        new ChooseQuestion.Asked(
            "",
            "",
            lines > 2 ? "3" : "1",
            "",
            kind,
            asked.air(),
            relay
                .ratedAir()
                .map(a -> Printed.of(a.value().high(), Dimension.TEMPERATURE))
                .orElse(asked.ratedAir()),
            close,
            site.altitude()
                .map(a -> Printed.of(a.value().high(), Dimension.LENGTH))
                .orElse(asked.altitude()),
            asked.duty(),
            asked.starts(),
            asked.years(),
            nec,
            way.method().orElse(asked.method()),
            way.method().filter(m -> m.equals("panel")).isPresent()
                ? Printed.of(air, Dimension.TEMPERATURE)
                : site.ambient()
                    .map(a -> Printed.of(a.value().high(), Dimension.TEMPERATURE))
                    .orElse(asked.wireAir()),
            asked.length().isEmpty()
                ? way.metres().stream()
                    .mapToObj(m -> Printed.of(m, Dimension.LENGTH))
                    .findFirst()
                    .orElse("")
                : asked.length(),
            site.mains()
                .flatMap(Site.MainsSupply::faultCurrent)
                .map(f -> Printed.of(f.value().high(), Dimension.CURRENT))
                .orElse(asked.fault()),
            asked.insulation().isEmpty()
                ? line.flatMap(Branch.Conductor::insulationMaterial).orElse("")
                : asked.insulation(),
            asked.clamps().isEmpty()
                ? line.map(Branch.Conductor::clampTemperature)
                    .filter(OptionalDouble::isPresent)
                    .map(c -> Printed.of(c.getAsDouble(), Dimension.TEMPERATURE))
                    .orElse("")
                : asked.clamps(),
            asked.loop().isEmpty()
                ? site.mains()
                    .flatMap(Site.MainsSupply::loopImpedance)
                    .map(l -> Printed.of(l.value().high(), Dimension.RESISTANCE))
                    .orElse("")
                : asked.loop(),
            site.mains()
                .flatMap(Site.MainsSupply::earthing)
                .filter(e -> e.value().equals("TT"))
                .isPresent(),
            asked
                .life()
                .or(
                    () ->
                        first.load() instanceof Part.Heater
                            ? Optional.ofNullable(relay.life().get("AC-1")).map(Written::value)
                            : Optional.empty()),
            drivers.isEmpty() ? asked.outputs() : drivers,
            coil(relay, study));
    String title =
        "%s for %s, %s, in %s air, %s%s"
            .formatted(
                name,
                demand.get().names(),
                lines > 2 ? "three lines" : lines > 1 ? "two lines" : "one line",
                Printed.of(air, Dimension.TEMPERATURE),
                close ? "close-mounted" : "spaced",
                line.flatMap(Branch.Conductor::run)
                    .map(run -> ", wired as " + run.name())
                    .orElse(""));
    return new ChooseQuestion(amounts, tables)
        .place(
            here,
            title,
            demand.get().nominal(),
            demand.get().worst(),
            demand.get().words(),
            first.volts(),
            lines > 2,
            lines > 2 ? (withNeutral(first.load()) ? 4 : 3) : nec && lines == 1 ? 1 : 2,
            first.load() instanceof Part.Heater delta
                && delta.connection().value() == Part.Connection.DELTA,
            air,
            demand.get().loads().stream()
                .flatMap(l -> l.power().stream())
                .<Cited<?>>map(c -> c)
                .toList());
  }

  private static boolean withNeutral(Part load) {
    return load instanceof Part.Heater heater
        && heater.connection().value() == Part.Connection.STAR_WITH_NEUTRAL;
  }

  /** What a netlist says cannot be typed as well: it would be two answers to one question. */
  private static void refuseTyped(Set<String> typed, Map<String, Boolean> given)
      throws ChooseQuestion.Refused {
    for (Map.Entry<String, Boolean> option : given.entrySet()) {
      if (option.getValue() && typed.contains(option.getKey())) {
        throw new ChooseQuestion.Refused(
            "The file already gives what %s says: leave it out, or change the file."
                .formatted(option.getKey()));
      }
    }
  }

  /** The coil as its part gives it; empty on alternating voltage where it gives no figure. */
  private static Optional<Question.Coil> coil(Part.Relay relay, Study study) {
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
  private static List<Question.Output> drivers(Study study, String name, Tables tables) {
    return CoilContact.before(name, study, tables).stream()
        .map(c -> new Question.Output(c.name(), c.rating(), c.category()))
        .toList();
  }
}
