package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.circuit.Branch;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.sizing.Derated;
import org.coilwright.sizing.Factor;
import org.coilwright.sizing.Found;
import org.coilwright.sizing.Overcurrent;
import org.coilwright.sizing.PowerSide;
import org.coilwright.sizing.WarmDevice;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** A breaker, fuse or residual-current device in air warmer than its rating holds at. */
final class ProtectionDeviceTooWarm implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("protection.device-too-warm", Weight.FIX, "protective device too warm")
          .what(
              "Takes the air around each breaker, fuse and residual-current device, written or"
                  + " computed for the box, holds it against the range the device works in, lowers"
                  + " the rated current where the air is warmer than it holds at (a breaker to"
                  + " IEC 60898-1 at 30 °C, to UL 489 and a fuse at 40 °C, unless its rated-air"
                  + " says otherwise) or where breakers stand side by side. What is left must cover"
                  + " the loads at nominal voltage, and as many times that as surely does not open"
                  + " the device must cover them at worst; with practice nec it must itself.")
          .why(
              "A breaker in a warm box opens below its rating, in the middle of the afternoon, and"
                  + " outside its range nobody answers for it.")
          .remedy(
              "Take a larger device if the wire behind it may carry that, leave a gap beside it, or"
                  + " move it to cooler air.")
          .blind(
              "Each maker has a table of its own, and it wins: the law used is that of one"
                  + " breaker maker's table. Devices beside it that are not in the netlist, sun on"
                  + " the box, and what coils and electronics draw through a device.")
          .sources(
              "iec-60898-1-air",
              "iec-60898-1",
              "breaker-maker-catalogue",
              "fuse-maker-notes",
              "rcd-data")
          .consequenceOf(
              "protection.load-exceeds-device", "wiring.short-circuit", "load.wrong-voltage");

  private final PowerSides sides;
  private final Tables tables;

  ProtectionDeviceTooWarm(PowerSides sides) {
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
    Map<Part, Branch> loaded = DeviceLoads.heaviest(side, d -> true);
    Map<Part, Optional<Branch>> devices = new LinkedHashMap<>();
    study.circuit().netlist().parts().values().stream()
        .filter(p -> p instanceof Part.Fuse || p instanceof Part.Protective)
        .forEach(p -> devices.put(p, Optional.ofNullable(loaded.get(p))));
    if (devices.isEmpty()) {
      return List.of();
    }
    Found<InsideAir> air = InsideAir.of(study, tables);
    int row = (int) loaded.keySet().stream().filter(DeviceInAir::isBeside).count();
    List<Outcome> outcomes = new ArrayList<>();
    devices.forEach((device, pole) -> outcomes.add(judge(side, device, pole, air, row)));
    return ByShaft.open(study, sides, outcomes);
  }

  private Outcome judge(
      PowerSide side, Part device, Optional<Branch> pole, Found<InsideAir> air, int row) {
    Site site = side.circuit().netlist().site();
    Subject subject = Subject.of(FACTS, device.head().mark(), device.name());
    if (air instanceof Found.Unknown<InsideAir> unknown) {
      return subject.undecided(
          unknown.missing(),
          "How warm %s gets is open. %s".formatted(device.name(), unknown.why()));
    }
    WarmDevice.Kind kind = WarmDevice.Kind.of(device, site.practice().value(), tables);
    DeviceInAir at = new DeviceInAir(subject, device, kind, air.known().orElseThrow(), site);
    return outside(at).orElseGet(() -> carried(at, side, pole, row));
  }

  /** What is to be said where the air is outside the range; empty inside it. */
  private Optional<Outcome> outside(DeviceInAir at) {
    Optional<Written<Quantity>> working = at.working();
    double warm = at.air().celsius();
    double cold = at.air().coldest();
    if (working.isPresent()) {
      double high = working.get().value().high();
      double low = working.get().value().low();
      if (Comparison.exceeds(warm, high)) {
        return Optional.of(at.beyond(working.get(), warm, high, "warm"));
      }
      return Comparison.fallsShort(cold, low)
          ? Optional.of(at.beyond(working.get(), cold, low, "cold"))
          : Optional.empty();
    }
    boolean tooCold =
        WarmDevice.coldest(at.kind(), tables)
            .filter(c -> Comparison.fallsShort(cold, c.value()))
            .isPresent();
    boolean tooWarm =
        at.kind() == WarmDevice.Kind.RESIDUAL
            && WarmDevice.warmest(at.kind(), tables)
                .filter(w -> Comparison.exceeds(warm, w.value()))
                .isPresent();
    return tooCold || tooWarm
        ? Optional.of(
            at.undecided(
                "working-air of " + at.name(),
                "The standard's range is %s to %s; what its sheet allows is not written."
                    .formatted(
                        DeviceInAir.edge(WarmDevice.coldest(at.kind(), tables)),
                        DeviceInAir.edge(WarmDevice.warmest(at.kind(), tables)))))
        : Optional.empty();
  }

  private Outcome carried(DeviceInAir at, PowerSide side, Optional<Branch> pole, int row) {
    double warm = at.air().celsius();
    Optional<Written<Quantity>> sheet = at.limits().rated();
    Optional<Double> holds =
        sheet
            .map(r -> r.value().high())
            .or(() -> WarmDevice.reference(at.kind(), tables).map(Cited::value));
    Optional<Double> works =
        at.working()
            .map(w -> w.value().high())
            .or(() -> WarmDevice.warmest(at.kind(), tables).map(Cited::value));
    boolean beside = at.isBeside();
    boolean rated = holds.filter(h -> !Comparison.exceeds(warm, h)).isPresent();
    if (rated && !beside) {
      return at.inside(holds.get(), "its rated current holds up to");
    }
    if (holds.isEmpty() && at.kind() != WarmDevice.Kind.RESIDUAL) {
      return at.undecided(
          "rated-air of " + at.name(), "Where its rated current holds is for its maker to say.");
    }
    if (at.kind() == WarmDevice.Kind.RESIDUAL) {
      return sheet.isPresent()
          ? at.beyond(sheet.get(), warm, sheet.get().value().high(), "warm")
          : at.inside(works.orElse(warm), "it works up to");
    }
    if (pole.isEmpty()) {
      return works.filter(w -> !Comparison.exceeds(warm, w)).isPresent()
          ? at.inside(works.get(), "no load hangs on it and it works up to")
          : at.undecided("working-air of " + at.name(), "What its sheet allows is not written.");
    }
    Optional<PowerSide.Demand> demand = side.demand(pole.get());
    OptionalDouble has = Overcurrent.rating(at.device());
    if (has.isEmpty()) {
      return at.undecided("rating of " + at.name(), "What it carries there is open.");
    }
    if (demand.isEmpty()) {
      return at.undecided(
          DeviceLoads.unknown(side, side.loadsThrough(pole.get())),
          "What it has to carry is open.");
    }
    Found<Optional<Factor>> factor =
        new WarmDevice(
                at.kind(),
                has.getAsDouble(),
                sheet.stream().mapToDouble(r -> r.value().high()).findFirst())
            .in(warm, tables);
    if (factor instanceof Found.Unknown<Optional<Factor>> unknown) {
      return at.undecided("rated-air of " + at.name(), unknown.why());
    }
    List<Factor> factors = new ArrayList<>();
    factor.known().flatMap(f -> f).ifPresent(factors::add);
    if (beside) {
      factors.add(WarmDevice.inARow(Math.max(2, row), tables));
    }
    boolean sure =
        at.working().isPresent() || works.filter(w -> Comparison.exceeds(warm, w)).isEmpty();
    Site.Practice practice = side.circuit().netlist().site().practice().value();
    return at.compared(
        new Derated(has.getAsDouble(), factors, List.of()),
        demand.get(),
        practice == Site.Practice.NEC
            ? Optional.empty()
            : Overcurrent.surelyHolds(at.device(), practice, tables),
        sure,
        tables);
  }
}
