package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
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
import org.coilwright.sizing.PowerSide.Way;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A motor that nothing turns off when it is overloaded. */
final class LoadNoOverload implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("load.no-overload", Weight.FIX, "motor without overload protection")
          .what(
              "Asks of each motor for a device against its own overload: a thermal protector inside"
                  + " it, or in each of its lines a breaker with an overload release, set to its"
                  + " plate current (with practice nec up to 115 % of it) and not below what it"
                  + " draws. A motor of up to 0.37 kW needs none, except with practice nec.")
          .why(
              "A motor that is stalled or misses a line draws several times its current without"
                  + " tripping the breaker of its wires, and burns.")
          .remedy("Take a motor-protective breaker, set to the current on the plate.")
          .blind(
              "An overload relay beside a contactor, which no part of the format is: its contact"
                  + " opens the coil; thermistors and their relay; the class of the release"
                  + " against a heavy start; a larger setting for a service factor.")
          .sources("bs-7671", "nec", "iec-60947-2", "common-practice", "part-data");

  private final PowerSides sides;
  private final Tables tables;

  LoadNoOverload(PowerSides sides) {
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
    List<Outcome> outcomes = new ArrayList<>();
    for (Part part : side.loads()) {
      if (part instanceof Part.OtherLoad motor && motor.head().is().equals("motor")) {
        outcomes.add(judge(side, motor));
      }
    }
    return outcomes;
  }

  private Outcome judge(PowerSide side, Part.OtherLoad motor) {
    Subject subject = Subject.of(FACTS, motor.head().mark(), motor.name());
    boolean nec = side.circuit().netlist().site().practice().value() == Site.Practice.NEC;
    Optional<Written<Boolean>> inside = motor.thermalProtector();
    if (inside.filter(Written::value).isPresent()) {
      return subject.satisfied(
          "A thermal protector inside %s opens its circuit.".formatted(motor.name()),
          new Basis(List.of(tables.source("part-data").cite()), Standing.PUBLISHED));
    }
    List<Part.Protective> devices = devices(side, motor);
    if (!devices.isEmpty()) {
      return set(subject, motor, devices, nec);
    }
    Cited<Double> small = tables.figure("sizing.motor-without-overload");
    Optional<Quantity> power =
        motor.power().map(Written::value).filter(p -> p.dimension() == Dimension.POWER);
    if (!nec && power.filter(p -> !Comparison.exceeds(p.high(), small.value())).isPresent()) {
      return subject.satisfied(
          "%s has %s at its shaft; up to %s no overload device is asked for."
              .formatted(
                  motor.name(),
                  Printed.of(power.get().nominal(), Dimension.POWER),
                  Printed.of(small.value(), Dimension.POWER)),
          Basis.of(small));
    }
    if (inside.isEmpty()) {
      return subject.undecided(
          "thermal-protector of " + motor.name(),
          "No line of %s has a breaker with an overload release, and whether a thermal protector is inside it is not written."
              .formatted(motor.name()));
    }
    Subject.Finding finding =
        subject
            .violated(
                "nothing opens when %s is overloaded".formatted(motor.name()),
                "It has no thermal protector, and not each of its lines has a breaker with an"
                    + " overload release.",
                "not protected")
            .alsoAt(inside.get().mark(), "no protector inside");
    breakers(side, motor)
        .forEach(b -> finding.alsoAt(b.head().mark(), "protects its wires, not the motor"));
    return finding.todo(
        "Take a motor-protective breaker for %s, set to the current on its plate (overload-setting)."
            .formatted(motor.name()),
        Basis.of(small));
  }

  /** Breakers with an overload release, if each line has one; else none. */
  private static List<Part.Protective> devices(PowerSide side, Part motor) {
    List<Part.Protective> all = new ArrayList<>();
    for (Way way : side.linesTo(motor)) {
      Optional<Part.Protective> one =
          on(side, way).filter(b -> b.overloadSetting().isPresent()).findFirst();
      if (one.isEmpty()) {
        return List.of();
      }
      all.add(one.get());
    }
    return all.stream().distinct().toList();
  }

  private static List<Part.Protective> breakers(PowerSide side, Part motor) {
    return side.linesTo(motor).stream().flatMap(way -> on(side, way)).distinct().toList();
  }

  private static Stream<Part.Protective> on(PowerSide side, Way way) {
    return way.path().branches().stream()
        .map(b -> side.circuit().netlist().parts().get(b.part()))
        .filter(Objects::nonNull)
        .filter(p -> p instanceof Part.Protective b && !b.isRcd())
        .map(Part.Protective.class::cast);
  }

  private Outcome set(
      Subject subject, Part.OtherLoad motor, List<Part.Protective> devices, boolean nec) {
    if (motor.current().isEmpty()) {
      return subject.undecided(
          "current of " + motor.name(),
          "Whether the overload release of %s is set for %s is open: the current on its plate is not written."
              .formatted(devices.get(0).name(), motor.name()));
    }
    Written<Quantity> plate = motor.current().get();
    Cited<Double> share = tables.figure("sizing.motor-overload-set" + (nec ? "-nec" : ""));
    Cited<Double> holds = tables.figure("sizing.motor-overload-holds");
    double most = plate.value().nominal() * share.value();
    for (Part.Protective device : devices) {
      Written<Quantity> setting = device.overloadSetting().orElseThrow();
      double amps = setting.value().high();
      boolean high = Comparison.exceeds(amps, most);
      boolean low =
          Comparison.fallsShort(setting.value().low() * holds.value(), plate.value().nominal());
      if (high || low) {
        Printed.Pair pair =
            Printed.pair(amps, high ? most : plate.value().nominal(), Dimension.CURRENT);
        return subject
            .violated(
                "the overload release of %s is set too %s for %s"
                    .formatted(device.name(), high ? "high" : "low", motor.name()),
                high
                    ? "It is set to %s, and %s may have %s at most: too much by %s."
                        .formatted(pair.value(), motor.name(), pair.limit(), pair.apart())
                    : "It is set to %s, and %s draws %s: it opens in use."
                        .formatted(pair.value(), motor.name(), pair.limit()),
                "draws " + plate.text())
            .alsoAt(setting.mark(), "set to " + setting.text())
            .measured(
                new Measure(amps, "A"), new Measure(high ? most : plate.value().nominal(), "A"))
            .change(setting.mark(), plate.text())
            .todo(
                "Set the release of %s to %s.".formatted(device.name(), plate.text()),
                Basis.of(share, holds));
      }
    }
    double amps =
        devices.stream()
            .mapToDouble(d -> d.overloadSetting().orElseThrow().value().high())
            .max()
            .orElse(0);
    return subject.satisfied(
        "%s opens when %s is overloaded: it is set to %s, and the plate says %s."
            .formatted(
                devices.get(0).name(),
                motor.name(),
                Printed.of(amps, Dimension.CURRENT),
                plate.text()),
        new Measure(amps, "A"),
        new Measure(most, "A"),
        Basis.of(share, holds));
  }
}
