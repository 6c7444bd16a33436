package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.sizing.LoadCurrent;
import org.coilwright.sizing.PowerSide;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** A large resistance element hangs undivided on one circuit. */
final class LoadUndivided implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("load.undivided", Weight.FIX, "large element on one circuit")
          .what(
              "With practice nec, holds the nominal current of each heater against 48 A, above"
                  + " which its elements have to be divided into circuits of at most 48 A, each"
                  + " behind a device of at most 60 A.")
          .why("A small fault in a large element is fed for long before so large a device notices.")
          .remedy("Divide the element into circuits, each with a device of its own.")
          .blind(
              "Vessels stamped by the pressure code, and instantaneous heaters listed for it, which"
                  + " may have up to 120 A behind 150 A.")
          .sources("nec");

  private final PowerSides sides;
  private final Tables tables;

  LoadUndivided(PowerSides sides) {
    this.sides = sides;
    this.tables = sides.tables();
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    if (study.circuit().netlist().site().practice().value() != Site.Practice.NEC) {
      return outcomes;
    }
    PowerSide side = sides.of(study).side();
    for (Part load : side.mainsLoads()) {
      if (load instanceof Part.Heater heater) {
        outcomes.add(judge(heater, side.current(load), side.circuit().netlist().site()));
      }
    }
    return outcomes;
  }

  private Outcome judge(Part.Heater heater, Optional<LoadCurrent> current, Site site) {
    Subject subject = Subject.of(FACTS, heater.head().mark(), heater.name());
    if (current.isEmpty()) {
      return subject.undecided(
          "power of " + heater.name(),
          "Whether %s has to be divided is open: its power is not known.".formatted(heater.name()));
    }
    Cited<Double> most = tables.figure("sizing.undivided-element");
    Cited<Double> guard = tables.figure("sizing.undivided-device");
    double amps = current.get().nominal();
    Printed.Pair pair = Printed.pair(amps, most.value(), Dimension.CURRENT);
    Measure value = new Measure(amps, "A");
    Measure limit = new Measure(most.value(), "A");
    Basis basis = Basis.of(most, guard);
    if (!Comparison.exceeds(amps, most.value())) {
      return subject.satisfied(
          "%s takes %s; up to %s it need not be divided."
              .formatted(heater.name(), pair.value(), pair.limit()),
          value,
          limit,
          basis);
    }
    return subject
        .violated(
            "%s is too large for one circuit".formatted(heater.name()),
            "It takes %s, and an undivided resistance element may take %s: too much by %s."
                .formatted(pair.value(), pair.limit(), pair.apart()),
            "takes " + pair.value())
        .alsoAt(site.practice().mark(), "asks for at most " + pair.limit())
        .measured(value, limit)
        .todo(
            "Divide it into circuits of at most %s, each behind a device of at most %s."
                .formatted(pair.limit(), Printed.of(guard.value(), Dimension.CURRENT)),
            basis);
  }
}
