package org.coilwright.rules;

import java.util.List;
import java.util.Optional;
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
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** In island operation nothing opens an earth fault at the load. */
final class ProtectionIslandEarthFault implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of(
              "protection.island-earth-fault", Weight.STOP, "earth fault not opened in an island")
          .what(
              "Looks at each load that the source of `site.island` feeds while the mains are off. A"
                  + " residual-current device in every line, behind the place where neutral and"
                  + " earth are joined, has to be there, and the site's own electrode times its"
                  + " trip current must stay below 50 V; or a breaker or fuse that the least"
                  + " `fault-current` opens in the time of Table 41.1, before the source shuts down"
                  + " and through the resistance of line and protective conductor.")
          .why(
              "An inverter gives little more than its rated current: the breaker stays closed, and"
                  + " the case of the load stays live.")
          .remedy("Put a residual-current device of 30 mA before the load.")
          .blind(
              "A source that switches itself off in time, which its maker has to state (IEC"
                  + " 60364-4-41, group 419); whether the residual-current device suits the"
                  + " source's waveform; changing over, and the mains' own operation.")
          .sources("island-earthing", "island-fault-current", "iec-60364-4-41", "iec-60898-1-times")
          .consequenceOf("poles.earth-missing");

  private final PowerSides sides;
  private final Tables tables;

  ProtectionIslandEarthFault(PowerSides sides) {
    this.sides = sides;
    this.tables = sides.tables();
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return IslandView.ask(
        study,
        sides,
        FACTS,
        island -> island.loads().stream().flatMap(l -> judge(island, l).stream()).toList());
  }

  private Optional<Outcome> judge(IslandView island, Part load) {
    Subject subject = Subject.of(FACTS, load.head().mark(), load.name());
    String open =
        "Whether an earth fault at %s is opened in island operation is open."
            .formatted(load.name());
    List<Part.Protective> residual = island.residual(load);
    Optional<Part.Protective> behind = residual.stream().filter(island::isBehindBond).findFirst();
    if (!residual.isEmpty() && island.written().neutralBond().isEmpty()) {
      return Optional.of(
          subject.undecided(
              "site.island.neutral-bond",
              open + " Who joins neutral and earth then is not written."));
    }
    if (behind.isPresent()) {
      return Optional.of(residual(island, subject, open, behind.get()));
    }
    // without a bond ahead of it the device does nothing: protection.island-no-bond tells that
    return residual.isEmpty()
        ? Optional.of(new IslandBreakers(island, tables).judge(load, subject, open))
        : Optional.empty();
  }

  private Outcome residual(
      IslandView island, Subject subject, String open, Part.Protective device) {
    if (device.trip().isEmpty()) {
      return subject.undecided(
          "trip of " + device.name(),
          "%s The residual current of %s is not written.".formatted(open, device.name()));
    }
    if (island.written().electrode().isEmpty()) {
      return subject.undecided(
          "site.island.electrode",
          open
              + " The distributor's earth may be gone with the mains, and the resistance of the"
              + " site's own electrode is not written.");
    }
    Written<Quantity> electrode = island.written().electrode().get();
    Cited<Double> touch = tables.figure("sizing.touch-voltage");
    double trip = device.trip().get().value().high();
    double limit = touch.value() / trip;
    double ohms = electrode.value().high();
    Printed.Pair pair = Printed.pair(ohms, limit, Dimension.RESISTANCE);
    Measure value = new Measure(ohms, "Ω");
    Measure held = new Measure(limit, "Ω");
    String sum = "%s ÷ %s".formatted(Printed.volts(touch.value()), Printed.amps(trip));
    if (!Comparison.exceeds(ohms, limit)) {
      return subject.satisfied(
          "In island operation %s opens an earth fault at %s; the electrode has %s and may have %s (%s)."
              .formatted(device.name(), subject.at().get(0), pair.value(), pair.limit(), sum),
          value,
          held,
          Basis.of(touch));
    }
    return subject
        .violated(
            "an earth fault at %s is not opened in island operation".formatted(subject.at().get(0)),
            "The site's own electrode has %s, and %s holds it at 50 V up to %s (%s): too much by %s."
                .formatted(pair.value(), device.name(), pair.limit(), sum, pair.apart()),
            "an earth fault here")
        .alsoAt(electrode.mark(), "has " + pair.value())
        .alsoAt(device.head().mark(), "opens at " + Printed.amps(trip))
        .measured(value, held)
        .change(electrode.mark(), Printed.atMost(limit, Dimension.RESISTANCE))
        .todo(
            "Lower the resistance of the electrode to %s, or take a more sensitive residual-current device."
                .formatted(Printed.atMost(limit, Dimension.RESISTANCE)),
            Basis.of(touch));
  }
}
