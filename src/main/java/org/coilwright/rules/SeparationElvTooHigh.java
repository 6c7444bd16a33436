package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Part.Isolation;
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

/** A supply is declared SELV or PELV and its voltage is none. */
final class SeparationElvTooHigh implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("separation.elv-too-high", Weight.STOP, "too high for extra-low voltage")
          .what(
              "Holds the highest voltage of each supply that is declared SELV or PELV against the"
                  + " upper limit of extra-low voltage: the one for smooth direct voltage where"
                  + " `ripple:` is small enough, otherwise the lower one for alternating voltage.")
          .why(
              "People touch SELV and PELV without cover or caution; above the limit the current"
                  + " through a body can kill.")
          .remedy("Use a supply of a lower voltage, or wire and declare the circuit as mains.")
          .blind(
              "Wet places and bare live parts, where the limits are far lower; what the supply"
                  + " gives with one fault inside.")
          .sources("iec-60364-4-41");

  private final Cited<Double> smoothLimit;
  private final Cited<Double> otherLimit;
  private final Cited<Double> smoothUpTo;

  SeparationElvTooHigh(Tables tables) {
    smoothLimit = tables.figure("separation.elv-dc");
    otherLimit = tables.figure("separation.elv-ac");
    smoothUpTo = tables.figure("supply.ripple");
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    for (DirectSupply supply : DirectSupply.of(study.circuit())) {
      supply
          .output()
          .isolation()
          .filter(i -> i.value() != Isolation.NONE)
          .ifPresent(declared -> outcomes.add(check(supply, declared)));
    }
    return outcomes;
  }

  private Outcome check(DirectSupply supply, Written<Isolation> declared) {
    Subject subject = Subject.of(FACTS, supply.mark(), supply.part());
    if (supply.volts().isEmpty()) {
      return subject.undecided(
          supply.missing("voltage"),
          "Whether the output of %s is extra-low voltage is open.".formatted(supply.part()));
    }
    double volts = supply.volts().get().high();
    Optional<Quantity> ripple = supply.output().ripple().map(Written::value);
    boolean between =
        Comparison.exceeds(volts, otherLimit.value())
            && !Comparison.exceeds(volts, smoothLimit.value());
    if (between && ripple.isEmpty()) {
      return subject.undecided(
          supply.missing("ripple"),
          "The output of %s counts as extra-low voltage only if it is smooth, and its ripple is not written."
              .formatted(supply.part()));
    }
    boolean rough =
        ripple.filter(r -> Comparison.exceeds(r.high(), smoothUpTo.value())).isPresent();
    return compare(supply, declared, volts, between && rough);
  }

  private Outcome compare(
      DirectSupply supply, Written<Isolation> declared, double volts, boolean rough) {
    boolean low = !Comparison.exceeds(volts, otherLimit.value());
    Cited<Double> limit = rough || low ? otherLimit : smoothLimit;
    Basis basis = rough || !low ? Basis.of(limit, smoothUpTo) : Basis.of(limit);
    Printed.Pair pair = Printed.pair(volts, limit.value(), Dimension.VOLTAGE);
    Measure value = new Measure(volts, "V");
    Measure held = new Measure(limit.value(), "V");
    Subject subject = Subject.of(FACTS, supply.mark(), supply.part());
    if (Comparison.exceeds(volts, limit.value())) {
      return subject
          .violated(
              "the output of %s is no %s".formatted(supply.part(), declared.text()),
              "It gives up to %s; extra-low voltage ends at %s: %s too much."
                  .formatted(pair.value(), pair.limit(), pair.apart()),
              "up to " + pair.value())
          .alsoAt(declared.mark(), "declared here")
          .detail(
              rough
                  ? "Its ripple is too large for smooth direct voltage, whose limit is %s."
                      .formatted(Printed.volts(smoothLimit.value()))
                  : "")
          .measured(value, held)
          .todo(
              "Use a supply of at most %s, or wire and declare the circuit as mains."
                  .formatted(pair.limit()),
              basis);
    }
    return subject.satisfied(
        "%s is declared %s and gives at most %s; %s is extra-low voltage%s."
            .formatted(
                supply.part(),
                declared.text(),
                pair.value(),
                "up to " + pair.limit(),
                low ? " whatever the ripple" : ""),
        value,
        held,
        basis);
  }
}
