package org.coilwright.rules;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Comparison;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.sizing.Series;
import org.coilwright.sizing.ShortCircuit;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** A short-circuit heats a wire beyond what its insulation stands before the device opens. */
final class ConductorShortCircuit implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of(
              "conductor.short-circuit", Weight.STOP, "wire not protected from a short-circuit")
          .what(
              "Holds what the device before a wire lets through, at the fault current of the mains,"
                  + " against k²S² of the wire in its insulation (PVC where none is written). A breaker is first taken to need the whole 0.1 s"
                  + " of its magnetic release; where that is too much its energy-limiting class 3"
                  + " counts, which practice nec does not know. A fuse protects what it protects from overload, if it can break the"
                  + " fault current.")
          .why("The wire glows and burns what lies beside it in a fraction of a second.")
          .remedy("Take thicker wire, or a device that lets less through; ask its maker for I²t.")
          .blind(
              "Wires before the first device; faults so far away that the magnetic release does not"
                  + " see them; the breaking capacity of a circuit-breaker.")
          .sources("iec-60364-4-43", "iec-60898-1")
          .consequenceOf("conductor.unprotected", "protection.missing");

  private final PowerSides sides;
  private final Tables tables;

  ConductorShortCircuit(PowerSides sides) {
    this.sides = sides;
    this.tables = sides.tables();
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    boolean nec = study.circuit().netlist().site().practice().value() == Site.Practice.NEC;
    Optional<Written<Quantity>> fault =
        study.circuit().netlist().site().mains().flatMap(Site.MainsSupply::faultCurrent);
    List<Outcome> outcomes = new ArrayList<>();
    Set<Part> fuses = new HashSet<>();
    for (Stretch stretch : sides.of(study).stretches()) {
      // what a fuse can break does not depend on the wire: it is said once
      if (!stretch.neutral()
          && stretch.guard().isPresent()
          && (!(stretch.guard().get() instanceof Part.Fuse fuse) || fuses.add(fuse))) {
        outcomes.add(judge(stretch, stretch.guard().get(), fault, nec));
      }
    }
    return outcomes;
  }

  private Outcome judge(
      Stretch stretch, Part device, Optional<Written<Quantity>> fault, boolean nec) {
    Subject subject = stretch.subject(FACTS);
    if (fault.isEmpty()) {
      return subject.undecided(
          "site.mains.fault-current",
          "Whether %s protects its wires from a short-circuit is open: the fault current of the mains is not written."
              .formatted(device.name()));
    }
    if (stretch.size().isEmpty()) {
      return subject.undecided(
          stretch.missingSize(),
          "Whether %s stands a short-circuit is open: its size is not written."
              .formatted(stretch.name()));
    }
    double amps = fault.get().value().high();
    Optional<Cited<Double>> factor =
        stretch.core().shortCircuitFactor(stretch.size().get(), tables);
    if (factor.isEmpty()) {
      return subject.undecided(
          "short-circuit factor k of " + stretch.name(),
          "Whether %s stands a short-circuit is open: no table read here gives k for %s."
              .formatted(stretch.name(), stretch.core().words(stretch.size().get(), tables)));
    }
    Cited<Double> k = factor.get();
    double mm2 = stretch.size().get().mm2();
    double stands = ShortCircuit.stands(k.value(), mm2);
    if (device instanceof Part.Fuse fuse) {
      return fuse(subject, fuse, fault.get(), k);
    }
    Cited<Double> time = tables.figure("sizing.magnetic-time");
    double slow = amps * amps * time.value();
    if (!Comparison.exceeds(slow, stands)) {
      return satisfied(
          subject,
          stretch,
          device,
          slow,
          stands,
          "%s for %s".formatted(Printed.amps(amps), Printed.of(time.value(), Dimension.TIME)),
          Basis.of(k, time));
    }
    // the class is one of IEC 60898-1; breakers of the other practice do not state it
    Optional<Cited<Double>> limited =
        nec ? Optional.empty() : ShortCircuit.letThrough(device, amps, tables);
    if (limited.isEmpty()) {
      return subject.undecided(
          "let-through energy of %s at %s".formatted(device.name(), Printed.amps(amps)),
          "Whether a short-circuit behind %s burns %s is open: no table gives what %s lets through."
              .formatted(device.name(), stretch.words(), device.name()));
    }
    double through = limited.get().value();
    Basis basis = Basis.of(k, limited.get());
    if (!Comparison.exceeds(through, stands)) {
      return satisfied(subject, stretch, device, through, stands, "class 3", basis);
    }
    return subject
        .violated(
            "%s does not stand a short-circuit".formatted(stretch.name()),
            "%s lets through up to %s at %s; for %s k²S² is %s (%s² × %s²)."
                .formatted(
                    device.name(),
                    energy(through),
                    Printed.amps(amps),
                    stretch.words(),
                    energy(stands),
                    Printed.of(k.value(), Dimension.COUNT),
                    Printed.of(mm2, Dimension.COUNT)),
            "stands " + energy(stands))
        .alsoAt(device.head().mark(), "lets through " + energy(through))
        .measured(new Measure(through, "A²s"), new Measure(stands, "A²s"))
        .todo(
            "Take %s or thicker in %s, or a device whose maker states less."
                .formatted(
                    Printed.of(
                        Series.wireOf(Math.sqrt(through) / k.value(), tables)
                            .orElse(Math.sqrt(through) / k.value()),
                        Dimension.AREA),
                    stretch.name()),
            basis);
  }

  private Outcome fuse(Subject subject, Part.Fuse fuse, Written<Quantity> fault, Cited<Double> k) {
    if (fuse.breakingCapacity().isEmpty()) {
      return subject.undecided(
          "breaking-capacity of " + fuse.name(),
          "Whether %s breaks a short-circuit is open: its breaking capacity is not written."
              .formatted(fuse.name()));
    }
    double has = fuse.breakingCapacity().get().value().nominal();
    double needs = fault.value().high();
    Printed.Pair pair = Printed.pair(needs, has, Dimension.CURRENT);
    Measure value = new Measure(needs, "A");
    Measure held = new Measure(has, "A");
    Basis basis = Basis.of(tables.figure("sizing.overload-share"), k);
    if (!Comparison.exceeds(needs, has)) {
      return subject.satisfied(
          "%s breaks %s and the fault current is %s; what it protects from overload it then protects from a short-circuit."
              .formatted(fuse.name(), pair.limit(), pair.value()),
          value,
          held,
          basis);
    }
    return subject
        .violated(
            "%s cannot break a short-circuit".formatted(fuse.name()),
            "The fault current is %s; the fuse breaks %s: short by %s."
                .formatted(pair.value(), pair.limit(), pair.apart()),
            "behind this fuse")
        .alsoAt(fuse.breakingCapacity().get().mark(), "breaks " + pair.limit())
        .alsoAt(fault.mark(), "can deliver " + pair.value())
        .measured(value, held)
        .todo("Take a fuse that breaks %s or more.".formatted(pair.value()), basis);
  }

  private static Outcome satisfied(
      Subject subject,
      Stretch stretch,
      Part device,
      double through,
      double stands,
      String how,
      Basis basis) {
    return subject.satisfied(
        "%s lets through at most %s (%s); %s: k²S² is %s."
            .formatted(device.name(), energy(through), how, stretch.words(), energy(stands)),
        new Measure(through, "A²s"),
        new Measure(stands, "A²s"),
        basis);
  }

  private static String energy(double a2s) {
    return String.format(Locale.ROOT, "%,d A²s", Math.round(a2s)).replace(',', ' ');
  }
}
