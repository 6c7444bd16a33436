package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.LoadElement;
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
import org.coilwright.sizing.LoadCurrent;
import org.coilwright.sizing.PowerSide;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** A load gets another voltage than it is made for. */
final class LoadWrongVoltage implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("load.wrong-voltage", Weight.STOP, "load on the wrong voltage")
          .what(
              "Compares the power a load takes, at nominal voltage and with everything on that can"
                  + " be, with its rated power: the root of their ratio is the share of its rated"
                  + " voltage that it gets. It may differ by a tenth, and so may the mains rise"
                  + " above their nominal voltage: what is rated for that is made for no more. What"
                  + " the wires alone lose of a network that is right is told by"
                  + " conductor.voltage-drop; too little for a heater is no danger and weighs"
                  + " less.")
          .why("Twice the voltage is four times the power: the element burns out or burns down.")
          .remedy("Connect it to the voltage on its plate, or take one for the voltage there is.")
          .blind("Loads that are on in no state; loads that are no resistance.")
          .sources("iec-60038", "circuit-theory")
          .consequenceOf(
              "wiring.short-circuit",
              "wiring.sneak-path",
              "poles.line-missing",
              "poles.neutral-missing",
              "poles.line-repeated",
              "wiring.loose-end");

  private final PowerSides sides;
  private final Tables tables;

  LoadWrongVoltage(PowerSides sides) {
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
    for (Part load : side.loads()) {
      judge(side, load).ifPresent(outcomes::add);
    }
    return outcomes;
  }

  private static Optional<Written<Quantity>> voltage(Part load) {
    return load instanceof Part.Heater heater
        ? heater.voltage()
        : load instanceof Part.OtherLoad other ? other.voltage() : Optional.empty();
  }

  private Optional<Outcome> judge(PowerSide side, Part load) {
    Optional<Written<Quantity>> written = voltage(load);
    Subject subject =
        Subject.of(FACTS, written.map(Written::mark).orElse(load.head().mark()), load.name());
    double rated =
        side.circuit().branchesOf(load.name()).stream()
            .filter(LoadElement.class::isInstance)
            .map(b -> (LoadElement) b)
            .mapToDouble(e -> e.ratedWatts().orElse(0))
            .sum();
    if (written.isEmpty() || rated == 0) {
      return Optional.of(
          subject.undecided(
              (written.isEmpty() ? "voltage of " : "power of ") + load.name(),
              "Whether %s gets the voltage it is made for is open.".formatted(load.name())));
    }
    return side.current(load)
        .filter(c -> c.watts() > 0)
        .map(c -> judge(subject, side, load, written.get(), rated, c));
  }

  private Outcome judge(
      Subject subject,
      PowerSide side,
      Part load,
      Written<Quantity> written,
      double rated,
      LoadCurrent current) {
    double share = Math.sqrt(current.watts() / rated);
    Cited<Double> band = tables.figure("sizing.rated-voltage-band");
    double gets = share * written.value().nominal();
    Measure value = new Measure(gets, "V");
    Measure limit = new Measure(written.value().nominal(), "V");
    String takes =
        "%s and %s"
            .formatted(
                Printed.of(current.watts(), Dimension.POWER),
                Printed.of(current.nominalAt(gets), Dimension.CURRENT));
    if (Comparison.fallsShort(share, 1 - band.value())
        && isLostOnTheWay(side, load, written.value().nominal(), gets, current, band.value())) {
      return subject.satisfied(
          "%s is rated for %s, and so is its network; %s of it are lost on the way."
              .formatted(load.name(), written.text(), Printed.volts(current.volts() - gets)),
          new Measure(current.volts(), "V"),
          limit,
          Basis.of(band));
    }
    double over = over(side);
    if (Comparison.exceeds(over, 1 + band.value())
        && Comparison.exceeds(share * over, 1 + band.value())
        && !Comparison.exceeds(share, 1 + band.value())) {
      double most = share * over;
      return mainsTooHigh(subject, side, written, most, rated * most * most, band);
    }
    if (!Comparison.exceeds(share, 1 + band.value())
        && !Comparison.fallsShort(share, 1 - band.value())) {
      return subject.satisfied(
          "%s is rated for %s and gets %s: it takes %s."
              .formatted(load.name(), written.text(), Printed.volts(gets), takes),
          value,
          limit,
          Basis.of(band));
    }
    Subject.Finding finding =
        subject
            .violated(
                "%s gets the wrong voltage".formatted(load.name()),
                "It is rated for %s and gets %s: it takes %s instead of %s."
                    .formatted(
                        written.text(),
                        Printed.volts(gets),
                        takes,
                        Printed.of(rated, Dimension.POWER)),
                "rated for " + written.text())
            .measured(value, limit);
    if (share < 1 && load instanceof Part.Heater) {
      // it heats less, and nothing burns
      finding.lighter(Weight.FIX);
    }
    side.waysOf(load).stream()
        .filter(PowerSide.Way::line)
        .findFirst()
        .map(w -> w.path().branches())
        .filter(b -> !b.isEmpty())
        .map(b -> b.get(b.size() - 1))
        .map(Branch::mark)
        .ifPresent(m -> finding.alsoAt(m, "brings " + Printed.volts(gets)));
    finding.change(written.mark(), Printed.volts(gets));
    return finding.todo(
        "Connect it to %s, or take one rated for %s."
            .formatted(written.text(), Printed.volts(gets)),
        Basis.of(band));
  }

  /** How far the mains may rise above their nominal voltage, as written; 1 if nothing is. */
  private static double over(PowerSide side) {
    return side.circuit()
        .netlist()
        .site()
        .mains()
        .map(m -> m.voltage().value())
        .map(v -> v.high() / v.nominal())
        .orElse(1.0);
  }

  private Outcome mainsTooHigh(
      Subject subject,
      PowerSide side,
      Written<Quantity> written,
      double share,
      double watts,
      Cited<Double> band) {
    double most = share * written.value().nominal();
    Subject.Finding finding =
        subject
            .violated(
                "%s may get too high a voltage".formatted(subject.at().get(0)),
                "It is rated for %s, and by the tolerance of the mains it may get %s: it then takes %s. Parts are made for networks that rise no more than a tenth."
                    .formatted(
                        written.text(), Printed.volts(most), Printed.of(watts, Dimension.POWER)),
                "rated for " + written.text())
            .measured(new Measure(most, "V"), new Measure(written.value().nominal(), "V"))
            .lighter(Weight.FIX);
    side.circuit()
        .netlist()
        .site()
        .mains()
        .ifPresent(m -> finding.alsoAt(m.voltage().mark(), "may rise that far"));
    String wanted = Printed.atLeast(most / (1 + band.value()), Dimension.VOLTAGE);
    return finding
        .change(written.mark(), wanted)
        .todo(
            "Ask the utility whether the mains really rise that far. If they do, take a load rated for %s, and contacts and a controller whose makers allow it."
                .formatted(wanted),
            Basis.of(band));
  }

  /** True if the network is right and the wires alone lose what is missing. */
  private boolean isLostOnTheWay(
      PowerSide side, Part load, double rated, double gets, LoadCurrent current, double band) {
    boolean right = !Comparison.exceeds(Math.abs(current.volts() - rated), band * rated);
    return right
        && WayLoss.of(side, load, current, tables)
            .known()
            .filter(loss -> !Comparison.fallsShort(loss.volts(), current.volts() - gets))
            .isPresent();
  }
}
