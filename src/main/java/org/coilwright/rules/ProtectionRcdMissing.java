package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.sizing.PowerSide;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** Practice asks for a residual-current device and none lies in the way of the load. */
final class ProtectionRcdMissing implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("protection.rcd-missing", Weight.FIX, "no residual-current device")
          .what(
              "Looks for a residual-current device in every line of a load. It is asked for in a TT"
                  + " system, where additional-protection of the load says so (bathrooms,"
                  + " socket-outlets, outdoors, lighting of dwellings), and with practice iec for"
                  + " every element that heats water. Without a written earthing it is open.")
          .why(
              "An element that leaks through its sheath makes the water and the taps live before"
                  + " any fuse notices.")
          .remedy("Put a residual-current device of 30 mA before the load.")
          .blind(
              "Rooms and socket-outlets that are not written; the kind of device and how fine it"
                  + " is, which protection.rcd-kind and protection.rcd-too-coarse judge.")
          .sources("iec-60364-4-41", "iec-60364-7-701", "common-practice")
          .consequenceOf("protection.missing");

  private final PowerSides sides;
  private final Basis system;

  ProtectionRcdMissing(PowerSides sides) {
    this.sides = sides;
    Tables tables = sides.tables();
    system =
        new Basis(List.of(tables.source("iec-60364-4-41").cite() + ", 411.5"), Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    PowerSide side = sides.of(study).side();
    Site site = study.circuit().netlist().site();
    Optional<Written<String>> earthing = site.mains().flatMap(Site.MainsSupply::earthing);
    boolean iec = site.practice().value() == Site.Practice.IEC;
    List<Outcome> outcomes = new ArrayList<>();
    for (Part load : side.mainsLoads()) {
      Optional<AdditionalProtection> asked =
          earthing
              .filter(e -> e.value().equals("TT"))
              .map(this::inTt)
              .or(() -> AdditionalProtection.of(load, site, sides.tables()));
      if (asked.isPresent()) {
        outcomes.add(judge(side, load, asked.get(), earthing));
      } else if (earthing.isEmpty() && iec) {
        outcomes.add(open(side, load));
      }
    }
    return outcomes;
  }

  private AdditionalProtection inTt(Written<String> earthing) {
    return new AdditionalProtection(
        earthing.mark(),
        "In a TT system an overcurrent device alone does not clear an earth fault.",
        "a TT system",
        system);
  }

  /** Whether one is needed hangs on the earthing system, unless it is there anyway. */
  private Outcome open(PowerSide side, Part load) {
    Subject subject = Subject.of(FACTS, load.head().mark(), load.name());
    return ResidualDevices.inEveryLine(side, load)
        .<Outcome>map(
            device ->
                subject.satisfied(
                    "%s lies in every line of %s, whatever the earthing."
                        .formatted(device.name(), load.name()),
                    system))
        .orElseGet(
            () ->
                subject.undecided(
                    "site.mains.earthing",
                    "Whether %s needs a residual-current device is open: a TT system asks for one."
                        .formatted(load.name())));
  }

  private Outcome judge(
      PowerSide side, Part load, AdditionalProtection asked, Optional<Written<String>> earthing) {
    Subject subject = Subject.of(FACTS, load.head().mark(), load.name());
    Optional<Part.Protective> device = ResidualDevices.inEveryLine(side, load);
    if (device.isPresent()) {
      return subject.satisfied(
          "%s lies in every line of %s.".formatted(device.get().name(), load.name()),
          asked.basis());
    }
    boolean combined = earthing.filter(e -> e.value().equals("TN-C")).isPresent();
    return subject
        .violated(
            "no residual-current device before %s".formatted(load.name()),
            "%s No residual-current device lies in all its lines.".formatted(asked.words()),
            "has none")
        .alsoAt(asked.mark(), asked.label())
        .todo(
            combined
                ? "Part the PEN conductor into neutral and protective conductor, and put a residual-current device of 30 mA behind that before %s."
                    .formatted(load.name())
                : "Put a residual-current device of 30 mA before %s.".formatted(load.name()),
            asked.basis());
  }
}
