package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Comparison;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.sizing.Derated;
import org.coilwright.sizing.Found;
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
            "power of " + load.name(),
            "What %s carries is open: the power of %s is not known."
                .formatted(stretch.name(), load.name()));
  }

  static Outcome judge(
      RuleFacts facts, Stretch stretch, List<Stretch> all, Demand demand, Tables tables) {
    Subject subject = stretch.subject(facts);
    Found<Derated> found = stretch.may(all, tables);
    if (found instanceof Found.Unknown<Derated> u) {
      return subject.undecided(
          u.missing(), "What %s may carry is open. %s".formatted(stretch.name(), u.why()));
    }
    Derated may = found.known().orElseThrow();
    boolean gauge = stretch.size().filter(s -> s.awg().isPresent()).isPresent();
    Cited<Double> continuous = tables.figure("sizing.continuous-load");
    double carries = gauge ? demand.nominal() * continuous.value() : demand.worst();
    String words =
        gauge
            ? "%s × %s as a continuous load"
                .formatted(
                    Printed.of(demand.nominal(), Dimension.CURRENT),
                    Printed.of(continuous.value(), Dimension.COUNT))
            : demand.words();
    List<Cited<?>> cited = new ArrayList<>(may.basis());
    if (gauge) {
      cited.add(continuous);
    } else {
      demand.loads().forEach(l -> l.power().ifPresent(cited::add));
    }
    Printed.Pair pair = Printed.pair(carries, may.amps(), Dimension.CURRENT);
    Measure value = new Measure(carries, "A");
    Measure held = new Measure(may.amps(), "A");
    if (!Comparison.exceeds(carries, may.amps())) {
      return subject.satisfied(
          "%s carries %s (%s) for %s and may carry %s (%s)."
              .formatted(
                  stretch.name(),
                  pair.value(),
                  words,
                  demand.names(),
                  may.words(),
                  stretch.laidWords(tables)),
          value,
          held,
          Basis.of(cited));
    }
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
    return finding
        .detail("May carry: %s (%s).".formatted(may.words(), stretch.laidWords(tables)))
        .todo(
            "Take thicker wire %s, or lay it cooler or apart.".formatted(stretch.place()),
            Basis.of(cited));
  }
}
