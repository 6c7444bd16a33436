package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Branch;
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
import org.coilwright.sizing.LoadCurrent;
import org.coilwright.sizing.Overcurrent;
import org.coilwright.sizing.PowerSide;
import org.coilwright.sizing.Series;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** The device before a single appliance is larger than its current allows. */
final class ProtectionExceedsLoad implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("protection.exceeds-load", Weight.FIX, "device too large for its appliance")
          .what(
              "With practice nec, holds the rating of the device before a single heater that takes"
                  + " more than 13.3 A against 150 % of its nominal current, or the next standard"
                  + " rating above that.")
          .why("A fault inside the appliance is fed for long before a large device notices.")
          .remedy("Take a smaller device, at least 125 % of the load.")
          .blind(
              "What is marked on the appliance, which comes first; several loads behind one device;"
                  + " appliances of 13.3 A or less; loads that are no heater.")
          .sources("nec");

  private final PowerSides sides;
  private final Tables tables;

  ProtectionExceedsLoad(PowerSides sides) {
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
    Map<Part, List<Part>> behind = new LinkedHashMap<>();
    for (Branch branch : side.branches()) {
      Overcurrent.device(side.circuit(), branch)
          .ifPresent(
              device -> {
                List<Part> loads = behind.computeIfAbsent(device, d -> new ArrayList<>());
                side.loadsThrough(branch).stream()
                    .filter(l -> !loads.contains(l))
                    .forEach(loads::add);
              });
    }
    behind.forEach(
        (device, loads) -> {
          if (loads.size() == 1 && loads.get(0) instanceof Part.Heater heater) {
            judge(device, heater, side.current(heater)).ifPresent(outcomes::add);
          }
        });
    return outcomes;
  }

  private Optional<Outcome> judge(Part device, Part.Heater heater, Optional<LoadCurrent> current) {
    Optional<Written<Quantity>> rating = Overcurrent.written(device);
    Subject subject =
        new Subject(
            FACTS,
            rating.map(Written::mark).orElse(device.head().mark()),
            List.of(device.name(), heater.name()));
    if (rating.isEmpty() || current.isEmpty()) {
      return Optional.of(
          subject.undecided(
              rating.isEmpty() ? "rating of " + device.name() : "power of " + heater.name(),
              "Whether %s is small enough for %s is open."
                  .formatted(device.name(), heater.name())));
    }
    Cited<Double> from = tables.figure("sizing.appliance-device-from");
    double amps = current.get().nominal();
    if (!Comparison.exceeds(amps, from.value())) {
      return Optional.empty();
    }
    Cited<Double> share = tables.figure("sizing.appliance-device");
    double most = amps * share.value();
    Cited<Double> may = Series.atLeast(most, tables).orElse(share.map(any -> most));
    double has = rating.get().value().nominal();
    String how =
        "%s × %s = %s"
            .formatted(
                Printed.amps(amps), Printed.of(share.value(), Dimension.COUNT), Printed.amps(most));
    Printed.Pair pair = Printed.pair(has, may.value(), Dimension.CURRENT);
    Measure value = new Measure(has, "A");
    Measure limit = new Measure(may.value(), "A");
    Basis basis = Basis.of(from, share, may);
    if (!Comparison.exceeds(has, may.value())) {
      return Optional.of(
          subject.satisfied(
              "%s is %s; before %s it may be %s (the standard rating from %s)."
                  .formatted(device.name(), pair.value(), heater.name(), pair.limit(), how),
              value,
              limit,
              basis));
    }
    return Optional.of(
        subject
            .violated(
                "%s is too large for %s".formatted(device.name(), heater.name()),
                "It is %s and may be %s (the standard rating from %s): too large by %s."
                    .formatted(pair.value(), pair.limit(), how, pair.apart()),
                "may be " + pair.limit())
            .alsoAt(heater.head().mark(), "takes " + Printed.amps(amps))
            .measured(value, limit)
            .change(Stretch.rating(device), pair.limit())
            .todo("Take a device of %s or less.".formatted(pair.limit()), basis));
  }
}
