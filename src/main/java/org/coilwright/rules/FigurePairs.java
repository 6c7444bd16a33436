package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.CoilSpec;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Switching;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.solve.Study;

/** Pairs of written figures that are held against each other. */
final class FigurePairs {
  private final double apart;
  private final double efficiency;

  /**
   * Pairs of figures.
   *
   * @param apart how far rounding may set two figures of one thing apart, as a share
   * @param efficiency the lowest of a motor, shaft over input
   */
  FigurePairs(double apart, double efficiency) {
    this.apart = apart;
    this.efficiency = efficiency;
  }

  /** The mains and the air. */
  List<FigureClash> site(Study study, Site site) {
    List<FigureClash> found = new ArrayList<>();
    Optional<Quantity> toNeutral =
        study.circuit().branches(Source.class).stream()
            .filter(s -> !s.isDirect())
            .flatMap(s -> s.volts().stream())
            .findFirst();
    Optional<Written<Quantity>> loop = site.mains().flatMap(Site.MainsSupply::loopImpedance);
    Optional<Written<Quantity>> fault = site.mains().flatMap(Site.MainsSupply::faultCurrent);
    if (toNeutral.isPresent() && loop.isPresent() && fault.isPresent()) {
      double least = toNeutral.get().low() / loop.get().value().high();
      if (fault.get().value().high() * (1 + apart) < least) {
        String flows = Printed.of(least, Dimension.CURRENT);
        found.add(
            new FigureClash(
                fault.get(),
                loop.get(),
                "says %s at most".formatted(fault.get().text()),
                "lets %s flow".formatted(flows),
                "A fault to earth draws %s through %s, and the mains is written to give %s at most."
                    .formatted(flows, loop.get().text(), fault.get().text())));
      }
    }
    if (site.enclosureAir().isPresent() && site.ambient().isPresent()) {
      Written<Quantity> around = site.ambient().get();
      Written<Quantity> inside = site.enclosureAir().get();
      if (inside.value().high() < around.value().high()) {
        found.add(
            new FigureClash(
                inside,
                around,
                "cooler than around it",
                "as warm as this outside",
                "Inside the enclosure the air is written to reach %s and around it %s: nothing cools it."
                    .formatted(inside.text(), around.text())));
      }
    }
    return found;
  }

  /** The water against the vessels. */
  List<FigureClash> water(Netlist netlist, Switching switching) {
    List<FigureClash> found = new ArrayList<>();
    List<Written<Quantity>> vessels =
        netlist.parts().values().stream()
            .filter(Part.Heater.class::isInstance)
            .flatMap(p -> ((Part.Heater) p).vessel().stream())
            .flatMap(v -> v.litres().stream())
            .toList();
    switching
        .water()
        .flatMap(Switching.Water::litres)
        .filter(w -> !vessels.isEmpty())
        .ifPresent(
            water -> {
              double sum = vessels.stream().mapToDouble(v -> v.value().nominal()).sum();
              List<Double> all = new ArrayList<>(List.of(sum));
              vessels.forEach(v -> all.add(v.value().nominal()));
              if (all.stream().noneMatch(litres -> isNear(water.value().nominal(), litres))) {
                Written<Quantity> vessel = vessels.get(0);
                found.add(
                    new FigureClash(
                        vessel,
                        water,
                        "holds " + litres(vessel),
                        "heats " + litres(water),
                        "The vessel holds %s, and %s of water are heated."
                            .formatted(litres(vessel), litres(water))));
              }
            });
    Optional<Written<Quantity>> from = switching.water().flatMap(Switching.Water::from);
    Optional<Written<Quantity>> to = switching.water().flatMap(Switching.Water::to);
    if (from.isPresent() && to.isPresent() && from.get().value().low() >= to.get().value().high()) {
      found.add(
          new FigureClash(
              to.get(),
              from.get(),
              "no warmer than it comes",
              "comes as warm as this",
              "The water comes at %s and is to be heated to %s."
                  .formatted(from.get().text(), to.get().text())));
    }
    return found;
  }

  private static String litres(Written<Quantity> volume) {
    return Printed.given(volume.value().nominal(), volume.value().dimension());
  }

  private boolean isNear(double one, double other) {
    return Math.abs(one - other) <= apart * Math.max(one, other);
  }

  /** A part by itself. */
  List<FigureClash> part(Study study, Part part) {
    List<FigureClash> found = new ArrayList<>();
    if (part instanceof Part.Relay relay) {
      coil(study, relay, found);
      relay
          .insulation()
          .filter(i -> i.clearance().isPresent() && i.creepage().isPresent())
          .flatMap(
              i ->
                  FigureClash.ofAbove(
                      i.clearance().get(),
                      i.creepage().get(),
                      i.creepage().get().value().high(),
                      Dimension.LENGTH,
                      "the way through the air is never longer than the way along the surface",
                      0))
          .ifPresent(found::add);
    } else if (part instanceof Part.OtherLoad load) {
      load(load).ifPresent(found::add);
    }
    return found;
  }

  private void coil(Study study, Part.Relay relay, List<FigureClash> found) {
    CoilSpec coil = relay.coil();
    if (study.coilKind(relay.name()) == CurrentKind.DC
        && coil.resistance().isPresent()
        && coil.power().isPresent()) {
      Quantity ohms = coil.resistance().get().value();
      double square = Math.pow(coil.voltage().value().nominal(), 2);
      Quantity watts =
          new Quantity(
              Dimension.POWER,
              square / ohms.high(),
              square / ohms.nominal(),
              square / ohms.low(),
              CurrentKind.UNSTATED);
      FigureClash.ofApart(coil.power().get(), coil.resistance().get(), watts, apart)
          .ifPresent(found::add);
    }
    if (coil.holdPower().isPresent() && coil.hold().isPresent()) {
      above(coil.holdPower().get(), coil.hold().get(), "watts are never more than volt-amperes")
          .ifPresent(found::add);
    }
    if (coil.hold().isPresent() && coil.pickUp().isPresent()) {
      above(coil.hold().get(), coil.pickUp().get(), "a coil draws no more held than pulling in")
          .ifPresent(found::add);
    }
  }

  private Optional<FigureClash> above(
      Written<Quantity> figure, Written<Quantity> from, String because) {
    return FigureClash.ofAbove(
        figure, from, from.value().high(), figure.value().dimension(), because, apart);
  }

  private Optional<FigureClash> load(Part.OtherLoad load) {
    if (load.power().isEmpty() || load.current().isEmpty() || load.voltage().isEmpty()) {
      return Optional.empty();
    }
    boolean phases = load.pins().stream().filter(p -> !p.equals(Earthing.PE)).count() > 2;
    double root = phases ? Math.sqrt(1 + 2) : 1;
    Written<Quantity> amps = load.current().get();
    double volts = load.voltage().get().value().nominal() * root;
    Quantity factor =
        load.powerFactor().map(Written::value).orElse(Quantity.of(1, Dimension.RATIO));
    if (load.powerFactor().isEmpty()) {
      return FigureClash.ofAbove(
          load.power().get(),
          amps,
          amps.value().high() * volts,
          Dimension.POWER,
          "a load takes no more than its volts times its amperes",
          apart);
    }
    Quantity watts =
        new Quantity(
            Dimension.POWER,
            amps.value().low() * volts * factor.low(),
            amps.value().nominal() * volts * factor.nominal(),
            amps.value().high() * volts * factor.high(),
            CurrentKind.UNSTATED);
    return load.head().is().equals("motor")
        ? FigureClash.ofShaft(load.power().get(), amps, watts, apart, efficiency)
        : FigureClash.ofApart(load.power().get(), amps, watts, apart);
  }
}
