// Over 250 lines: one rule with its three kinds of device.
package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Comparison;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.sizing.Found;
import org.coilwright.sizing.Guards;
import org.coilwright.sizing.Overcurrent;
import org.coilwright.sizing.PowerSide;
import org.coilwright.sizing.WayOhms;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** An earth fault at the load does not open the device in time. */
final class ProtectionDisconnectionTime implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("protection.disconnection-time", Weight.STOP, "earth fault not cleared in time")
          .what(
              "Adds the loop impedance of the mains and the resistance of line and protective"
                  + " conductor to the load, as warm as their insulation allows (PVC 70 °C), and holds the sum against the voltage to earth"
                  + " over the current that opens the breaker at once, with the lowest voltage factor"
                  + " of 0.95; a residual-current device in every line counts with five times its"
                  + " rated residual current, in a TT system with 50 V.")
          .why("The case of the load stays live at a dangerous voltage until somebody touches it.")
          .remedy("Take thicker wire or a more sensitive device, or a residual-current device.")
          .blind(
              "Practice nec, which sets no time and so leaves it open; IT systems; the reactance of thick cables; what the"
                  + " loop measures on site.")
          .sources("iec-60364-4-41", "bs-7671", "iec-60898-1", "iec-61008-1")
          .consequenceOf("poles.earth-missing", "protection.missing");

  private final PowerSides sides;
  private final Tables tables;

  ProtectionDisconnectionTime(PowerSides sides) {
    this.sides = sides;
    this.tables = sides.tables();
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    PowerSides.Seen seen = sides.of(study);
    Circuit circuit = study.circuit();
    List<Outcome> outcomes = new ArrayList<>();
    boolean nec = circuit.netlist().site().practice().value() == Site.Practice.NEC;
    for (Earthing earthing : Earthing.ofLoads(study)) {
      if (nec && seen.side().isOnMains(earthing.load())) {
        outcomes.add(unlimited(earthing.load()));
      } else if (earthing.byWire() && earthing.way().isPresent()) {
        judge(seen, earthing, earthing.way().get()).ifPresent(outcomes::add);
      }
    }
    return outcomes;
  }

  /** The national code asks for a path that opens the device and names no figure to hold it to. */
  private static Outcome unlimited(Part load) {
    return Subject.of(FACTS, load.head().mark(), load.name())
        .undecided(
            "ground-fault loop of %s".formatted(load.name()),
            "Whether a ground fault at %s opens its device at once is open: practice nec asks for it (250.4(A)(5)) and sets no time or loop."
                .formatted(load.name()));
  }

  private Optional<Outcome> judge(PowerSides.Seen seen, Earthing earthing, Path back) {
    PowerSide side = seen.side();
    Part load = earthing.load();
    Subject subject = Subject.of(FACTS, load.head().mark(), load.name());
    Optional<Site.MainsSupply> mains = side.circuit().netlist().site().mains();
    Optional<Written<Quantity>> loop = mains.flatMap(Site.MainsSupply::loopImpedance);
    if (loop.isEmpty()) {
      return Optional.of(
          subject.undecided(
              "site.mains.loop-impedance",
              "Whether an earth fault at %s is cleared in time is open: the loop impedance of the mains is not written."
                  .formatted(load.name())));
    }
    String system = mains.flatMap(Site.MainsSupply::earthing).map(Written::value).orElse("TN-S");
    double worst = 0;
    double hottest = 0;
    List<Cited<?>> cited = new ArrayList<>();
    Optional<PowerSide.Way> farthest = Optional.empty();
    for (PowerSide.Way way : side.waysOf(load)) {
      if (way.line()) {
        List<Branch> around = new ArrayList<>(way.path().branches());
        around.addAll(back.branches());
        Found<WayOhms> found = WayOhms.of(around, tables);
        if (found instanceof Found.Unknown<WayOhms> unknown) {
          return Optional.of(
              subject.undecided(
                  unknown.missing(),
                  "Whether an earth fault at %s is cleared in time is open. %s"
                      .formatted(load.name(), unknown.why())));
        }
        WayOhms ohms = found.known().orElseThrow();
        if (farthest.isEmpty() || ohms.ohms() > worst) {
          worst = ohms.ohms();
          hottest = ohms.hottest().orElse(hottest);
          farthest = Optional.of(way);
          cited.clear();
          cited.addAll(ohms.cited());
        }
      }
    }
    if (farthest.isEmpty()) {
      return Optional.empty();
    }
    double total = loop.get().value().high() + worst;
    return Optional.of(
        verdict(
            subject,
            seen,
            farthest.get(),
            new Loop(loop.get(), worst, hottest, total, system.equals("TT"), cited)));
  }

  /** Ω outside, Ω of the wires, both. */
  private record Loop(
      Written<Quantity> outside,
      double wires,
      double celsius,
      double total,
      boolean tt,
      List<Cited<?>> cited) {
    String words() {
      return "%s outside + %s of wires at %s = %s"
          .formatted(
              Printed.of(outside.value().high(), Dimension.RESISTANCE),
              Printed.of(wires, Dimension.RESISTANCE),
              Printed.of(celsius, Dimension.TEMPERATURE),
              Printed.of(total, Dimension.RESISTANCE));
    }
  }

  private Outcome verdict(Subject subject, PowerSides.Seen seen, PowerSide.Way way, Loop loop) {
    Guards guards = seen.guards();
    Optional<Part> device = guards.of(way.path().nodes().get(way.path().nodes().size() - 1));
    double toEarth = way.source().volts().map(Quantity::nominal).orElse(0.0);
    Optional<Part.Protective> rcd = ResidualDevices.inEveryLine(seen.side(), way.load());
    if (rcd.isPresent() && rcd.get().trip().isPresent()) {
      double trip = rcd.get().trip().get().value().high();
      Cited<Double> multiple = tables.figure("sizing.residual-multiple");
      Cited<Double> touch = tables.figure("sizing.touch-voltage");
      double limit = loop.tt() ? touch.value() / trip : toEarth / (trip * multiple.value());
      loop.cited().add(loop.tt() ? touch : multiple);
      return compare(
          subject,
          loop,
          limit,
          rcd.get(),
          loop.tt()
              ? "%s ÷ %s".formatted(Printed.volts(touch.value()), Printed.amps(trip))
              : "%s ÷ (%s × %s)"
                  .formatted(
                      Printed.volts(toEarth),
                      Printed.of(multiple.value(), Dimension.COUNT),
                      Printed.amps(trip)));
    }
    if (device.isEmpty()) {
      return subject.undecided(
          "an overcurrent device before " + way.load().name(),
          "Nothing is there that could clear an earth fault at %s.".formatted(way.load().name()));
    }
    Optional<Cited<Double>> multiple = Overcurrent.opensAtOnce(device.get(), tables);
    if (multiple.isEmpty() || Overcurrent.rating(device.get()).isEmpty()) {
      return fuse(subject, loop, device.get());
    }
    double opens = multiple.get().value() * Overcurrent.rating(device.get()).getAsDouble();
    Cited<Double> low = tables.figure("sizing.lowest-voltage");
    double strict = low.value() * toEarth / opens;
    double loose = toEarth / opens;
    String sum =
        "%s ÷ (%s × %s)"
            .formatted(
                Printed.volts(toEarth),
                Printed.of(multiple.get().value(), Dimension.COUNT),
                Printed.of(Overcurrent.rating(device.get()).getAsDouble(), Dimension.CURRENT));
    loop.cited().add(multiple.get());
    // inside the stricter limit is inside the published one: only between the two memory decides
    boolean between =
        Comparison.exceeds(loop.total(), strict) && !Comparison.exceeds(loop.total(), loose);
    if (between) {
      loop.cited().add(low);
    }
    return compare(
        subject,
        loop,
        Comparison.exceeds(loop.total(), loose) ? loose : strict,
        device.get(),
        Comparison.exceeds(loop.total(), loose)
            ? sum
            : Printed.of(low.value(), Dimension.COUNT) + " × " + sum);
  }

  private Outcome fuse(Subject subject, Loop loop, Part device) {
    Optional<Cited<Double>> limit =
        device instanceof Part.Fuse && Overcurrent.rating(device).isPresent()
            ? tables.lookup(
                "loop-impedance-fuses",
                Map.of(),
                Overcurrent.rating(device).getAsDouble(),
                "largest")
            : Optional.empty();
    if (limit.isEmpty()) {
      return subject.undecided(
          "the current that opens %s in 0.4 s".formatted(device.name()),
          "No table read here says when %s opens on an earth fault.".formatted(device.name()));
    }
    loop.cited().add(limit.get());
    return compare(subject, loop, limit.get().value(), device, "the table of fuses");
  }

  private static Outcome compare(
      Subject subject, Loop loop, double limit, Part device, String how) {
    Printed.Pair pair = Printed.pair(loop.total(), limit, Dimension.RESISTANCE);
    Measure value = new Measure(loop.total(), "Ω");
    Measure held = new Measure(limit, "Ω");
    Basis basis = Basis.of(loop.cited());
    String load = subject.at().get(0);
    if (!Comparison.exceeds(loop.total(), limit)) {
      return subject.satisfied(
          String.format(
              Locale.ROOT,
              "An earth fault at %s meets %s (%s) and %s opens up to %s (%s).",
              load,
              pair.value(),
              loop.words(),
              device.name(),
              pair.limit(),
              how),
          value,
          held,
          basis);
    }
    return subject
        .violated(
            "an earth fault at %s is not cleared in time".formatted(load),
            "Its loop has %s; %s opens in time up to %s (%s): too much by %s."
                .formatted(pair.value(), device.name(), pair.limit(), how, pair.apart()),
            "loop of " + pair.value())
        .alsoAt(device.head().mark(), "opens up to " + pair.limit())
        .alsoAt(loop.outside().mark(), "brings " + loop.outside().text())
        .measured(value, held)
        .detail("Loop: %s.".formatted(loop.words()))
        .todo(
            device instanceof Part.Protective found && found.isRcd()
                ? "Lower the resistance of the earthing, or take a more sensitive residual-current device."
                : "Put a residual-current device before it, or take thicker wire or a device that opens at less.",
            basis);
  }
}
