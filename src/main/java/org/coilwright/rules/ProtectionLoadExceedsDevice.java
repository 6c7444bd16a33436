package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
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
import org.coilwright.sizing.Overcurrent;
import org.coilwright.sizing.PowerSide;
import org.coilwright.sizing.PowerSide.Demand;
import org.coilwright.sizing.Series;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** The loads behind a device draw more than its rating. */
final class ProtectionLoadExceedsDevice implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("protection.load-exceeds-device", Weight.FIX, "loads draw more than the device")
          .what(
              "Adds the nominal currents of the loads that can be on together behind each fuse and"
                  + " circuit-breaker and holds them against its rating; at worst they must stay"
                  + " below what surely does not trip a breaker (1.13 times). With practice nec 125"
                  + " % of the nominal current count. A residual-current device has no overload"
                  + " release: its rating must cover the load at worst, and either the breaker"
                  + " ahead of it or those behind it together must keep within it."
                  + " A motor whose plate current is not written is open: its power is that at its"
                  + " shaft, and it takes more.")
          .why("The device opens in the middle of a long run, or ages by running hot.")
          .remedy("Take a larger device if the wire allows it, or spread the loads.")
          .blind(
              "Air warmer than 30 °C at the device, and devices close together, which trip earlier"
                  + " (protection.device-too-warm). A breaker ahead lets through up to 1.45 times"
                  + " its rating for an hour: that loads of fixed power do not ask for so much is"
                  + " taken for granted.")
          .sources("iec-60364-4-43", "iec-60898-1", "iec-60364-5-53", "nec")
          .consequenceOf("wiring.short-circuit")
          .carriedBy("load.wrong-voltage");

  private final PowerSides sides;
  private final Tables tables;
  private final ResidualRating residual;

  ProtectionLoadExceedsDevice(PowerSides sides) {
    this.sides = sides;
    this.tables = sides.tables();
    this.residual = new ResidualRating(FACTS, tables);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    PowerSide side = sides.of(study).side();
    List<Outcome> outcomes = new ArrayList<>();
    DeviceLoads.heaviest(side, device -> true)
        .forEach(
            (device, branch) ->
                outcomes.add(
                    device instanceof Part.Protective rcd && rcd.isRcd()
                        ? residual.judge(sides.of(study), rcd, branch)
                        : judge(side, device, branch)));
    return ByShaft.open(study, sides, outcomes);
  }

  private Outcome judge(PowerSide side, Part device, Branch branch) {
    List<Part> loads = side.loadsThrough(branch);
    List<String> at = new ArrayList<>(List.of(device.name()));
    loads.forEach(l -> at.add(l.name()));
    Subject subject = new Subject(FACTS, device.head().mark(), List.copyOf(at));
    Optional<Written<Quantity>> rating = Overcurrent.written(device);
    Optional<Demand> demand = side.demand(branch);
    if (rating.isEmpty() || demand.isEmpty()) {
      String missing =
          rating.isEmpty() ? "rating of " + device.name() : DeviceLoads.unknown(side, loads);
      return subject.undecided(
          missing, "Whether %s carries its loads is open.".formatted(device.name()));
    }
    boolean nec = side.circuit().netlist().site().practice().value() == Site.Practice.NEC;
    return judge(subject, device, rating.get(), demand.get(), loads, nec);
  }

  private Outcome judge(
      Subject at,
      Part device,
      Written<Quantity> rating,
      Demand demand,
      List<Part> loads,
      boolean nec) {
    Subject subject = new Subject(FACTS, rating.mark(), at.at());
    double has = rating.value().nominal();
    Cited<Double> continuous = tables.figure("sizing.continuous-load");
    Optional<Cited<Double>> holds =
        device instanceof Part.Protective
            ? Overcurrent.surelyHolds(device, nec ? Site.Practice.NEC : Site.Practice.IEC, tables)
            : Optional.empty();
    List<Cited<?>> cited = new ArrayList<>();
    double needs = demand.nominal();
    double limit = has;
    String words = "at rated power and nominal voltage";
    if (nec) {
      needs = demand.nominal() * continuous.value();
      words = "%s × 1.25 as a continuous load".formatted(Printed.amps(demand.nominal()));
      cited.add(continuous);
    } else if (!Comparison.exceeds(needs, has) && holds.isPresent()) {
      needs = demand.worst();
      limit = has * holds.get().value();
      words = demand.words();
      cited.add(holds.get());
      demand.loads().forEach(l -> cited.addAll(l.basis()));
    } else {
      holds.ifPresent(cited::add);
    }
    if (cited.isEmpty()) {
      cited.add(tables.figure("sizing.overload-share"));
    }
    Basis basis = Basis.of(cited);
    Printed.Pair pair = Printed.pair(needs, limit, Dimension.CURRENT);
    Measure value = new Measure(needs, "A");
    Measure held = new Measure(limit, "A");
    String carries =
        limit > has
            ? "%s (%s × %s, which does not trip it)"
                .formatted(
                    pair.limit(),
                    Printed.of(limit / has, Dimension.COUNT),
                    Printed.of(has, Dimension.CURRENT))
            : pair.limit();
    if (!Comparison.exceeds(needs, limit)) {
      return subject.satisfied(
          "%s %s %s; %s carries %s."
              .formatted(demand.draws(), pair.value(), words, device.name(), carries),
          value,
          held,
          basis);
    }
    Subject.Finding finding =
        subject
            .violated(
                "%s more than %s carries".formatted(demand.draws(), device.name()),
                "%s %s (%s); %s carries %s: too much by %s."
                    .formatted(
                        loads.size() > 1 ? "Together" : "It draws",
                        pair.value(),
                        words,
                        device.name(),
                        carries,
                        pair.apart()),
                "carries " + pair.limit())
            .measured(value, held);
    loads.forEach(l -> finding.alsoAt(l.head().mark(), "behind it"));
    finding.change(
        Stretch.rating(device),
        series(nec ? needs : Math.max(demand.nominal(), needs * has / limit), nec));
    return finding.todo(
        "Take a device of %s or more if the wire behind it may carry that, or spread the loads."
            .formatted(series(nec ? needs : Math.max(demand.nominal(), needs * has / limit), nec)),
        basis);
  }

  /** The smallest rating that is made and large enough. */
  private String series(double amps, boolean nec) {
    return (nec ? Series.atLeast(amps, tables) : Series.breakerAtLeast(amps, tables))
        .map(r -> Printed.of(r.value(), Dimension.CURRENT))
        .orElse(Printed.atLeast(amps, Dimension.CURRENT));
  }
}
