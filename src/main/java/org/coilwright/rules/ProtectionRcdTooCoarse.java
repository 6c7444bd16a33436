package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
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
import org.coilwright.sizing.PowerSide;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** Additional protection is asked for, and the residual-current device opens at too much. */
final class ProtectionRcdTooCoarse implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of(
              "protection.rcd-too-coarse", Weight.FIX, "residual-current device not fine enough")
          .what(
              "Where additional protection is asked for (additional-protection of a load, and with"
                  + " practice iec every element that heats water), holds the rated residual"
                  + " current of the finest residual-current device in every line against 30 mA.")
          .why("Above 30 mA through a body the heart may stop before the device opens.")
          .remedy("Take a residual-current device of 30 mA.")
          .blind(
              "What the device really opens at, which its test tells; rooms that are not written;"
                  + " practice nec, whose ground-fault interrupters have figures of their own.")
          .sources("iec-60364-4-41", "iec-60364-7-701", "common-practice")
          .consequenceOf("protection.rcd-missing", "protection.missing");

  private final PowerSides sides;
  private final Tables tables;

  ProtectionRcdTooCoarse(PowerSides sides) {
    this.sides = sides;
    this.tables = sides.tables();
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    PowerSide side = sides.of(study).side();
    Site site = study.circuit().netlist().site();
    List<Outcome> outcomes = new ArrayList<>();
    for (Part load : side.mainsLoads()) {
      AdditionalProtection.of(load, site, tables)
          .flatMap(asked -> judge(side, load, asked, site))
          .ifPresent(outcomes::add);
    }
    return outcomes;
  }

  private Optional<Outcome> judge(
      PowerSide side, Part load, AdditionalProtection asked, Site site) {
    List<Part.Protective> devices = ResidualDevices.allInEveryLine(side, load);
    if (devices.isEmpty()) {
      return Optional.empty();
    }
    Part.Protective finest = devices.get(0);
    Optional<Written<Quantity>> trip = finest.trip();
    Subject subject =
        Subject.of(
            FACTS,
            trip.map(Written::mark).orElse(finest.head().mark()),
            finest.name(),
            load.name());
    if (site.practice().value() == Site.Practice.NEC) {
      return Optional.of(
          subject.undecided(
              "a figure of practice nec for " + load.name(),
              "How fine the device before %s must be under practice nec is not read here."
                  .formatted(load.name())));
    }
    Cited<Double> most = tables.figure("sizing.additional-trip");
    Basis basis = Basis.of(most).and(asked.basis());
    double opens = trip.map(t -> t.value().high()).orElse(Double.POSITIVE_INFINITY);
    if (trip.isPresent() && !Comparison.exceeds(opens, most.value())) {
      Printed.Pair pair = Printed.pair(opens, most.value(), Dimension.CURRENT);
      return Optional.of(
          subject.satisfied(
              "%s before %s opens at %s; %s are asked for."
                  .formatted(finest.name(), load.name(), pair.value(), pair.limit()),
              new Measure(opens, "A"),
              new Measure(most.value(), "A"),
              basis));
    }
    Optional<Part.Protective> unwritten =
        devices.stream().filter(d -> d.trip().isEmpty()).findFirst();
    if (unwritten.isPresent()) {
      return Optional.of(
          subject.undecided(
              "trip of " + unwritten.get().name(),
              "Whether %s is fine enough for %s is open: the current it opens at is not written."
                  .formatted(unwritten.get().name(), load.name())));
    }
    Printed.Pair pair = Printed.pair(opens, most.value(), Dimension.CURRENT);
    return Optional.of(
        subject
            .violated(
                "%s is not fine enough for %s".formatted(finest.name(), load.name()),
                "It opens at %s. %s That asks for %s or less."
                    .formatted(pair.value(), asked.words(), pair.limit()),
                "opens at " + pair.value())
            .alsoAt(asked.mark(), asked.label())
            .measured(new Measure(opens, "A"), new Measure(most.value(), "A"))
            .change(finest.trip(), pair.limit())
            .todo("Take a residual-current device of %s.".formatted(pair.limit()), basis));
  }
}
