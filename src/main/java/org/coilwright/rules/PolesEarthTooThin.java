package org.coilwright.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.ConductorSize;
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
import org.coilwright.sizing.Core;
import org.coilwright.sizing.Found;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** The protective conductor of a load is thinner than its lines or its device ask for. */
final class PolesEarthTooThin implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("poles.earth-too-thin", Weight.STOP, "protective conductor too thin")
          .what(
              "Holds each wire in the protective conductor of each mains load, and of each"
                  + " controller and supply with a PE among its mains pins, against the size that"
                  + " goes with the thickest line beside it, of another metal by the ratio of k"
                  + " (with practice nec: with the device, and as much thicker as the lines are"
                  + " thicker than they need be). One that lies apart from its lines has 2.5 mm² at"
                  + " least, 4 mm² where nothing protects it. Its k²S² is held against what an"
                  + " earth fault drives through it until the device opens.")
          .why(
              "In an earth fault it carries what the lines carry: if it parts first, the case stays"
                  + " live and no device opens.")
          .remedy("Take a protective conductor of the size of its lines.")
          .blind(
              "What an earth fault drives through aluminium; metal conduit as protective conductor;"
                  + " a residual-current device, which opens sooner.")
          .sources("iec-60364-5-54", "iec-60364-4-43", "nec")
          .consequenceOf("poles.earth-missing");

  private final PowerSides sides;
  private final Tables tables;

  PolesEarthTooThin(PowerSides sides) {
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
    for (Earthing earthing : Earthing.ofLoadsAndInputs(study)) {
      if (earthing.byWire() && earthing.way().isPresent()) {
        judge(earthing, earthing.way().get(), sides.of(study)).ifPresent(outcomes::add);
      }
    }
    return outcomes;
  }

  private Optional<Outcome> judge(Earthing earthing, Path back, PowerSides.Seen seen) {
    String load = earthing.load().name();
    Subject subject = Subject.of(FACTS, earthing.load().head().mark(), load);
    String open = "Whether the protective conductor of %s is thick enough is open.".formatted(load);
    List<Conductor> wires = new ArrayList<>();
    for (Branch branch : back.branches()) {
      if (branch instanceof Conductor wire) {
        if (wire.size().isEmpty() || (wire.bridge() && wire.wire().size().isEmpty())) {
          return Optional.of(
              subject.undecided(
                  "size of " + EarthLoop.name(wire),
                  open + " The size of %s is not written.".formatted(EarthLoop.name(wire))));
        }
        if (wire.length().isEmpty() || wire.bridge()) {
          return Optional.of(
              subject.undecided(
                  "length of " + EarthLoop.name(wire),
                  open + " The length of %s is not written.".formatted(EarthLoop.name(wire))));
        }
        wires.add(wire);
      }
    }
    // a bar that is the mains' own has no wire to judge
    List<Outcome> each =
        wires.stream()
            .sorted(Comparator.comparingDouble(EarthSize::area))
            .map(
                wire ->
                    judge(
                        new Subject(FACTS, mark(wire), List.of(load)),
                        open,
                        wire,
                        back,
                        earthing,
                        seen))
            .toList();
    return each.stream()
        .filter(Outcome.Violated.class::isInstance)
        .findFirst()
        .or(() -> each.stream().filter(Outcome.Undecided.class::isInstance).findFirst())
        .or(() -> each.stream().findFirst());
  }

  private static Mark mark(Conductor wire) {
    return sizeOf(wire).map(Written::mark).orElse(wire.mark());
  }

  private static Optional<Written<ConductorSize>> sizeOf(Conductor wire) {
    return wire.wire().size().or(() -> wire.run().flatMap(Run::size));
  }

  private Outcome judge(
      Subject subject,
      String open,
      Conductor thinnest,
      Path back,
      Earthing earthing,
      PowerSides.Seen seen) {
    Found<EarthSize> least = EarthSize.of(earthing.load(), thinnest, seen, tables);
    if (least instanceof Found.Unknown<EarthSize> unknown) {
      return Unknowns.outcome(subject, open, unknown);
    }
    EarthSize asked = least.known().orElseThrow();
    double has = EarthSize.area(thinnest);
    Optional<Answer> heat = heat(thinnest, asked.device(), back, earthing.load(), seen);
    Measure value = new Measure(has, "mm²");
    Measure limit = new Measure(asked.size().mm2(), "mm²");
    String size = thinnest.size().map(Printed::of).orElse("");
    List<Cited<?>> cited = new ArrayList<>(List.of(asked.cited()));
    if (heat.isPresent() && heat.get() instanceof Answer.Burns burns) {
      cited.addAll(burns.cited());
      return subject
          .violated(
              "the protective conductor of %s burns in an earth fault"
                  .formatted(subject.at().get(0)),
              "%s lets through up to %s; the %s of %s stand %s."
                  .formatted(
                      asked.device().name(),
                      energy(burns.through()),
                      size,
                      EarthLoop.name(thinnest),
                      energy(burns.stands())),
              "stands " + energy(burns.stands()))
          .alsoAt(asked.device().head().mark(), "lets through " + energy(burns.through()))
          .measured(new Measure(burns.through(), "A²s"), new Measure(burns.stands(), "A²s"))
          .change(sizeOf(thinnest), Printed.of(asked.size()))
          .todo(
              "Take %s in %s.".formatted(Printed.of(asked.size()), EarthLoop.name(thinnest)),
              Basis.of(cited));
    }
    if (!Comparison.fallsShort(has, asked.size().mm2())) {
      return subject.satisfied(
          "The protective conductor of %s has %s in %s and needs %s (%s)."
              .formatted(
                  subject.at().get(0),
                  size,
                  EarthLoop.name(thinnest),
                  Printed.of(asked.size()),
                  asked.words()),
          value,
          limit,
          Basis.of(cited));
    }
    return subject
        .violated(
            "the protective conductor of %s is too thin".formatted(subject.at().get(0)),
            "It has %s in %s and needs %s (%s)."
                .formatted(size, EarthLoop.name(thinnest), Printed.of(asked.size()), asked.words()),
            "has " + size)
        .alsoAt(earthing.load().head().mark(), "protects this")
        .lighter(Weight.FIX)
        .measured(value, limit)
        .detail(
            heat.filter(Answer.Stands.class::isInstance)
                .map(any -> "It stands what an earth fault drives through it (543.1.2).")
                .orElse("That it stands an earth fault is not proven either."))
        .change(sizeOf(thinnest), Printed.of(asked.size()))
        .todo(
            "Take %s in %s.".formatted(Printed.of(asked.size()), EarthLoop.name(thinnest)),
            Basis.of(cited));
  }

  /** From a fault at the load to one at the mains; empty where too little is known. */
  private Optional<Answer> heat(
      Conductor wire, Part device, Path back, Part load, PowerSides.Seen seen) {
    Site site = seen.side().circuit().netlist().site();
    Optional<Written<Quantity>> fault = site.mains().flatMap(Site.MainsSupply::faultCurrent);
    Optional<EarthLoop> loop = EarthLoop.of(seen.side(), load, back, tables).known();
    Optional<Cited<Double>> k =
        wire.size().flatMap(s -> Core.of(wire).shortCircuitFactor(s, tables));
    if (fault.isEmpty() || loop.isEmpty() || k.isEmpty()) {
      return Optional.empty();
    }
    double at = loop.get().toEarth() / loop.get().ohms();
    double low = tables.figure("sizing.lowest-voltage").value();
    double least = Math.min(fault.get().value().low(), at * low);
    double most = Math.max(least, Math.min(fault.get().value().high(), at));
    return Optional.of(
        new ConductorHeating(site.practice().value(), tables)
            .judge(
                new ConductorHeating.Conductor(
                    device,
                    least,
                    most,
                    OptionalDouble.empty(),
                    k.get(),
                    EarthSize.area(wire),
                    OptionalDouble.empty())));
  }

  private static String energy(double a2s) {
    return ConductorShortCircuit.energy(a2s);
  }
}
