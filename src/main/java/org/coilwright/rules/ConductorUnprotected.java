// Over 250 lines: what stands before, behind and at the end of a wire is one judgement.
package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.sizing.Derated;
import org.coilwright.sizing.Found;
import org.coilwright.sizing.Overcurrent;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A wire may carry less than the device before it lets through for ever. */
final class ConductorUnprotected implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("conductor.unprotected", Weight.STOP, "wire not protected from overload")
          .what(
              "Holds the rating of the device before each mains wire against what the wire may"
                  + " carry as it is laid: method, air temperature, circuits together. Its"
                  + " conventional tripping current may be 1.45 times that. A wire before the first"
                  + " device is held against all the devices it feeds, and may lead 3 m from the"
                  + " mains at most. A lead whose own overload device stands at its far end is"
                  + " judged by that one, if the device before it ends a short-circuit in time."
                  + " With gauges the small-conductor limits and the next standard rating count,"
                  + " and control conductors go without the factors.")
          .why("On an overload the wire burns its insulation and the device stays closed.")
          .remedy("Take a smaller device or a thicker wire, or lay it cooler or apart.")
          .blind(
              "Insulation that is not written, which counts as PVC 70 °C, with gauges 75 °C; clamps"
                  + " whose temperature is not written; bundles inside a panel; how"
                  + " wires before the first device are run, and what burns beside them.")
          .sources("iec-60364-4-43", "iec-60364-5-52-tables", "nec", "vde-0298-4")
          .consequenceOf("protection.missing");

  private final PowerSides sides;
  private final Tables tables;

  ConductorUnprotected(PowerSides sides) {
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
    PerCause outcomes = new PerCause();
    // of a run that is too thin on both sides of its device, what lies behind it is shown
    for (Stretch stretch : Stretch.guardedFirst(seen.stretches())) {
      // one that carries nothing at all is told where its load is
      boolean told = !stretch.loads().isEmpty() && stretch.carriesNothing(seen, tables);
      if (!stretch.neutral() && !told) {
        judge(stretch, seen, outcomes);
      }
    }
    return outcomes.outcomes();
  }

  /**
   * As a whole, or lead by lead where it is too thin and some leads end in devices of their own.
   */
  private void judge(Stretch stretch, PowerSides.Seen seen, PerCause outcomes) {
    Outcome whole = stretch.inItsAir(s -> judge(s, seen), tables);
    Map<Part, List<Conductor>> taps = new LinkedHashMap<>();
    if (whole instanceof Outcome.Violated && stretch.guard().isPresent()) {
      for (Conductor wire : stretch.wires()) {
        Tap.endOf(stretch, wire)
            .ifPresent(d -> taps.computeIfAbsent(d, any -> new ArrayList<>()).add(wire));
      }
    }
    List<Conductor> left = new ArrayList<>(stretch.wires());
    taps.forEach(
        (end, wires) -> {
          Stretch lead = stretch.only(wires);
          Derated may = lead.may(seen.index(), tables).known().orElseThrow();
          LargestDevice largest = LargestDevice.of(lead, List.of(end), may, tables);
          if (!Comparison.exceeds(Overcurrent.rating(end).orElseThrow(), largest.amps())) {
            Subject subject = new Subject(FACTS, lead.first().mark(), tapAt(lead, end));
            new Tap(lead, end)
                .judge(subject, largest, seen, tables)
                .ifPresent(
                    outcome -> {
                      left.removeAll(wires);
                      outcomes.add("", outcome);
                    });
          }
        });
    if (left.size() == stretch.wires().size()) {
      outcomes.add(stretch.cause(stretch.limits()), whole);
    } else if (!left.isEmpty()) {
      outcomes.add(
          stretch.cause(stretch.limits()),
          stretch.only(left).inItsAir(s -> judge(s, seen), tables));
    }
  }

  private static List<String> tapAt(Stretch lead, Part end) {
    return List.of(
        lead.first().wire().from().value().toString(),
        end.name(),
        lead.guard().map(Part::name).orElse(""));
  }

  private Outcome judge(Stretch stretch, PowerSides.Seen seen) {
    StretchIndex all = seen.index();
    Subject subject = stretch.subject(FACTS);
    Optional<List<Part>> devices = stretch.limiting();
    if (devices.isEmpty()) {
      return subject
          .violated(
              "nothing limits the current in %s".formatted(stretch.name()),
              "A mains line feeds %s, and no fuse or circuit-breaker lies before or behind it%s."
                  .formatted(stretch.words(), WayBack.bare(stretch)),
              "no device before it")
          .alsoAt(stretch.first().mark(), "fed without a device")
          .todo(
              "Put a fuse or circuit-breaker before it.",
              Basis.of(FACTS, tables, Standing.PUBLISHED));
    }
    if (stretch.guard().isEmpty() && !hasBareWires(stretch.name(), seen)) {
      Optional<Outcome> far = tooFar(stretch, subject);
      if (far.isPresent()) {
        return far.get();
      }
    }
    Found<Derated> found = stretch.may(all, tables);
    if (found instanceof Found.Unknown<Derated> unknown) {
      return subject.undecided(
          unknown.missing(),
          "What %s may carry is open. %s".formatted(stretch.name(), unknown.why()));
    }
    Derated may = found.known().orElseThrow();
    if (may.amps() == 0) {
      return WireLoad.nothing(subject, stretch, may, "nothing");
    }
    OptionalDouble rating = Stretch.rating(devices.get());
    if (rating.isEmpty()) {
      String unrated =
          devices.get().stream()
              .filter(d -> Overcurrent.rating(d).isEmpty())
              .map(Part::name)
              .findFirst()
              .orElseThrow();
      return subject.undecided(
          "rating of " + unrated,
          "Whether %s carry too much is open: the rating of %s is not written."
              .formatted(stretch.words(), unrated));
    }
    return judge(stretch, all, subject, devices.get(), rating.getAsDouble(), may);
  }

  /** True if other wires of the same run lie behind no device at all: that is told of them. */
  private static boolean hasBareWires(String run, PowerSides.Seen seen) {
    return seen.study().derived(BareRuns.class, s -> bareRuns(seen)).names().contains(run);
  }

  /** Runs, or wires without one, that lie behind no device. */
  private record BareRuns(Set<String> names) {}

  private static BareRuns bareRuns(PowerSides.Seen seen) {
    return new BareRuns(
        seen.stretches().stream()
            .filter(s -> !s.neutral() && s.limiting().isEmpty())
            .map(Stretch::name)
            .collect(Collectors.toUnmodifiableSet()));
  }

  /** Before the first device, longer than a short-circuit may go unguarded. */
  private Optional<Outcome> tooFar(Stretch stretch, Subject subject) {
    Cited<Double> most = tables.figure("sizing.tap-length");
    double longest = 0;
    for (Conductor wire : stretch.wires()) {
      for (Node end : List.of(wire.from(), wire.to())) {
        Optional<Path> way = stretch.guards().bareWay(end);
        if (way.isPresent()) {
          Found<Double> metres = Tap.metres(way.get().branches());
          if (metres instanceof Found.Unknown<Double> unknown) {
            return Optional.of(
                Unknowns.outcome(
                    subject,
                    "How far %s leads without a device before it is open."
                        .formatted(stretch.name()),
                    unknown));
          }
          longest = Math.max(longest, metres.known().orElse(0.0));
        }
      }
    }
    if (!Comparison.exceeds(longest, most.value())) {
      return Optional.empty();
    }
    Printed.Pair pair = Printed.pair(longest, most.value(), Dimension.LENGTH);
    return Optional.of(
        subject
            .violated(
                "no device stands before %s".formatted(stretch.name()),
                "It ends %s from the mains without a fuse or circuit-breaker%s; %s are allowed: too far by %s."
                    .formatted(pair.value(), WayBack.bare(stretch), pair.limit(), pair.apart()),
                "no device before it")
            .alsoAt(stretch.first().mark(), "one of these wires")
            .measured(new Measure(longest, "m"), new Measure(most.value(), "m"))
            .todo(
                "Put the first fuse or circuit-breaker within %s of the mains."
                    .formatted(pair.limit()),
                Basis.of(most)));
  }

  private Outcome judge(
      Stretch stretch,
      StretchIndex all,
      Subject subject,
      List<Part> devices,
      double rating,
      Derated may) {
    String names = String.join(" and ", devices.stream().map(Part::name).toList());
    LargestDevice largest = LargestDevice.of(stretch, devices, may, tables);
    Printed.Pair pair = Printed.pair(rating, largest.amps(), Dimension.CURRENT);
    Measure value = new Measure(rating, "A");
    Measure held = new Measure(largest.amps(), "A");
    Basis basis = Basis.of(largest.cited());
    if (!Comparison.exceeds(rating, largest.amps())) {
      return subject.satisfied(
          "%s of %s protects %s: %s (%s)."
              .formatted(
                  names, pair.value(), stretch.words(), largest.how(), stretch.laidWords(tables)),
          value,
          held,
          basis);
    }
    Subject.Finding finding =
        subject
            .violated(
                "%s %s not protect %s"
                        .formatted(names, devices.size() == 1 ? "does" : "do", stretch.name())
                    + (stretch.guard().isEmpty() ? " on its mains side" : ""),
                "%s %s %s; %s may stand behind %s at most: too large by %s."
                    .formatted(
                        names,
                        devices.size() == 1 ? "is" : "together are",
                        pair.value(),
                        stretch.words(),
                        pair.limit(),
                        pair.apart()),
                "may carry " + Printed.of(largest.carries(), Dimension.CURRENT))
            .measured(value, held);
    Stretch.ratingMark(devices).ifPresent(m -> finding.alsoAt(m, "lets through " + pair.value()));
    finding.alsoAt(stretch.first().mark(), "one of these wires");
    finding.detail("May carry: %s (%s).".formatted(largest.how(), stretch.laidWords(tables)));
    Optional<ConductorSize> thicker =
        stretch.thicker(
            tables,
            wire ->
                wire.may(all, tables)
                    .known()
                    .filter(m -> LargestDevice.isGuarded(wire, m, tables))
                    .isPresent());
    return largest.cure(finding, stretch, devices, thicker, tables);
  }
}
