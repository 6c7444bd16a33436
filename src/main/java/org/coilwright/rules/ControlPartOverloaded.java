package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch.Passive;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
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
import org.coilwright.solve.State;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A resistor turns more to heat than it stands, or a lamp gets more than its voltage. */
final class ControlPartOverloaded implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("control.part-overloaded", Weight.FIX, "resistor or lamp that gets too much")
          .what(
              "In each position of the contacts, with the supply at its highest, what a resistor"
                  + " turns to heat against its rated power, and the voltage across a lamp against"
                  + " its own, which may be passed by a tenth. A resistor across a coil is told by"
                  + " suppression.underrated.")
          .why("It burns, chars what is beside it, and may leave the coil on another voltage.")
          .remedy("Take a part made for that, or another place for it.")
          .blind(
              "How warm the air around a resistor is and how close it sits; what it takes for"
                  + " moments; contacts that let mains through no load at all.")
          .sources("circuit-theory", "iec-60038")
          .consequenceOf(
              "wiring.short-circuit",
              "separation.mains-meets-elv",
              "coil.too-high",
              "wiring.sneak-path");

  private final double tolerance;
  private final Cited<Double> band;
  private final Basis theory;

  ControlPartOverloaded(Tables tables) {
    tolerance = tables.figure("coil.resistance-tolerance").value();
    band = tables.figure("sizing.rated-voltage-band");
    theory = new Basis(List.of(tables.source("circuit-theory").cite()), Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    CoilWiring wiring = CoilWiring.of(study, tolerance);
    List<Outcome> outcomes = new ArrayList<>();
    for (Passive part : study.circuit().branches(Passive.class)) {
      if (part.spec() instanceof Part.Lamp lamp) {
        lamp(study, part, lamp).ifPresent(outcomes::add);
      } else if (part.spec() instanceof Part.Resistor resistor && wiring.under(part).isEmpty()) {
        resistor(study, part, resistor).ifPresent(outcomes::add);
      }
    }
    return outcomes;
  }

  private Optional<Outcome> lamp(Study study, Passive part, Part.Lamp lamp) {
    double most = mostVolts(study, part);
    if (most == 0) {
      return Optional.empty();
    }
    Optional<Outcome> open = open(study, part, lamp.head().mark(), lamp.voltage(), "voltage");
    if (open.isPresent()) {
      return open;
    }
    Written<Quantity> rated = lamp.voltage().orElseThrow();
    double limit = rated.value().high() * (1 + band.value());
    return Optional.of(
        judge(
            study,
            part,
            new Asked(rated, most, limit, Dimension.VOLTAGE),
            "%s gets up to %s; it is made for %s, and a tenth more."
                .formatted(part.part(), Printed.volts(most), rated.text()),
            Basis.of(band)));
  }

  private Optional<Outcome> resistor(Study study, Passive part, Part.Resistor resistor) {
    double most = mostVolts(study, part);
    if (most == 0) {
      return Optional.empty();
    }
    Optional<Outcome> open =
        open(study, part, resistor.head().mark(), resistor.resistance(), "resistance")
            .or(() -> open(study, part, resistor.head().mark(), resistor.power(), "power"));
    if (open.isPresent()) {
      return open;
    }
    Written<Quantity> rated = resistor.power().orElseThrow();
    double watts = most * most / resistor.resistance().orElseThrow().value().nominal();
    return Optional.of(
        judge(
            study,
            part,
            new Asked(rated, watts, rated.value().low(), Dimension.POWER),
            "%s gets up to %s and turns %s to heat; it stands %s."
                .formatted(
                    part.part(),
                    Printed.volts(most),
                    Printed.of(watts, Dimension.POWER),
                    rated.text()),
            theory));
  }

  /** What a part is rated for, what it gets and what it may get, in the base unit. */
  private record Asked(Written<Quantity> rated, double gets, double limit, Dimension dimension) {}

  private static Outcome judge(Study study, Passive part, Asked asked, String text, Basis basis) {
    Subject subject = Subject.of(FACTS, asked.rated().mark(), part.part());
    Measure value = new Measure(asked.gets(), asked.dimension().baseUnit());
    Measure limit = new Measure(asked.limit(), asked.dimension().baseUnit());
    if (!Comparison.exceeds(asked.gets(), asked.limit())) {
      return subject.satisfied(text, value, limit, basis);
    }
    String wanted = Printed.atLeast(asked.gets(), asked.dimension());
    Subject.Finding finding =
        subject.violated(
            "%s gets too much".formatted(subject.at().get(0)),
            text,
            "gets " + Printed.of(asked.gets(), asked.dimension()));
    study.circuit().islandOf(part.from()).sources().stream()
        .map(source -> SourceVolts.mark(study, source))
        .distinct()
        .forEach(mark -> finding.alsoAt(mark, "feeds it"));
    return finding
        .measured(value, limit)
        .change(asked.rated().mark(), wanted)
        .todo(
            "Take one for %s or more, or bring it to the place that it was meant for."
                .formatted(wanted),
            basis);
  }

  private static Optional<Outcome> open(
      Study study, Passive part, Mark mark, Optional<Written<Quantity>> figure, String key) {
    boolean known = study.sourcesOfUnknownVoltage().isEmpty();
    return figure.isPresent() && known
        ? Optional.empty()
        : Optional.of(
            Subject.of(FACTS, mark, part.part())
                .undecided(
                    known
                        ? key + " of " + part.part()
                        : "voltage of " + study.sourcesOfUnknownVoltage().get(0),
                    "Whether %s stands what it gets is open.".formatted(part.part())));
  }

  private static double mostVolts(Study study, Passive part) {
    double most = 0;
    for (State state : study.statesToLookAtFor(part.part())) {
      if (!study.isShorted(state)) {
        most = Math.max(most, study.volts(part, state));
      }
    }
    return most;
  }
}
