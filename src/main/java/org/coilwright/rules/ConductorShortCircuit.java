// Over 250 lines: the four answers to one question, each with its own words.
package org.coilwright.rules;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
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
import org.coilwright.sizing.ConductorHeating;
import org.coilwright.sizing.ConductorHeating.Answer;
import org.coilwright.sizing.Derated;
import org.coilwright.sizing.Found;
import org.coilwright.sizing.Overcurrent;
import org.coilwright.sizing.Series;
import org.coilwright.sizing.ShortCircuit;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A short-circuit heats a wire beyond what its insulation stands before the device opens. */
final class ConductorShortCircuit implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of(
              "conductor.short-circuit", Weight.STOP, "wire not protected from a short-circuit")
          .what(
              "Holds what passes until a short-circuit ends against k²S² of the wire in its"
                  + " insulation (PVC where none is written), for every current from the fault"
                  + " current of the mains down to a fault at the farthest end behind the device. A"
                  + " breaker has opened in 0.1 s only from its magnetic release on and slower by"
                  + " steps below; where the 0.1 s are too much its energy-limiting class 3 counts,"
                  + " which practice nec does not know. A source that cannot give more than the"
                  + " wire carries protects it. A fuse that can break the fault current protects"
                  + " what it protects from overload (435.1); of other wires by its family's times,"
                  + " and where it is faster than 0.1 s by what melts it and its arc.")
          .why("The wire glows and burns what lies beside it in a fraction of a second.")
          .remedy("Take thicker wire, or a device that lets less through; ask its maker for I²t.")
          .blind(
              "Wires before the first device; the breaking capacity of a circuit-breaker; a way"
                  + " back that is longer or thinner than the way there; the heat that flows off"
                  + " while a device is slow.")
          .sources("iec-60364-4-43", "iec-60898-1", "iec-60898-1-times")
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
    Site site = study.circuit().netlist().site();
    Optional<Written<Quantity>> fault = site.mains().flatMap(Site.MainsSupply::faultCurrent);
    ConductorHeating heating = new ConductorHeating(site.practice().value(), tables);
    PowerSides.Seen seen = sides.of(study);
    FarEnds ends = FarEnds.of(seen, tables);
    List<Outcome> outcomes = new ArrayList<>();
    Set<Part> fuses = new HashSet<>();
    for (Stretch stretch : seen.stretches()) {
      if (!stretch.neutral() && stretch.guard().isPresent()) {
        Part device = stretch.guard().get();
        Optional<Outcome> breaks =
            device instanceof Part.Fuse fuse && fault.isPresent()
                ? breaking(stretch.subject(FACTS), fuse, fault.get())
                : Optional.empty();
        if (breaks.isEmpty()) {
          outcomes.add(judge(stretch, device, fault, seen, ends, heating));
        } else if (fuses.add(device)) {
          // what a fuse can break does not depend on the wire: it is said once
          outcomes.add(breaks.get());
        }
      }
    }
    return outcomes;
  }

  private Outcome judge(
      Stretch stretch,
      Part device,
      Optional<Written<Quantity>> fault,
      PowerSides.Seen seen,
      FarEnds ends,
      ConductorHeating heating) {
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
    Optional<Cited<Double>> factor =
        stretch.core().shortCircuitFactor(stretch.size().get(), tables);
    if (factor.isEmpty()) {
      return subject.undecided(
          "short-circuit factor k of " + stretch.name(),
          "Whether %s stands a short-circuit is open: no table read here gives k for %s."
              .formatted(stretch.name(), stretch.core().words(stretch.size().get(), tables)));
    }
    Cited<Double> k = factor.get();
    Optional<Derated> may = stretch.may(seen.index(), tables).known();
    if (device instanceof Part.Fuse fuse
        && may.filter(m -> isLimited(stretch, fuse, m)).isPresent()) {
      return overloaded(subject, stretch, fuse, fault.get(), may.get());
    }
    String open =
        "Whether a short-circuit behind %s burns %s is open."
            .formatted(device.name(), stretch.words());
    Found<Double> least = ends.least(stretch, fault.get());
    if (least instanceof Found.Unknown<Double> unknown) {
      return Unknowns.outcome(subject, open, unknown);
    }
    ConductorHeating.Conductor wire =
        new ConductorHeating.Conductor(
            device,
            least.known().orElseThrow(),
            fault.get().value().high(),
            may.stream().mapToDouble(Derated::amps).findFirst(),
            k,
            stretch.size().get().mm2(),
            OptionalDouble.empty());
    Answer answer = heating.judge(wire);
    if (answer instanceof Answer.Stands stands) {
      return stands(subject, stretch, device, stands);
    }
    return answer instanceof Answer.Burns burns
        ? burns(subject, stretch, wire, burns)
        : left(subject, stretch, wire, open, (Answer.Open) answer);
  }

  private static Outcome stands(
      Subject subject, Stretch stretch, Part device, Answer.Stands stands) {
    boolean heat = stands.unit().equals("A²s");
    return subject.satisfied(
        heat
            ? "%s lets through at most %s (%s); %s: k²S² is %s."
                .formatted(
                    device.name(),
                    energy(stands.value()),
                    stands.words(),
                    stretch.words(),
                    energy(stands.limit()))
            : "A short-circuit does not harm %s: %s.".formatted(stretch.words(), stands.words()),
        new Measure(stands.value(), stands.unit()),
        new Measure(stands.limit(), stands.unit()),
        Basis.of(stands.cited()));
  }

  private Outcome burns(
      Subject subject, Stretch stretch, ConductorHeating.Conductor wire, Answer.Burns burns) {
    String device = wire.device().name();
    return subject
        .violated(
            "%s does not stand a short-circuit".formatted(stretch.name()),
            "%s lets through up to %s at %s; for %s k²S² is %s (%s² × %s²)."
                .formatted(
                    device,
                    energy(burns.through()),
                    Printed.amps(wire.most()),
                    stretch.words(),
                    energy(burns.stands()),
                    Printed.of(wire.k().value(), Dimension.COUNT),
                    Printed.of(wire.mm2(), Dimension.COUNT)),
            "stands " + energy(burns.stands()))
        .alsoAt(wire.device().head().mark(), "lets through " + energy(burns.through()))
        .measured(new Measure(burns.through(), "A²s"), new Measure(burns.stands(), "A²s"))
        .changes(stretch.sizeMarks(), size(burns.through(), wire))
        .todo(
            "Take %s or thicker in %s, or a device whose maker states less."
                .formatted(size(burns.through(), wire), stretch.name()),
            Basis.of(burns.cited()));
  }

  /** Thicker wire settles it, where there is one that stands what may pass. */
  private Outcome left(
      Subject subject,
      Stretch stretch,
      ConductorHeating.Conductor wire,
      String open,
      Answer.Open left) {
    String stands = energy(ShortCircuit.stands(wire.k().value(), wire.mm2()));
    if (left.through().isPresent()) {
      double through = left.through().getAsDouble();
      return subject.unsettled(
          left.missing(),
          "%s %s That would be %s; k²S² of the wire is %s."
              .formatted(open, left.words(), energy(through), stands),
          "Take %s in %s, which stands it, or a device of a lower rating or of curve B."
              .formatted(size(through, wire), stretch.name()));
    }
    return left.settledBy().isEmpty()
        ? subject.undecided(left.missing(), open + " " + left.words())
        : subject.unsettled(
            left.missing(),
            "%s %s k²S² of the wire is %s.".formatted(open, left.words(), stands),
            left.settledBy());
  }

  private String size(double through, ConductorHeating.Conductor wire) {
    double mm2 = Math.sqrt(through) / wire.k().value();
    return Printed.of(Series.wireOf(mm2, tables).orElse(mm2), Dimension.AREA);
  }

  /** What hinders a fuse from breaking a short-circuit; empty if nothing does. */
  private Optional<Outcome> breaking(Subject subject, Part.Fuse fuse, Written<Quantity> fault) {
    if (fuse.breakingCapacity().isEmpty()) {
      return Optional.of(
          subject.undecided(
              "breaking-capacity of " + fuse.name(),
              "Whether %s breaks a short-circuit is open: its breaking capacity is not written."
                  .formatted(fuse.name())));
    }
    double has = fuse.breakingCapacity().get().value().nominal();
    double needs = fault.value().high();
    if (!Comparison.exceeds(needs, has)) {
      return Optional.empty();
    }
    Printed.Pair pair = Printed.pair(needs, has, Dimension.CURRENT);
    return Optional.of(
        subject.unsettled(
            "what %s lets through at %s".formatted(fuse.name(), pair.value()),
            "The mains can give %s and %s breaks %s: what it lets through above that is open (protection.breaking-capacity)."
                .formatted(pair.value(), fuse.name(), pair.limit()),
            "Take a fuse that breaks %s or more.".formatted(pair.value())));
  }

  /** True if the fuse protects these wires from overload as well. */
  private boolean isLimited(Stretch stretch, Part.Fuse fuse, Derated may) {
    OptionalDouble rating = Overcurrent.rating(fuse);
    return rating.isPresent()
        && !Comparison.exceeds(
            rating.getAsDouble(), LargestDevice.of(stretch, List.of(fuse), may, tables).amps());
  }

  /** What a device that breaks every short-circuit protects from overload it protects from both. */
  private Outcome overloaded(
      Subject subject, Stretch stretch, Part.Fuse fuse, Written<Quantity> fault, Derated may) {
    double has = fuse.breakingCapacity().orElseThrow().value().nominal();
    Printed.Pair pair = Printed.pair(fault.value().high(), has, Dimension.CURRENT);
    return subject.satisfied(
        "%s breaks %s and the fault current is %s; it protects %s from overload, and so from a short-circuit too (435.1)."
            .formatted(fuse.name(), pair.limit(), pair.value(), stretch.words()),
        new Measure(fault.value().high(), "A"),
        new Measure(has, "A"),
        Basis.of(LargestDevice.of(stretch, List.of(fuse), may, tables).cited())
            .and(new Basis(List.of(tables.source("iec-60364-4-43").cite()), Standing.FROM_MEMORY)));
  }

  /** {@code 29 756 A²s}. */
  static String energy(double a2s) {
    return String.format(Locale.ROOT, "%,d A²s", Math.round(a2s)).replace(',', ' ');
  }
}
