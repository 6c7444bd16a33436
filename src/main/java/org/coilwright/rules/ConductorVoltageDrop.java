package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.ConductorSize;
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
import org.coilwright.sizing.LoadCurrent;
import org.coilwright.sizing.PowerSide;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** The wires to a load lose more voltage than the limit. */
final class ConductorVoltageDrop implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("conductor.voltage-drop", Weight.FIX, "too much voltage lost on the way")
          .what(
              "Multiplies the load's nominal current by the resistance of all wires from the mains"
                  + " to it, as warm as their insulation allows (PVC 70 °C), there and back; √3"
                  + " times one line with three lines. Held against the share of the nominal"
                  + " voltage that the practice allows.")
          .why("The load gives less than it should, and the loss heats the cable.")
          .remedy("Take thicker wire, or feed the load from nearer.")
          .blind("What is lost before the mains of this circuit; the reactance of thick cables.")
          .sources("iec-60364-5-52-tables", "nec", "iec-60228")
          .consequenceOf("wiring.short-circuit")
          .carriedBy("load.wrong-voltage");

  private final PowerSides sides;
  private final Tables tables;

  ConductorVoltageDrop(PowerSides sides) {
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
    for (Part load : side.mainsLoads()) {
      Subject subject = Subject.of(FACTS, load.head().mark(), load.name());
      outcomes.add(
          side.current(load)
              .map(c -> judge(subject, side, load, c))
              .orElseGet(
                  () ->
                      subject.undecided(
                          LoadCurrent.missing(load),
                          "What the wires to %s lose is open: its power is not known."
                              .formatted(load.name()))));
    }
    return ByShaft.open(study, sides, outcomes);
  }

  private Outcome judge(Subject subject, PowerSide side, Part load, LoadCurrent current) {
    Found<WayLoss> found = WayLoss.of(side, load, current, tables);
    if (found instanceof Found.Unknown<WayLoss> unknown) {
      return subject.undecided(
          unknown.missing(),
          "What the wires to %s lose is open. %s".formatted(load.name(), unknown.why()));
    }
    WayLoss loss = found.known().orElseThrow();
    boolean nec = side.circuit().netlist().site().practice().value() == Site.Practice.NEC;
    Cited<Double> limit =
        tables
            .lookup(
                "voltage-drop-limits",
                Map.of("supply", nec ? "nec-branch" : "public"),
                load.head().is().equals("lighting") ? "lighting" : "other")
            .orElseThrow();
    return verdict(subject, load, current, loss, limit);
  }

  private Outcome verdict(
      Subject subject, Part load, LoadCurrent current, WayLoss loss, Cited<Double> limit) {
    double may = limit.value() * current.volts();
    Printed.Pair pair = Printed.pair(loss.volts(), may, Dimension.VOLTAGE);
    String sum =
        "%s%s × %s at %s over %s = %s, %s of %s"
            .formatted(
                loss.three() ? "√3 × " : "",
                Printed.of(current.nominal(), Dimension.CURRENT),
                Printed.of(loss.ohms(), Dimension.RESISTANCE),
                Printed.of(loss.celsius(), Dimension.TEMPERATURE),
                loss.metres(),
                Printed.volts(loss.volts()),
                Printed.percent(loss.volts() / current.volts()),
                Printed.volts(current.volts()));
    Measure value = new Measure(loss.volts(), "V");
    Measure held = new Measure(may, "V");
    List<Cited<?>> cited = new ArrayList<>(loss.cited());
    cited.add(limit);
    Basis basis = Basis.of(cited);
    if (!Comparison.exceeds(loss.volts(), may)) {
      return subject.satisfied(
          "The wires to %s lose %s (%s) and may lose %s."
              .formatted(load.name(), pair.value(), sum, pair.limit()),
          value,
          held,
          basis);
    }
    Subject.Finding finding =
        subject
            .violated(
                "too much voltage is lost on the way to %s".formatted(load.name()),
                "The wires lose %s and may lose %s (%s): too much by %s."
                    .formatted(
                        pair.value(), pair.limit(), Printed.percent(limit.value()), pair.apart()),
                "gets %s less".formatted(pair.value()))
            .measured(value, held)
            .detail("Loss: %s.".formatted(sum));
    String where =
        loss.longest()
            .map(
                w -> {
                  finding.alsoAt(
                      w.run().flatMap(Run::size).map(Written::mark).orElse(w.mark()), "loses most");
                  return w.run().map(Run::name).orElse("this wire");
                })
            .orElse("the wires");
    Optional<ConductorSize> thicker = loss.thicker(current.volts(), may, tables);
    thicker.ifPresent(
        size ->
            finding.change(
                loss.longest().flatMap(w -> w.wire().size().or(() -> w.run().flatMap(Run::size))),
                Printed.of(size)));
    return finding.todo(
        "Take %s in %s, or feed the load from nearer."
            .formatted(thicker.map(Printed::of).orElse("thicker wire"), where),
        basis);
  }
}
