package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Subject;
import org.coilwright.sizing.Found;
import org.coilwright.sizing.Opening;
import org.coilwright.sizing.OpeningTimes;
import org.coilwright.sizing.WayOhms;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** Whether fuses and breakers open an earth fault on what the source of an island gives. */
final class IslandBreakers {
  private final IslandView island;
  private final Tables tables;
  private final List<Cited<?>> used = new ArrayList<>();

  IslandBreakers(IslandView island, Tables tables) {
    this.island = island;
    this.tables = tables;
  }

  /** What is to be said of a load before which no residual-current device counts. */
  Outcome judge(Part load, Subject subject, String open) {
    Site.Island written = island.written();
    if (written.faultCurrent().isEmpty()) {
      return subject.undecided(
          "site.island.fault-current",
          open
              + " No residual-current device lies in every line, and what its source gives into"
              + " a fault is not written.");
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
      return subject.undecided("voltage of site.mains", open + " No table gives a time for it.");
    }
    used.add(time.get());
    double longest =
        Math.min(
            time.get().value(),
            written.lasts().map(l -> l.value().low()).orElse(Double.POSITIVE_INFINITY));
    for (Path way : island.waysOf(load)) {
      Optional<Outcome> verdict =
          verdict(subject, open, times, way, new Limits(gives, longest, toEarth, time.get()));
      if (verdict.isPresent()) {
        return verdict.get();
      }
    }
    if (written.lasts().isEmpty()) {
      return subject.undecided(
          "site.island.lasts",
          open
              + " How long its source gives the current that opens the breaker is not"
              + " written.");
    }
    if (written.neutralBond().isEmpty()) {
      return subject.undecided(
          "site.island.neutral-bond", open + " Who joins neutral and earth then is not written.");
    }
    return subject.satisfied(
        "In island operation %s into an earth fault at %s open its device within %s."
            .formatted(Printed.amps(gives), load.name(), Printed.of(longest, Dimension.TIME)),
        Basis.of(used));
  }

  /** A the source gives at least, s it may take, V to earth. */
  private record Limits(double gives, double longest, double toEarth, Cited<Double> time) {}

  /** What is to be said against one way; empty if its device opens in time. */
  private Optional<Outcome> verdict(
      Subject subject, String open, OpeningTimes times, Path way, Limits limits) {
    boolean bonded = island.written().neutralBond().filter(b -> b.value().equals("none")).isEmpty();
    List<String> words = new ArrayList<>();
    Optional<Found.Unknown<OpeningTimes.Least>> unknown = Optional.empty();
    double current = limits.gives();
    if (bonded
        && island.overcurrent(way).stream()
            .anyMatch(d -> opens(times, d, limits.gives(), limits))) {
      Optional<Path> back =
          Earthing.ofLoads(island.seen().study()).stream()
              .filter(e -> e.load().name().equals(subject.at().get(0)) && e.byWire())
              .findFirst()
              .flatMap(Earthing::way);
      if (back.isEmpty()) {
        return Optional.of(
            subject.undecided(
                "protective conductor of " + subject.at().get(0),
                open + " No wire brings the fault's current back."));
      }
      List<Branch> loop = new ArrayList<>(way.branches());
      loop.addAll(back.get().branches());
      Found<WayOhms> ohms = WayOhms.of(loop, tables);
      if (ohms instanceof Found.Unknown<WayOhms> missing) {
        return Optional.of(Unknowns.outcome(subject, open, missing));
      }
      double wires = ohms.known().orElseThrow().ohms();
      Cited<Double> lowest = tables.figure("sizing.lowest-voltage");
      double most = lowest.value() * limits.toEarth() / wires;
      if (wires > 0 && !Comparison.exceeds(most, current)) {
        current = most;
        used.add(lowest);
      }
    }
    for (Part device : island.overcurrent(way)) {
      Opening does = times.at(device, current);
      used.addAll(does.cited());
      if (bonded && opens(times, device, current, limits)) {
        return Optional.empty();
      }
      words.add(does.words());
      boolean stays = does instanceof Opening.Never || does instanceof Opening.MayNot;
      if (!stays
          && times.within(device, limits.time().value())
              instanceof Found.Unknown<OpeningTimes.Least> no) {
        unknown = Optional.of(no);
      }
    }
    if (bonded && unknown.isPresent()) {
      return Optional.of(Unknowns.outcome(subject, open, unknown.get()));
    }
    return Optional.of(violated(subject, way, current, words, Basis.of(used)));
  }

  private static boolean opens(OpeningTimes times, Part device, double amps, Limits limits) {
    return times.at(device, amps) instanceof Opening.Within within
        && !Comparison.exceeds(within.seconds(), limits.longest());
  }

  private Outcome violated(
      Subject subject, Path way, double amps, List<String> words, Basis basis) {
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
