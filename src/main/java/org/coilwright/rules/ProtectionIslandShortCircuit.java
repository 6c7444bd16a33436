package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.quantity.Words;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.sizing.Found;
import org.coilwright.sizing.LoadCurrent;
import org.coilwright.sizing.OpeningTimes;
import org.coilwright.sizing.Series;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** In island operation the source, not the breaker, ends a short-circuit. */
final class ProtectionIslandShortCircuit implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of(
              "protection.island-short-circuit",
              Weight.FIX,
              "short-circuit not opened by the breaker in an island")
          .what(
              "Holds the least `fault-current` of `site.island` against the current that opens each"
                  + " fuse and breaker before the loads it feeds within 0.1 s.")
          .why(
              "The breaker nearest to the short-circuit stays closed. The source shuts down with"
                  + " all that it feeds, or goes on feeding the short-circuit.")
          .remedy(
              "Ask the maker of the source how it ends a short-circuit, and in what time; or take a"
                  + " breaker that its current opens.")
          .blind(
              "What the source really does, which only its maker can state; wires that stand the"
                  + " current until it stops; the resistance of the line, which lowers the"
                  + " current.")
          .sources("island-largest-breaker", "island-fault-current", "iec-60898-1-times");

  private final PowerSides sides;
  private final Tables tables;

  ProtectionIslandShortCircuit(PowerSides sides) {
    this.sides = sides;
    this.tables = sides.tables();
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return IslandView.ask(study, sides, FACTS, this::judge);
  }

  /** A device that the source's current does not open at once. */
  private record Slow(Part device, OpeningTimes.Least least) {}

  private List<Outcome> judge(IslandView island) {
    Map<Part, Set<Part>> devices = new LinkedHashMap<>();
    for (Part load : island.loads()) {
      for (Path way : island.waysOf(load)) {
        island
            .overcurrent(way)
            .forEach(d -> devices.computeIfAbsent(d, k -> new LinkedHashSet<>()).add(load));
      }
    }
    List<Outcome> outcomes = new ArrayList<>();
    List<Slow> slow = new ArrayList<>();
    Optional<Written<Quantity>> gives = island.written().faultCurrent();
    Site.Practice practice = island.circuit().netlist().site().practice().value();
    OpeningTimes times = new OpeningTimes(practice, tables);
    double atOnce = tables.figure("sizing.magnetic-time").value();
    for (Part device : devices.keySet()) {
      Subject subject = Subject.of(FACTS, device.head().mark(), device.name());
      String open =
          "Whether %s opens a short-circuit in island operation is open.".formatted(device.name());
      Found<OpeningTimes.Least> found = times.within(device, atOnce);
      if (gives.isEmpty()) {
        outcomes.add(
            subject.undecided(
                "site.island.fault-current",
                open + " What its source gives into one is not written."));
      } else if (found instanceof Found.Unknown<OpeningTimes.Least> unknown) {
        outcomes.add(Unknowns.outcome(subject, open, unknown));
      } else {
        OpeningTimes.Least least = found.known().orElseThrow();
        double amps = gives.get().value().low();
        if (Comparison.fallsShort(amps, least.amps())) {
          slow.add(new Slow(device, least));
        } else {
          Printed.Pair pair = Printed.pair(amps, least.amps(), Dimension.CURRENT);
          outcomes.add(
              subject.satisfied(
                  "In island operation a short-circuit draws %s, and %s opens at once from %s on (%s)."
                      .formatted(pair.value(), device.name(), pair.limit(), least.words()),
                  new Measure(amps, "A"),
                  new Measure(least.amps(), "A"),
                  Basis.of(least.cited())));
        }
      }
    }
    if (!slow.isEmpty()) {
      outcomes.add(violated(island, slow, gives.orElseThrow(), devices));
    }
    return outcomes;
  }

  private Outcome violated(
      IslandView island, List<Slow> slow, Written<Quantity> gives, Map<Part, Set<Part>> devices) {
    List<String> at = slow.stream().map(s -> s.device().name()).toList();
    Slow first = slow.get(slow.size() - 1);
    double amps = gives.value().low();
    Printed.Pair pair = Printed.pair(amps, first.least().amps(), Dimension.CURRENT);
    List<Cited<?>> cited = new ArrayList<>();
    slow.forEach(s -> cited.addAll(s.least().cited()));
    Subject.Finding finding =
        new Subject(FACTS, first.device().head().mark(), at)
            .violated(
                "the source, not %s, ends a short-circuit in island operation"
                    .formatted(Words.all(at)),
                "It gives %s; %s opens at once from %s on (%s): short by %s."
                    .formatted(
                        pair.value(),
                        first.device().name(),
                        pair.limit(),
                        first.least().words(),
                        pair.apart()),
                "opens at once from " + pair.limit())
            .alsoAt(gives.mark(), "gives " + pair.value())
            .measured(new Measure(amps, "A"), new Measure(first.least().amps(), "A"));
    slow.forEach(s -> finding.alsoAt(s.device().head().mark(), "stays closed as well"));
    String lasts =
        island
            .written()
            .lasts()
            .map(l -> "it gives that for %s".formatted(l.text()))
            .orElse("how long it gives that is not written, site.island.lasts");
    Optional<String> smaller =
        smaller(island, amps, devices.getOrDefault(first.device(), Set.of()));
    if (smaller.isPresent() && first.device() instanceof Part.Protective breaker) {
      finding.change(breaker.curve(), "B").change(breaker.rating(), smaller.get());
    }
    return finding
        .detail("By the netlist %s; what it does then, its maker has to state.".formatted(lasts))
        .todo(
            smaller
                    .map(
                        "Take curve: B, rating: %s, which it opens at once; otherwise a"::formatted)
                    .orElse("A")
                + "sk the maker of the source how it ends a short-circuit and in what time, and"
                + " write the answer under accepted.",
            Basis.of(cited));
  }

  /** Rating of a breaker of curve B that it opens and that carries the loads, if there is one. */
  private Optional<String> smaller(IslandView island, double amps, Set<Part> loads) {
    double needs = 0;
    for (Part load : loads) {
      Optional<LoadCurrent> takes = island.seen().side().current(load);
      if (takes.isEmpty()) {
        return Optional.empty();
      }
      needs += takes.get().worst();
    }
    Optional<Cited<Double>> multiple =
        tables.lookup("magnetic-trip", Map.of("curve", "B"), "trips");
    Optional<Double> rating = Series.breakerAtLeast(needs, tables).map(Cited::value);
    return multiple.isPresent()
            && rating.isPresent()
            && !Comparison.exceeds(rating.get() * multiple.get().value(), amps)
        ? Optional.of(Printed.of(rating.get(), Dimension.CURRENT))
        : Optional.empty();
  }
}
