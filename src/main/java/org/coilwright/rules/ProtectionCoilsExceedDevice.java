package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
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
import org.coilwright.sizing.Found;
import org.coilwright.sizing.Overcurrent;
import org.coilwright.sizing.PowerSide;
import org.coilwright.sizing.PowerSide.Demand;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** The coils behind a fuse or breaker, together, are too much for it. */
final class ProtectionCoilsExceedDevice implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of(
              "protection.coils-exceed-device",
              Weight.FIX,
              "coils draw more than their fuse stands")
          .what(
              "Adds, for each fuse and circuit-breaker that coils hang on, what all coils that can"
                  + " be on together draw, at the highest supply and the least resistance. While"
                  + " they hold, the device must carry it for good, with what loads draw through it"
                  + " as well. While all of them pull in at once, as when the mains come back, it"
                  + " must not open within 0.1 s: a breaker below its magnetic release, a gG fuse"
                  + " below the gate of its standard. A pick-up that is not written is taken as 15"
                  + " times what the coil holds with.")
          .why(
              "An alternating-current coil draws many times as much while it pulls in. The control"
                  + " fuse ages with each start and goes one day, and everything behind it is off.")
          .remedy(
              "Take a larger device if the wire behind it may carry that, or feed the coils from"
                  + " more than one.")
          .blind(
              "What controllers and supply units draw for themselves, which no key holds; in a"
                  + " panel of more than 256 positions the lamps beside the coils; air warmer than"
                  + " the device's rating holds at; coils that take longer than 0.1 s to pull in,"
                  + " or that chatter.")
          .sources("iec-60898-1", "iec-60269-gates", "iec-60269-3-1", "circuit-theory")
          .consequenceOf(
              "wiring.short-circuit",
              "coil.wrong-current-kind",
              "coil.reversed",
              "protection.load-exceeds-device");

  private final PowerSides sides;
  private final Tables tables;

  ProtectionCoilsExceedDevice(PowerSides sides) {
    this.sides = sides;
    this.tables = sides.tables();
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  /** What hangs on a device's fullest pole. */
  private record Full(DeviceCoils coils, DeviceCoils.Most most, List<Part> loads) {}

  @Override
  public List<Outcome> check(Study study) {
    PowerSide side = sides.of(study).side();
    Map<Part, Full> fullest = new LinkedHashMap<>();
    Map<Part, Outcome> open = new LinkedHashMap<>();
    for (DeviceCoils coils : DeviceCoils.all(study)) {
      Optional<Gap> gap = coils.unknown();
      if (gap.isPresent()) {
        open.putIfAbsent(
            coils.device(),
            subject(coils)
                .undecided(
                    gap.get().key(),
                    "What the coils behind %s draw cannot be told."
                        .formatted(coils.device().name())));
        continue;
      }
      List<Part> loads = side.loadsThrough(coils.pole());
      Full full = new Full(coils, coils.most(loads.isEmpty(), tables), loads);
      fullest.merge(coils.device(), full, (a, b) -> b.most().pullIn() > a.most().pullIn() ? b : a);
    }
    List<Outcome> outcomes = new ArrayList<>(open.values());
    fullest.keySet().removeAll(open.keySet());
    fullest.values().forEach(full -> judge(side, full).ifPresent(outcomes::add));
    return ByShaft.open(study, sides, outcomes);
  }

  private static Subject subject(DeviceCoils coils) {
    List<String> at = new ArrayList<>(List.of(coils.device().name()));
    coils.coils().forEach(feed -> at.add(feed.relay()));
    return new Subject(
        FACTS,
        Overcurrent.written(coils.device()).map(w -> w.mark()).orElse(coils.device().head().mark()),
        List.copyOf(at));
  }

  private Optional<Outcome> judge(PowerSide side, Full full) {
    Part device = full.coils().device();
    Subject subject = subject(full.coils());
    if (full.most().pullIn() == 0) {
      return Optional.empty(); // no coil ever comes on through it
    }
    if (Overcurrent.rating(device).isEmpty()) {
      return Optional.of(
          subject.undecided(
              "rating of " + device.name(),
              "Whether %s carries its coils is open.".formatted(device.name())));
    }
    Optional<Demand> demand = side.demand(full.coils().pole());
    if (!full.loads().isEmpty() && demand.isEmpty()) {
      return Optional.of(
          subject.undecided(
              DeviceLoads.unknown(side, full.loads()),
              "Whether %s carries its coils beside its loads is open.".formatted(device.name())));
    }
    Site.Practice practice = side.circuit().netlist().site().practice().value();
    PickUpLimit limits = new PickUpLimit(device, practice, tables);
    double loads = demand.map(Demand::worst).orElse(0.0);
    double holds = full.most().holds() + loads;
    double carries = limits.carries(!full.loads().isEmpty());
    if (Comparison.exceeds(loads, carries)) {
      return Optional.empty(); // protection.load-exceeds-device says so
    }
    if (Comparison.exceeds(holds, carries)) {
      return Optional.of(
          tooMuch(subject, full, limits, new Pull(holds, carries, true, List.of()), loads));
    }
    double pullIn = full.most().pullIn() + loads;
    Found<PickUpLimit.Stands> stands = limits.stands(pullIn);
    if (stands instanceof Found.Unknown<PickUpLimit.Stands> unknown) {
      String why =
          "The coils of %s take %s together while they pull in. %s"
              .formatted(full.coils().names(), Printed.amps(pullIn), unknown.why());
      return Optional.of(
          unknown.settledBy().isEmpty()
              ? subject.undecided(unknown.missing(), why)
              : subject.unsettled(unknown.missing(), why, unknown.settledBy()));
    }
    PickUpLimit.Stands limit = stands.known().orElseThrow();
    if (Comparison.exceeds(pullIn, limit.amps())) {
      return Optional.of(
          full.most().silent().isEmpty()
              ? tooMuch(
                  subject,
                  full,
                  limits,
                  new Pull(pullIn, limit.amps(), false, limit.cited()),
                  loads)
              : subject.undecided(
                  "coil.pick-up of " + full.most().silent().get(0).relay(),
                  "Whether %s stands it when the coils behind it pull in is open."
                      .formatted(device.name())));
    }
    return Optional.of(
        subject.satisfied(
            "%s carries %s%s; the coils of %s draw %s%s at worst and %s while they pull in together%s%s."
                .formatted(
                    device.name(),
                    Printed.amps(carries),
                    limit.amps() > carries
                        ? " and stands %s %s".formatted(Printed.amps(limit.amps()), limit.words())
                        : "",
                    full.coils().names(),
                    Printed.amps(full.most().holds()),
                    loads > 0 ? " beside " + Printed.amps(loads) + " of loads" : "",
                    Printed.amps(pullIn),
                    full.most().taken(),
                    full.coils().uncounted()),
            new Measure(pullIn, "A"),
            new Measure(limit.amps(), "A"),
            Basis.of(full.most().cited()).and(limits.basis(demand)).and(Basis.of(limit.cited()))));
  }

  /** A sum that is too much: while they hold, or while they pull in. */
  private record Pull(double amps, double limit, boolean holding, List<Cited<?>> cited) {}

  private Outcome tooMuch(Subject subject, Full full, PickUpLimit limits, Pull pull, double loads) {
    Part device = full.coils().device();
    Printed.Pair pair = Printed.pair(pull.amps(), pull.limit(), Dimension.CURRENT);
    String beside = loads > 0 ? ", loads of %s among it".formatted(Printed.amps(loads)) : "";
    Subject.Finding finding =
        subject
            .violated(
                pull.holding()
                    ? "coils draw more than %s carries".formatted(device.name())
                    : "%s may open while coils pull in".formatted(device.name()),
                pull.holding()
                    ? "The coils of %s draw %s together at worst while they hold%s; %s carries %s: too much by %s."
                        .formatted(
                            full.coils().names(),
                            pair.value(),
                            beside,
                            device.name(),
                            pair.limit(),
                            pair.apart())
                    : "The coils of %s take %s at worst while they pull in together%s; %s surely stands %s for 0.1 s: too much by %s."
                        .formatted(
                            full.coils().names(),
                            pair.value(),
                            beside,
                            device.name(),
                            pair.limit(),
                            pair.apart()),
                pull.holding() ? "carries " + pair.limit() : "stands " + pair.limit())
            .measured(new Measure(pull.amps(), "A"), new Measure(pull.limit(), "A"));
    full.coils()
        .coils()
        .forEach(
            feed ->
                finding.alsoAt(
                    feed.spec().pickUp().map(w -> w.mark()).orElse(feed.coil().mark()),
                    pull.holding() ? "holds through it" : "pulls in through it"));
    double holds = full.most().holds() + loads;
    Optional<Cited<Double>> larger =
        limits.larger(holds, full.most().pullIn() + loads, !full.loads().isEmpty());
    larger.ifPresent(r -> finding.change(Stretch.rating(device), amps(r.value())));
    return finding
        .detail("Worst case: supply at its highest, coil resistance at its lowest.")
        .todo(
            larger
                .map(
                    r ->
                        "Take a device of %s if the wire behind it may carry that, or feed the coils from more than one."
                            .formatted(amps(r.value())))
                .orElse("Feed the coils from more than one device."),
            Basis.of(full.most().cited())
                .and(pull.holding() ? limits.basis(Optional.empty()) : Basis.of(pull.cited())));
  }

  private static String amps(double amps) {
    return Printed.of(amps, Dimension.CURRENT);
  }
}
