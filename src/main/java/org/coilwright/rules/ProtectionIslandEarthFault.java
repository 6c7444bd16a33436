package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Path;
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
import org.coilwright.sizing.Opening;
import org.coilwright.sizing.OpeningTimes;
import org.coilwright.sizing.WayOhms;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** In island operation nothing opens an earth fault at the load. */
final class ProtectionIslandEarthFault implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of(
              "protection.island-earth-fault", Weight.STOP, "earth fault not opened in an island")
          .what(
              "Looks at each load that the source of `site.island` feeds while the mains are off. A"
                  + " residual-current device in every line, behind the place where neutral and"
                  + " earth are joined, has to be there, and the site's own electrode times its"
                  + " trip current must stay below 50 V; or a breaker or fuse that the least"
                  + " `fault-current` opens in the time of Table 41.1, before the source shuts down"
                  + " and through the resistance of line and protective conductor.")
          .why(
              "An inverter gives little more than its rated current: the breaker stays closed, and"
                  + " the case of the load stays live.")
          .remedy("Put a residual-current device of 30 mA before the load.")
          .blind(
              "A source that switches itself off in time, which its maker has to state (IEC"
                  + " 60364-4-41, group 419); whether the residual-current device suits the"
                  + " source's waveform; changing over, and the mains' own operation.")
          .sources("island-earthing", "island-fault-current", "iec-60364-4-41", "iec-60898-1-times")
          .consequenceOf("poles.earth-missing");

  private final PowerSides sides;
  private final Tables tables;

  ProtectionIslandEarthFault(PowerSides sides) {
    this.sides = sides;
    this.tables = sides.tables();
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return IslandView.ask(
        study,
        sides,
        FACTS,
        island -> island.loads().stream().flatMap(l -> judge(island, l).stream()).toList());
  }

  private Optional<Outcome> judge(IslandView island, Part load) {
    Subject subject = Subject.of(FACTS, load.head().mark(), load.name());
    String open =
        "Whether an earth fault at %s is opened in island operation is open."
            .formatted(load.name());
    List<Part.Protective> residual = island.residual(load);
    Optional<Part.Protective> behind = residual.stream().filter(island::isBehindBond).findFirst();
    if (!residual.isEmpty() && island.written().neutralBond().isEmpty()) {
      return Optional.of(
          subject.undecided(
              "site.island.neutral-bond",
              open + " Who joins neutral and earth then is not written."));
    }
    if (behind.isPresent()) {
      return Optional.of(residual(island, subject, open, behind.get()));
    }
    // without a bond ahead of it the device does nothing: protection.island-no-bond tells that
    return residual.isEmpty() ? overcurrent(island, load, subject, open) : Optional.empty();
  }

  private Outcome residual(
      IslandView island, Subject subject, String open, Part.Protective device) {
    if (device.trip().isEmpty()) {
      return subject.undecided(
          "trip of " + device.name(),
          "%s The residual current of %s is not written.".formatted(open, device.name()));
    }
    if (island.written().electrode().isEmpty()) {
      return subject.undecided(
          "site.island.electrode",
          open
              + " The distributor's earth may be gone with the mains, and the resistance of the"
              + " site's own electrode is not written.");
    }
    Written<Quantity> electrode = island.written().electrode().get();
    Cited<Double> touch = tables.figure("sizing.touch-voltage");
    double trip = device.trip().get().value().high();
    double limit = touch.value() / trip;
    double ohms = electrode.value().high();
    Printed.Pair pair = Printed.pair(ohms, limit, Dimension.RESISTANCE);
    Measure value = new Measure(ohms, "Ω");
    Measure held = new Measure(limit, "Ω");
    String sum = "%s ÷ %s".formatted(Printed.volts(touch.value()), Printed.amps(trip));
    if (!Comparison.exceeds(ohms, limit)) {
      return subject.satisfied(
          "In island operation %s opens an earth fault at %s; the electrode has %s and may have %s (%s)."
              .formatted(device.name(), subject.at().get(0), pair.value(), pair.limit(), sum),
          value,
          held,
          Basis.of(touch));
    }
    return subject
        .violated(
            "an earth fault at %s is not opened in island operation".formatted(subject.at().get(0)),
            "The site's own electrode has %s, and %s holds it at 50 V up to %s (%s): too much by %s."
                .formatted(pair.value(), device.name(), pair.limit(), sum, pair.apart()),
            "an earth fault here")
        .alsoAt(electrode.mark(), "has " + pair.value())
        .alsoAt(device.head().mark(), "opens at " + Printed.amps(trip))
        .measured(value, held)
        .todo(
            "Lower the resistance of the electrode to %s, or take a more sensitive residual-current device."
                .formatted(Printed.atMost(limit, Dimension.RESISTANCE)),
            Basis.of(touch));
  }

  private Optional<Outcome> overcurrent(
      IslandView island, Part load, Subject subject, String open) {
    Site.Island written = island.written();
    if (written.faultCurrent().isEmpty()) {
      return Optional.of(
          subject.undecided(
              "site.island.fault-current",
              open
                  + " No residual-current device lies in every line, and what its source gives into"
                  + " a fault is not written."));
    }
    Site.Practice practice = island.circuit().netlist().site().practice().value();
    OpeningTimes times = new OpeningTimes(practice, tables);
    double gives = written.faultCurrent().get().value().low();
    double toEarth =
        island.seen().side().waysOf(load).stream()
            .flatMap(w -> w.source().volts().stream())
            .mapToDouble(Quantity::nominal)
            .max()
            .orElse(0);
    Optional<Cited<Double>> time =
        tables.lookup(
            "disconnection-times",
            Map.of("earthing", "TN"),
            toEarth / tables.figure("drive.round-name").value(),
            "ac");
    if (time.isEmpty()) {
      return Optional.of(
          subject.undecided("voltage of site.mains", open + " No table gives a time for it."));
    }
    double longest =
        Math.min(
            time.get().value(),
            written.lasts().map(l -> l.value().low()).orElse(Double.POSITIVE_INFINITY));
    for (Path way : island.waysOf(load)) {
      Optional<Outcome> verdict =
          verdict(
              island, subject, open, times, way, new Limits(gives, longest, toEarth, time.get()));
      if (verdict.isPresent()) {
        return verdict;
      }
    }
    if (written.lasts().isEmpty()) {
      return Optional.of(
          subject.undecided(
              "site.island.lasts",
              open
                  + " How long its source gives the current that opens the breaker is not"
                  + " written."));
    }
    if (written.neutralBond().isEmpty()) {
      return Optional.of(
          subject.undecided(
              "site.island.neutral-bond",
              open + " Who joins neutral and earth then is not written."));
    }
    return Optional.of(
        subject.satisfied(
            "In island operation %s into an earth fault at %s open its device within %s."
                .formatted(Printed.amps(gives), load.name(), Printed.of(longest, Dimension.TIME)),
            Basis.of(List.of(time.get()))));
  }

  /** A the source gives at least, s it may take, V to earth. */
  private record Limits(double gives, double longest, double toEarth, Cited<Double> time) {}

  /** What is to be said against one way; empty if its device opens in time. */
  private Optional<Outcome> verdict(
      IslandView island,
      Subject subject,
      String open,
      OpeningTimes times,
      Path way,
      Limits limits) {
    boolean bonded = island.written().neutralBond().filter(b -> b.value().equals("none")).isEmpty();
    List<Cited<?>> cited = new ArrayList<>(List.of(limits.time()));
    List<String> words = new ArrayList<>();
    Optional<Opening.Unknown> unknown = Optional.empty();
    double current = limits.gives();
    if (bonded
        && island.overcurrent(way).stream()
            .anyMatch(d -> opens(times, d, limits.gives(), limits))) {
      List<Branch> loop = new ArrayList<>(way.branches());
      Optional<Path> back =
          Earthing.ofLoads(island.seen().study()).stream()
              .filter(e -> e.load().name().equals(subject.at().get(0)) && e.byWire())
              .findFirst()
              .flatMap(Earthing::way);
      back.ifPresent(path -> loop.addAll(path.branches()));
      Found<WayOhms> ohms = WayOhms.of(loop, tables);
      if (ohms instanceof Found.Unknown<WayOhms> missing) {
        return Optional.of(Unknowns.outcome(subject, open, missing));
      }
      double wires = ohms.known().orElseThrow().ohms();
      double most = tables.figure("sizing.lowest-voltage").value() * limits.toEarth() / wires;
      current = wires > 0 ? Math.min(current, most) : current;
    }
    for (Part device : island.overcurrent(way)) {
      if (bonded && opens(times, device, current, limits)) {
        return Optional.empty();
      }
      Opening does = times.at(device, current);
      words.add(does.words());
      cited.addAll(does.cited());
      if (does instanceof Opening.Unknown no) {
        unknown = Optional.of(no);
      }
    }
    if (bonded && unknown.isPresent()) {
      return Optional.of(Unknowns.outcome(subject, open, unknown.get()));
    }
    return Optional.of(violated(island, subject, way, current, words, Basis.of(cited)));
  }

  private static boolean opens(OpeningTimes times, Part device, double amps, Limits limits) {
    return times.at(device, amps) instanceof Opening.Within within
        && !Comparison.exceeds(within.seconds(), limits.longest());
  }

  private static Outcome violated(
      IslandView island, Subject subject, Path way, double amps, List<String> words, Basis basis) {
    String load = subject.at().get(0);
    boolean bonded = island.written().neutralBond().filter(b -> b.value().equals("none")).isEmpty();
    Subject.Finding finding =
        subject.violated(
            "an earth fault at %s is not opened in island operation".formatted(load),
            bonded
                ? "Its source gives %s into it: %s. No residual-current device lies in every line of %s."
                    .formatted(
                        Printed.amps(amps),
                        words.isEmpty() ? "nothing is there that opens" : String.join("; ", words),
                        load)
                : "Neutral and earth are then joined nowhere, so no current flows that could open a breaker, and no residual-current device lies in every line of %s."
                    .formatted(load),
            "an earth fault here");
    island.overcurrent(way).forEach(d -> finding.alsoAt(d.head().mark(), "stays closed"));
    island.written().faultCurrent().ifPresent(f -> finding.alsoAt(f.mark(), "gives " + f.text()));
    Optional<Part.Protective> past =
        island.loads().stream()
            .filter(l -> l.name().equals(load))
            .findFirst()
            .flatMap(l -> ResidualDevices.inEveryLine(island.seen().side(), l));
    return finding.todo(
        past.map(
                    p ->
                        "Bring the source in ahead of %s, which it now feeds past"
                            .formatted(p.name()))
                .orElse("Put a residual-current device of 30 mA before %s".formatted(load))
            + ", and have neutral and earth joined ahead of it while the mains are off.",
        basis);
  }
}
