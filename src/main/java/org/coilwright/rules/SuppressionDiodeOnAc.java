package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.circuit.Branch.Coil;
import org.coilwright.circuit.Branch.DiodeBranch;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** A diode lies across a coil that alternating current feeds. */
final class SuppressionDiodeOnAc implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("suppression.diode-on-ac", Weight.STOP, "diode across an AC coil")
          .what(
              "Raised for each diode, wired or built in, across a coil that alternating current"
                  + " reaches; and across a coil rated for it where nothing reaches the coil.")
          .why(
              "Every other half cycle the diode is a short-circuit across the supply: it bursts or"
                  + " opens the fuse when the contact closes.")
          .remedy(
              "Take the diode off; on an AC coil use a varistor or an RC snubber made for its"
                  + " voltage, if anything.")
          .blind("Rectifier bridges in front of a coil: they are not a part of the format.")
          .sources("circuit-theory")
          .consequenceOf("coil.wrong-current-kind", "separation.mains-meets-elv");

  private final Cited<Double> tolerance;
  private final Basis basis;

  SuppressionDiodeOnAc(Tables tables) {
    tolerance = tables.figure("coil.resistance-tolerance");
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    CoilWiring wiring = CoilWiring.of(study, tolerance.value());
    for (FedCoil feed : wiring.fed()) {
      if (feed.kind() == CurrentKind.AC) {
        outcomes.addAll(check(feed.coil(), wiring.across(feed.coil())));
      }
    }
    return outcomes;
  }

  private List<Outcome> check(Coil coil, AcrossCoil across) {
    List<Outcome> outcomes = new ArrayList<>();
    for (DiodeBranch diode : across.diodes()) {
      outcomes.add(
          shorted(
              Subject.of(FACTS, diode.mark(), diode.part(), coil.part()),
              diode.part(),
              coil,
              "lies across " + coil.part(),
              "Take %s off.".formatted(diode.part())));
    }
    if (across.hasBuiltIn(AcrossCoil.DIODE)) {
      Mark mark = across.builtIn().map(Written::mark).orElse(coil.mark());
      outcomes.add(
          shorted(
              Subject.of(FACTS, mark, coil.part()),
              "the diode built into " + coil.part(),
              coil,
              "built into " + coil.part(),
              "Use a relay without a diode, or feed it with direct current."));
    }
    if (outcomes.isEmpty()) {
      outcomes.add(
          Subject.of(FACTS, coil.mark(), coil.part())
              .satisfied("No diode lies across the AC coil of %s.".formatted(coil.part()), basis));
    }
    return outcomes;
  }

  private Outcome shorted(Subject subject, String diode, Coil coil, String label, String remedy) {
    Written<?> volts = coil.spec().voltage();
    return subject
        .violated(
            "diode across the AC coil of %s".formatted(coil.part()),
            "Alternating current feeds %s (%s), and %s conducts every other half cycle."
                .formatted(coil.part(), volts.text(), diode),
            label)
        .alsoAt(volts.mark(), "fed with alternating current")
        .todo(
            remedy + " On AC a varistor or an RC snubber made for the voltage does the job.",
            basis);
  }
}
