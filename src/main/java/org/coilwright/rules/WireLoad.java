package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.sizing.Ampacity;
import org.coilwright.sizing.Derated;
import org.coilwright.sizing.Found;
import org.coilwright.sizing.LoadCurrent;
import org.coilwright.sizing.PowerSide.Demand;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** A load's current held against what a wire may carry, for the rules of lines and of neutrals. */
final class WireLoad {
  private WireLoad() {}

  static Outcome withoutPower(RuleFacts facts, Stretch stretch) {
    Part load =
        stretch.loads().stream()
            .filter(l -> stretch.side().current(l).isEmpty())
            .findFirst()
            .orElse(stretch.loads().get(0));
    return stretch
        .subject(facts)
        .undecided(
            LoadCurrent.missing(load),
            "What %s carries is open: the power of %s is not known."
                .formatted(stretch.name(), load.name()));
  }

  static Outcome judge(
      RuleFacts facts, Stretch stretch, StretchIndex all, Demand demand, Tables tables) {
    Subject subject = stretch.subject(facts);
    Found<Derated> found = stretch.may(all, tables);
    if (found instanceof Found.Unknown<Derated> u) {
      return subject.undecided(
          u.missing(), "What %s may carry is open. %s".formatted(stretch.name(), u.why()));
    }
    Derated may = found.known().orElseThrow();
    if (may.amps() == 0) {
      return nothing(subject, stretch, may, "none of the " + carriedWords(demand));
    }
    Cited<Double> continuous = tables.figure("sizing.continuous-load");
    Optional<Cited<Double>> before =
        stretch.size().flatMap(s -> new Ampacity(tables).beforeFactors(s, stretch.core()));
    boolean gauge = stretch.size().filter(s -> s.awg().isPresent()).isPresent();
    double often = demand.nominal() * continuous.value();
    // 125 % without the factors and 100 % with them: the one that asks for more of the wire counts
    boolean byContinuous =
        before.isPresent() && often / before.get().value() >= demand.nominal() / may.amps();
    double carries = !gauge ? demand.worst() : byContinuous ? often : demand.nominal();
    double allowed = byContinuous ? before.orElseThrow().value() : may.amps();
    String words =
        byContinuous
            ? "%s × %s as a continuous load"
                .formatted(
                    Printed.of(demand.nominal(), Dimension.CURRENT),
                    Printed.of(continuous.value(), Dimension.COUNT))
            : gauge ? "at rated power and nominal voltage" : demand.words();
    String how =
        byContinuous
            ? "%s before the factors, held to its terminals"
                .formatted(Printed.of(allowed, Dimension.CURRENT))
            : may.words();
    List<Cited<?>> cited = new ArrayList<>(may.basis());
    if (gauge) {
      cited.add(continuous);
    } else {
      demand.loads().forEach(l -> cited.addAll(l.basis()));
    }
    Printed.Pair pair = Printed.pair(carries, allowed, Dimension.CURRENT);
    Measure value = new Measure(carries, "A");
    Measure held = new Measure(allowed, "A");
    if (!Comparison.exceeds(carries, allowed)) {
      return subject.satisfied(
          "%s carries %s (%s) for %s and may carry %s (%s)."
              .formatted(
                  stretch.name(),
                  pair.value(),
                  words,
                  demand.names(),
                  how,
                  stretch.laidWords(tables)),
          value,
          held,
          Basis.of(cited));
    }
    Optional<ConductorSize> thicker =
        stretch.thicker(tables, wire -> isEnough(wire, all, demand, tables));
    Subject.Finding finding =
        subject
            .violated(
                "%s%s %s too thin for %s"
                    .formatted(
                        stretch.neutral() ? "the neutral in " : "",
                        stretch.name(),
                        stretch.isMany() ? "are" : "is",
                        demand.names()),
                "%s: %s (%s), and may carry %s: too much by %s."
                    .formatted(
                        stretch.neutral()
                            ? "Its neutral carries"
                            : stretch.isMany() ? "They carry" : "It carries",
                        pair.value(),
                        words,
                        pair.limit(),
                        pair.apart())
                    .replace("carries: ", "carries ")
                    .replace("carry: ", "carry "),
                "may carry " + pair.limit())
            .measured(value, held);
    stretch.loads().forEach(l -> finding.alsoAt(l.head().mark(), "draws through it"));
    thicker.ifPresent(size -> finding.changes(stretch.sizeMarks(), Printed.of(size)));
    return finding
        .detail("May carry: %s (%s).".formatted(how, stretch.laidWords(tables)))
        .todo(
            "Take %s, or lay it cooler or apart.".formatted(stretch.thickerWords(thicker)),
            Basis.of(cited));
  }

  /** True if it carries the load, and what the device before it lets through. */
  private static boolean isEnough(Stretch stretch, StretchIndex all, Demand demand, Tables tables) {
    Optional<Derated> may = stretch.may(all, tables).known();
    if (may.isEmpty()) {
      return false;
    }
    double amps = may.get().amps();
    boolean gauge = stretch.size().filter(s -> s.awg().isPresent()).isPresent();
    double often = demand.nominal() * tables.figure("sizing.continuous-load").value();
    boolean carries =
        gauge
            ? !Comparison.exceeds(demand.nominal(), amps)
                && new Ampacity(tables)
                    .beforeFactors(stretch.size().orElseThrow(), stretch.core())
                    .filter(before -> !Comparison.exceeds(often, before.value()))
                    .isPresent()
            : !Comparison.exceeds(demand.worst(), amps);
    return carries && LargestDevice.isGuarded(stretch, may.get(), tables);
  }

  private static String carriedWords(Demand demand) {
    return "%s that %s".formatted(Printed.of(demand.nominal(), Dimension.CURRENT), demand.draws());
  }

  /**
   * At or above the temperature of its insulation a wire carries nothing.
   *
   * @param lacks what it should carry, in words
   */
  static Outcome nothing(Subject subject, Stretch stretch, Derated may, String lacks) {
    Subject.Finding finding =
        subject.violated(
            "%s lies in air as warm as its insulation stands".formatted(stretch.name()),
            "It may carry %s (%s).".formatted(lacks, may.words()),
            "may carry nothing here");
    stretch.airMark().ifPresent(air -> finding.alsoAt(air, "so warm is the air"));
    return finding
        .alsoAt(stretch.first().mark(), "one of these wires")
        .todo(
            "Lay it cooler, or take %s with insulation for a higher temperature %s."
                .formatted(stretch.isMany() ? "wires" : "a wire", stretch.place()),
            Basis.of(may.basis()));
  }
}
