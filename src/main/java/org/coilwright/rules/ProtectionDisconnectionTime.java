// Over 250 lines: one rule with its kinds of device, of system and of too little current.
package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.sizing.Found;
import org.coilwright.sizing.Guards;
import org.coilwright.sizing.OpeningTimes;
import org.coilwright.sizing.PowerSide;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** An earth fault at the load does not open the device in time. */
final class ProtectionDisconnectionTime implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("protection.disconnection-time", Weight.STOP, "earth fault not cleared in time")
          .what(
              "Adds the loop impedance of the mains and the resistance of line and protective"
                  + " conductor to the load, or to a controller or supply with a PE, as warm as"
                  + " their insulation allows (PVC 70 °C). The voltage to earth over that sum, and"
                  + " the fault current of the mains where that is less, must reach what opens the"
                  + " device in the time of the earthing system: a breaker's magnetic release, the"
                  + " current that opens a fuse of its family, each with the lowest voltage factor"
                  + " of 0.95; a residual-current device in every line counts with five times its"
                  + " rated residual current, in a TT system with 50 V.")
          .why("The case of the load stays live at a dangerous voltage until somebody touches it.")
          .remedy("Take thicker wire or a more sensitive device, or a residual-current device.")
          .blind(
              "Practice nec, which sets no time, and IT systems, where a first fault opens nothing:"
                  + " both are left open; the reactance of thick cables; what the loop measures on"
                  + " site; the 5 s that circuits above 32 A may take.")
          .sources(
              "iec-60364-4-41",
              "bs-7671",
              "iec-60898-1",
              "iec-60898-1-times",
              "fuse-manuals",
              "iec-61008-1")
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
    for (Earthing earthing : Earthing.ofLoadsAndInputs(study)) {
      Subject subject = Subject.of(FACTS, earthing.load().head().mark(), earthing.load().name());
      if (nec
          && (seen.side().isOnMains(earthing.load())
              || !seen.side().loads().contains(earthing.load()))) {
        outcomes.add(unlimited(subject));
      } else if (earthing.byWire() && earthing.way().isPresent()) {
        outcomes.add(judge(subject, seen, earthing));
      }
    }
    return outcomes;
  }

  /** The national code asks for a path that opens the device and names no figure to hold it to. */
  private static Outcome unlimited(Subject subject) {
    String load = subject.at().get(0);
    return subject.unsettled(
        "ground-fault loop of %s".formatted(load),
        "Whether a ground fault at %s opens its device at once is open: practice nec asks for it (250.4(A)(5)) and sets no time or loop."
            .formatted(load),
        "The netlist cannot settle it: compare the measured loop of %s with its device's curve on site."
            .formatted(load));
  }

  private Outcome judge(Subject subject, PowerSides.Seen seen, Earthing earthing) {
    String load = earthing.load().name();
    String open = "Whether an earth fault at %s is cleared in time is open.".formatted(load);
    Optional<String> system =
        seen.side()
            .circuit()
            .netlist()
            .site()
            .mains()
            .flatMap(Site.MainsSupply::earthing)
            .map(Written::value);
    if (system.isEmpty()) {
      return subject.undecided(
          "site.mains.earthing", open + " The earthing system of the mains is not written.");
    }
    if (system.get().equals("IT")) {
      return subject.unsettled(
          "second earth fault in the IT system at " + load,
          open
              + " In an IT system a first earth fault opens nothing, and the loop of a second one,"
              + " somewhere else, is not known here.",
          "The netlist cannot settle it: whoever plans the IT system has to state its insulation"
              + " monitoring and prove the second fault (411.6).");
    }
    Found<EarthLoop> found =
        EarthLoop.of(seen.side(), earthing.load(), earthing.way().orElseThrow(), tables);
    if (found instanceof Found.Unknown<EarthLoop> unknown) {
      return Unknowns.outcome(subject, open, unknown);
    }
    EarthLoop loop = found.known().orElseThrow();
    boolean tt = system.get().equals("TT");
    Optional<Part.Protective> rcd = ResidualDevices.inEveryLine(seen.side(), loop.way().load());
    if (rcd.isPresent() && rcd.get().trip().isPresent()) {
      return residual(subject, loop, rcd.get(), rcd.get().trip().get().value().high(), tt);
    }
    return overcurrent(subject, open, seen.guards(), loop, tt);
  }

  private Outcome residual(
      Subject subject, EarthLoop loop, Part.Protective rcd, double trip, boolean tt) {
    Cited<Double> multiple = tables.figure("sizing.residual-multiple");
    Cited<Double> touch = tables.figure("sizing.touch-voltage");
    List<Cited<?>> cited = new ArrayList<>(loop.cited());
    cited.add(tt ? touch : multiple);
    double opens = trip * multiple.value();
    String fast =
        "%s × %s".formatted(Printed.of(multiple.value(), Dimension.COUNT), Printed.amps(trip));
    if (weaker(loop, opens)) {
      return tooWeak(subject, loop, rcd, opens, fast, "", cited);
    }
    return compare(
        subject,
        loop,
        tt ? touch.value() / trip : loop.toEarth() / opens,
        rcd,
        tt
            ? "%s ÷ %s".formatted(Printed.volts(touch.value()), Printed.amps(trip))
            : "%s ÷ (%s)".formatted(Printed.volts(loop.toEarth()), fast),
        "",
        cited);
  }

  private Outcome overcurrent(
      Subject subject, String open, Guards guards, EarthLoop loop, boolean tt) {
    PowerSide.Way way = loop.way();
    Optional<Part> device = guards.of(way.path().nodes().get(way.path().nodes().size() - 1));
    if (device.isEmpty()) {
      return subject.undecided(
          "an overcurrent device before " + way.load().name(),
          "Nothing is there that could clear an earth fault at %s.".formatted(way.load().name()));
    }
    // a network named in round figures counts with its name
    Optional<Cited<Double>> time =
        tables.lookup(
            "disconnection-times",
            Map.of("earthing", tt ? "TT" : "TN"),
            loop.toEarth() / tables.figure("drive.round-name").value(),
            "ac");
    if (time.isEmpty()) {
      return subject.undecided("voltage of site.mains", open + " No table gives a time for it.");
    }
    OpeningTimes times = new OpeningTimes(Site.Practice.IEC, tables);
    Found<OpeningTimes.Least> found = times.within(device.get(), time.get().value());
    if (found instanceof Found.Unknown<OpeningTimes.Least> unknown) {
      return Unknowns.outcome(subject, open, unknown);
    }
    OpeningTimes.Least least = found.known().orElseThrow();
    List<Cited<?>> cited = new ArrayList<>(loop.cited());
    cited.addAll(least.cited());
    cited.add(time.get());
    if (weaker(loop, least.amps())) {
      double gives = loop.source().map(s -> s.value().low()).orElse(0.0);
      String does = times.at(device.get(), gives).words();
      return tooWeak(subject, loop, device.get(), least.amps(), least.words(), does, cited);
    }
    Cited<Double> low = tables.figure("sizing.lowest-voltage");
    double loose = loop.toEarth() / least.amps();
    double strict = low.value() * loose;
    String sum =
        "%s ÷ %s, %s"
            .formatted(Printed.volts(loop.toEarth()), Printed.amps(least.amps()), least.words());
    // inside the stricter limit is inside the published one: only between the two memory decides
    boolean beyond = Comparison.exceeds(loop.ohms(), loose);
    if (!beyond && Comparison.exceeds(loop.ohms(), strict)) {
      cited.add(low);
    }
    return compare(
        subject,
        loop,
        beyond ? loose : strict,
        device.get(),
        beyond ? sum : Printed.of(low.value(), Dimension.COUNT) + " × " + sum,
        times.at(device.get(), (beyond ? 1 : low.value()) * loop.toEarth() / loop.ohms()).words(),
        cited);
  }

  private static boolean weaker(EarthLoop loop, double amps) {
    return loop.source().filter(s -> Comparison.fallsShort(s.value().low(), amps)).isPresent();
  }

  private static Outcome tooWeak(
      Subject subject,
      EarthLoop loop,
      Part device,
      double opens,
      String how,
      String does,
      List<Cited<?>> cited) {
    Written<Quantity> source = loop.source().orElseThrow();
    Printed.Pair pair = Printed.pair(source.value().low(), opens, Dimension.CURRENT);
    return subject
        .violated(
            "an earth fault at %s is not cleared in time".formatted(subject.at().get(0)),
            "The mains can drive %s; %s opens in time from %s on (%s): short by %s."
                .formatted(pair.value(), device.name(), pair.limit(), how, pair.apart()),
            "an earth fault here")
        .alsoAt(device.head().mark(), "opens in time from " + pair.limit())
        .alsoAt(source.mark(), "can drive " + pair.value())
        .measured(new Measure(source.value().low(), "A"), new Measure(opens, "A"))
        .detail(does.isEmpty() ? "" : does + ".")
        .todo(
            device instanceof Part.Protective found && found.isRcd()
                ? "Take a more sensitive residual-current device."
                : "Put a residual-current device of 30 mA before it: it opens whatever the source"
                    + " can drive.",
            Basis.of(cited));
  }

  private static Outcome compare(
      Subject subject,
      EarthLoop loop,
      double limit,
      Part device,
      String how,
      String does,
      List<Cited<?>> cited) {
    Printed.Pair pair = Printed.pair(loop.ohms(), limit, Dimension.RESISTANCE);
    Measure value = new Measure(loop.ohms(), "Ω");
    Measure held = new Measure(limit, "Ω");
    Basis basis = Basis.of(cited);
    String load = subject.at().get(0);
    if (!Comparison.exceeds(loop.ohms(), limit)) {
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
        .detail("Loop: %s.%s".formatted(loop.words(), does.isEmpty() ? "" : " " + does + "."))
        .todo(
            device instanceof Part.Protective found && found.isRcd()
                ? "Lower the resistance of the earthing, or take a more sensitive residual-current"
                    + " device."
                : "Put a residual-current device before it, or take thicker wire or a device that"
                    + " opens at less.",
            basis);
  }
}
