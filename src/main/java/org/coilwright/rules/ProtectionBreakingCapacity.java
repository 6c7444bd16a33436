package org.coilwright.rules;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.ShortestWays;
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
import org.coilwright.sizing.OpeningTimes;
import org.coilwright.sizing.PowerSide;
import org.coilwright.sizing.WayOhms;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A fuse or breaker where a greater current can flow than it can break. */
final class ProtectionBreakingCapacity implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of(
              "protection.breaking-capacity",
              Weight.STOP,
              "short-circuit above what a device breaks")
          .what(
              "Holds the breaking capacity of each fuse and breaker on the mains against the"
                  + " greatest short-circuit current at it: that of the mains or, if greater, of"
                  + " the island, less what the wires before it take away, cold. Where a breaker's"
                  + " is not written, the least that its standard allows counts. On direct current"
                  + " only a breaking capacity for direct current counts, against what the supplies"
                  + " there can give.")
          .why(
              "A device that cannot break the current burns or bursts, and the short-circuit goes"
                  + " on through it.")
          .remedy("Take a device that breaks the current there.")
          .blind(
              "What the capacitors of a supply give at first; a device behind a supply that limits"
                  + " its current, if no breaking capacity is written; what several sources of the"
                  + " mains give together; whether the fault current written is that of a"
                  + " three-pole short-circuit; supply networks that are strengthened later.")
          .sources("iec-60364-4-43", "iec-60898-1-capacity", "nec-breaker-marking", "part-data")
          .consequenceOf("wiring.short-circuit");

  private final Tables tables;
  private final DirectBreaking direct;

  ProtectionBreakingCapacity(Tables tables) {
    this.tables = tables;
    this.direct = new DirectBreaking(tables);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    Circuit circuit = study.circuit();
    List<ShortestWays> lines =
        circuit.branches(Source.class).stream()
            .filter(source -> !source.isDirect())
            .map(source -> circuit.waysFrom(source.to(), PowerSide::isWay))
            .toList();
    Map<Source, List<ShortestWays>> outputs = new HashMap<>();
    List<Outcome> outcomes = new ArrayList<>();
    for (Part part : circuit.netlist().parts().values()) {
      if (part instanceof Part.Fuse || (part instanceof Part.Protective p && !p.isRcd())) {
        Optional<Path> way = wayTo(circuit, part, lines);
        way.ifPresent(w -> outcomes.add(judge(circuit, part, w)));
        if (way.isEmpty()) {
          direct.judge(circuit, part, outputs, FACTS).ifPresent(outcomes::add);
        }
      }
    }
    return outcomes;
  }

  /**
   * The shortest way from a source to the device, itself left out. The shortest way of all to one
   * of its pins is that way as soon as it does not pass the device, and the pin whose way is
   * shortest is never reached through the device.
   */
  static Optional<Path> wayTo(Circuit circuit, Part device, List<ShortestWays> ways) {
    return ways.stream()
        .flatMap(
            from ->
                circuit.outerNodesOf(device.name()).stream().flatMap(pin -> from.to(pin).stream()))
        .filter(way -> way.branches().stream().noneMatch(b -> b.part().equals(device.name())))
        .min((one, other) -> Integer.compare(one.branches().size(), other.branches().size()));
  }

  private static Optional<Written<Quantity>> written(Part device) {
    return device instanceof Part.Fuse fuse
        ? fuse.breakingCapacity()
        : ((Part.Protective) device).breakingCapacity();
  }

  /** What it breaks, A: as written, or what its standard asks at least. */
  private Optional<Cited<Double>> breaks(Circuit circuit, Part device) {
    Optional<Cited<Double>> sheet =
        written(device)
            .map(
                w ->
                    new Cited<>(
                        w.value().nominal(),
                        tables.source("part-data"),
                        "breaking capacity",
                        Standing.PUBLISHED));
    Site.Practice practice = circuit.netlist().site().practice().value();
    return sheet.isPresent() || !(device instanceof Part.Protective breaker)
        ? sheet
        : tables.lookup(
            "breaker-least-capacity",
            Map.of("standard", new OpeningTimes(practice, tables).standard(breaker)),
            "amps");
  }

  private Outcome judge(Circuit circuit, Part device, Path way) {
    Subject subject = Subject.of(FACTS, device.head().mark(), device.name());
    Site site = circuit.netlist().site();
    Optional<Written<Quantity>> mains = site.mains().flatMap(Site.MainsSupply::faultCurrent);
    if (mains.isEmpty()) {
      return subject.undecided(
          "site.mains.fault-current",
          "Whether %s can break a short-circuit is open: what the mains can give is not written."
              .formatted(device.name()));
    }
    Written<Quantity> source =
        site.island()
            .flatMap(Site.Island::faultCurrent)
            .filter(island -> island.value().high() > mains.get().value().high())
            .orElse(mains.get());
    double gives = source.value().high();
    Optional<Cited<Double>> breaks = breaks(circuit, device);
    String open =
        "Whether %s breaks the %s that can flow there is open"
            .formatted(device.name(), Printed.amps(gives));
    if (breaks.isEmpty()) {
      return subject.undecided(
          "breaking-capacity of " + device.name(),
          open + ": its breaking capacity is not written.");
    }
    double has = breaks.get().value();
    Found<Double> found =
        Comparison.exceeds(gives, has) ? atDevice(circuit, way, gives) : new Found.Known<>(gives);
    if (found instanceof Found.Unknown<Double> unknown) {
      return Unknowns.outcome(subject, open + ".", unknown);
    }
    double needs = found.known().orElseThrow();
    Printed.Pair pair = Printed.pair(needs, has, Dimension.CURRENT);
    Basis basis =
        new Basis(List.of(tables.source("iec-60364-4-43").cite()), Standing.PUBLISHED)
            .and(Basis.of(breaks.get()));
    if (!Comparison.exceeds(needs, has)) {
      return subject.satisfied(
          "%s breaks %s%s, and %s can flow there at most."
              .formatted(
                  device.name(),
                  pair.limit(),
                  written(device).isPresent() ? "" : ", the least of its standard",
                  pair.value()),
          new Measure(needs, "A"),
          new Measure(has, "A"),
          basis);
    }
    if (written(device).isEmpty()) {
      return subject.undecided(
          "breaking-capacity of " + device.name(),
          "%s: by its standard it breaks %s at least, and more is not written."
              .formatted(open, pair.limit()));
    }
    Optional<Part> ahead = ahead(circuit, way, needs);
    if (ahead.isPresent()) {
      return subject.unsettled(
          "back-up of %s by %s".formatted(device.name(), ahead.get().name()),
          "%s alone breaks %s and %s can flow there; together with %s ahead of it the two may."
              .formatted(device.name(), pair.limit(), pair.value(), ahead.get().name()),
          "Their maker's table of back-up protection settles it: look both up, or take a device that breaks %s."
              .formatted(pair.value()));
    }
    return subject
        .violated(
            "%s cannot break a short-circuit".formatted(device.name()),
            "At it up to %s can flow; it breaks %s: short by %s."
                .formatted(pair.value(), pair.limit(), pair.apart()),
            "in the way of %s".formatted(pair.value()))
        .alsoAt(written(device).orElseThrow().mark(), "breaks " + pair.limit())
        .alsoAt(source.mark(), "gives " + source.text())
        .measured(new Measure(needs, "A"), new Measure(has, "A"))
        .change(written(device), Printed.atLeast(needs, Dimension.CURRENT))
        .todo(
            "Take a device that breaks %s or more, or put one that its maker names as back-up ahead of it."
                .formatted(Printed.atLeast(needs, Dimension.CURRENT)),
            basis);
  }

  /** A device on the way there that breaks the current itself. */
  private static Optional<Part> ahead(Circuit circuit, Path way, double needs) {
    return way.branches().stream()
        .map(b -> circuit.netlist().parts().get(b.part()))
        .filter(Objects::nonNull)
        .filter(p -> p instanceof Part.Fuse || p instanceof Part.Protective)
        .filter(
            p ->
                written(p).filter(w -> !Comparison.exceeds(needs, w.value().nominal())).isPresent())
        .findFirst();
  }

  /**
   * The greatest current at the device. What the mains have of impedance counts as wholly
   * inductive, so that the wires take away the least they can.
   */
  private Found<Double> atDevice(Circuit circuit, Path way, double gives) {
    Found<WayOhms> ohms = WayOhms.of(way.branches(), tables);
    if (ohms instanceof Found.Unknown<WayOhms> unknown) {
      return new Found.Unknown<>(unknown.missing(), unknown.why());
    }
    List<Source> lines =
        circuit.branches(Source.class).stream().filter(s -> !s.isDirect()).toList();
    Optional<Double> volts =
        lines.stream().flatMap(s -> s.volts().stream()).map(Quantity::nominal).findFirst();
    double there = ohms.known().orElseThrow().cold(tables);
    // of one line the neutral counts as long as the line; of several the others bring it back
    double loop = lines.size() == 1 ? 2 * there : there;
    return new Found.Known<>(volts.map(v -> gives / Math.hypot(1, loop * gives / v)).orElse(gives));
  }
}
