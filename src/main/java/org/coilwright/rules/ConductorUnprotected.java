package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Comparison;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.sizing.Derated;
import org.coilwright.sizing.Found;
import org.coilwright.sizing.Overcurrent;
import org.coilwright.sizing.Series;
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
                  + " device is held against all the devices it feeds. With gauges the"
                  + " small-conductor limits and the next standard rating count.")
          .why("On an overload the wire burns its insulation and the device stays closed.")
          .remedy("Take a smaller device or a thicker wire, or lay it cooler or apart.")
          .blind(
              "Insulation that is not written, which counts as PVC 70 °C, with gauges 75 °C; clamps"
                  + " whose temperature is not written; bundles inside a panel; short-circuits"
                  + " before the first device.")
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
    List<Stretch> all = sides.of(study).stretches();
    PerCause outcomes = new PerCause();
    // of a run that is too thin on both sides of its device, what lies behind it is shown
    for (Stretch stretch : Stretch.guardedFirst(all)) {
      if (!stretch.neutral()) {
        outcomes.add(stretch.cause(stretch.limits()), judge(stretch, all));
      }
    }
    return outcomes.outcomes();
  }

  private Outcome judge(Stretch stretch, List<Stretch> all) {
    Subject subject = stretch.subject(FACTS);
    Optional<List<Part>> devices = stretch.limiting();
    if (devices.isEmpty()) {
      return subject
          .violated(
              "nothing limits the current in %s".formatted(stretch.name()),
              "A mains line feeds %s, and no fuse or circuit-breaker lies before or behind it."
                  .formatted(stretch.words()),
              "no device before it")
          .alsoAt(stretch.first().mark(), "fed without a device")
          .todo(
              "Put a fuse or circuit-breaker before it.",
              Basis.of(FACTS, tables, Standing.PUBLISHED));
    }
    Found<Derated> found = stretch.may(all, tables);
    if (found instanceof Found.Unknown<Derated> unknown) {
      return subject.undecided(
          unknown.missing(),
          "What %s may carry is open. %s".formatted(stretch.name(), unknown.why()));
    }
    OptionalDouble rating = Stretch.rating(devices.get());
    String names = String.join(", ", devices.get().stream().map(Part::name).toList());
    if (rating.isEmpty()) {
      return subject.undecided(
          "rating of " + names,
          "Whether %s protects %s is open: a rating is not written."
              .formatted(names, stretch.words()));
    }
    return judge(
        stretch, subject, devices.get(), rating.getAsDouble(), found.known().orElseThrow());
  }

  private Outcome judge(
      Stretch stretch, Subject subject, List<Part> devices, double rating, Derated may) {
    String names = String.join(" and ", devices.stream().map(Part::name).toList());
    List<Cited<?>> cited = new ArrayList<>(may.basis());
    double limit = may.amps();
    String how = may.words();
    boolean gauge = stretch.size().filter(s -> s.awg().isPresent()).isPresent();
    if (gauge && devices.size() == 1) {
      Optional<Cited<Double>> largest = Series.largestFor(stretch.size().get(), limit, tables);
      if (largest.isPresent()) {
        limit = largest.get().value();
        how += ", so a device of %s at most".formatted(Printed.of(limit, Dimension.CURRENT));
        cited.add(largest.get());
      }
    } else if (devices.size() == 1) {
      Optional<Cited<Double>> opens =
          Overcurrent.surelyOpensAt(devices.get(0), stretch.practice(), tables);
      Cited<Double> share = tables.figure("sizing.overload-share");
      if (opens.isPresent() && opens.get().value() > share.value()) {
        limit = limit * share.value() / opens.get().value();
        how +=
            "; × %s ÷ %s, as a fuse opens late, = %s"
                .formatted(
                    Printed.of(share.value(), Dimension.COUNT),
                    Printed.of(opens.get().value(), Dimension.COUNT),
                    Printed.of(limit, Dimension.CURRENT));
        cited.add(opens.get());
        cited.add(share);
      }
    }
    Printed.Pair pair = Printed.pair(rating, limit, Dimension.CURRENT);
    Measure value = new Measure(rating, "A");
    Measure held = new Measure(limit, "A");
    Basis basis = Basis.of(cited);
    if (!Comparison.exceeds(rating, limit)) {
      return subject.satisfied(
          "%s of %s protects %s: %s (%s)."
              .formatted(names, pair.value(), stretch.words(), how, stretch.laidWords(tables)),
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
                "may carry " + Printed.of(may.amps(), Dimension.CURRENT))
            .measured(value, held);
    Stretch.ratingMark(devices).ifPresent(m -> finding.alsoAt(m, "lets through " + pair.value()));
    finding.alsoAt(stretch.first().mark(), "one of these wires");
    return finding
        .detail("May carry: %s (%s).".formatted(how, stretch.laidWords(tables)))
        .todo(
            "Take a device of at most %s, or thicker wire %s."
                .formatted(
                    gauge
                        ? Printed.atMost(limit, Dimension.CURRENT)
                        : Series.breakerUpTo(limit, tables)
                            .map(r -> Printed.of(r.value(), Dimension.CURRENT))
                            .orElse(Printed.atMost(limit, Dimension.CURRENT)),
                    stretch.place()),
            basis);
  }
}
