package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Mark;
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
                  + " system, and with practice iec for every element that heats water.")
          .why(
              "An element that leaks through its sheath makes the water and the taps live before any"
                  + " fuse notices.")
          .remedy("Put a residual-current device of 30 mA before the load.")
          .blind("Rooms and socket-outlets, which have rules of their own; the kind of device.")
          .sources("iec-60364-4-41", "common-practice")
          .consequenceOf("protection.missing");

  private final PowerSides sides;
  private final Basis practice;
  private final Basis system;

  ProtectionRcdMissing(PowerSides sides) {
    this.sides = sides;
    Tables tables = sides.tables();
    practice =
        new Basis(
            List.of(tables.source("common-practice").cite() + ": elements that heat water"),
            Standing.COMMON_PRACTICE);
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
    Optional<Written<String>> tt =
        site.mains().flatMap(Site.MainsSupply::earthing).filter(e -> e.value().equals("TT"));
    boolean iec = site.practice().value() == Site.Practice.IEC;
    List<Outcome> outcomes = new ArrayList<>();
    for (Part load : side.mainsLoads()) {
      Optional<Mark> water =
          load instanceof Part.Heater heater && iec
              ? heater.vessel().map(Part.Vessel::mark)
              : Optional.empty();
      if (tt.isPresent() || water.isPresent()) {
        outcomes.add(
            judge(
                side,
                load,
                tt.map(Written::mark).or(() -> water).orElse(load.head().mark()),
                tt.isPresent()));
      }
    }
    return outcomes;
  }

  private Outcome judge(PowerSide side, Part load, Mark why, boolean tt) {
    Subject subject = Subject.of(FACTS, load.head().mark(), load.name());
    Basis basis = tt ? system : practice;
    Optional<Part.Protective> device = ResidualDevices.inEveryLine(side, load);
    if (device.isPresent()) {
      return subject.satisfied(
          "%s lies in every line of %s.".formatted(device.get().name(), load.name()), basis);
    }
    return subject
        .violated(
            "no residual-current device before %s".formatted(load.name()),
            tt
                ? "In a TT system an overcurrent device alone does not clear an earth fault."
                : "It heats water, and no residual-current device lies in all its lines.",
            "has none")
        .alsoAt(why, tt ? "a TT system" : "water")
        .todo("Put a residual-current device of 30 mA before %s.".formatted(load.name()), basis);
  }
}
