package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Site;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/**
 * Extra-low voltage wires lie in one run with mains wires, and their insulation is not rated for
 * the mains.
 */
final class SeparationSharedRun implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("separation.shared-run", Weight.STOP, "mains in one run with extra-low voltage")
          .what(
              "For each run that holds extra-low voltage wires, gathers the mains wires in it and"
                  + " in the runs it `shares-with`. Every extra-low voltage wire there needs"
                  + " insulation rated for the highest voltage present, at the highest supply: line"
                  + " to line where two lines lie together, otherwise line to earth. The rating is"
                  + " that between conductors: 500 V of a 300/500 V cable.")
          .why(
              "A squeezed or overheated cable then puts mains on wires and terminals that people"
                  + " hold for harmless.")
          .remedy(
              "Give the extra-low voltage wires a run of their own, or insulation for the voltage"
                  + " shown.")
          .blind(
              "Partitions, screens and sheaths between the two, which would do as well; crossings"
                  + " and shared terminal boxes.")
          .sources("iec-60364-5-52", "iec-60364-4-41")
          .consequenceOf("separation.insulation-voltage");

  private final Cited<Double> elvLimit;
  private final Basis basis;

  SeparationSharedRun(Tables tables) {
    elvLimit = tables.figure("separation.elv-dc");
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    Circuit circuit = study.circuit();
    VoltageBands bands = VoltageBands.of(study, elvLimit.value());
    if (bands.mainsTerminals().isEmpty()) {
      return List.of();
    }
    List<Outcome> outcomes = new ArrayList<>();
    for (SharedRun shared : SharedRun.all(circuit, bands)) {
      outcomes.add(check(circuit, bands, shared));
    }
    return outcomes;
  }

  private Outcome check(Circuit circuit, VoltageBands bands, SharedRun shared) {
    Run run = shared.run();
    List<Conductor> mains = shared.mains();
    Subject subject = Subject.of(FACTS, run.mark(), run.name());
    if (mains.isEmpty()) {
      return subject.satisfied(
          "%s holds extra-low voltage alone and shares its way with no mains wire."
              .formatted(run.name()),
          basis);
    }
    if (SharedRun.isUnrated(shared.low())) {
      return subject.undecided(
          "insulation of " + run.name(),
          "%s lies with mains wires; whether its insulation is rated for them is not written."
              .formatted(run.name()));
    }
    VoltageBands.Met met = bands.met(mains);
    Conductor weakest = SharedRun.weakest(shared.low());
    Printed.Pair pair = Printed.pair(SharedRun.rating(weakest), met.highest(), Dimension.VOLTAGE);
    Measure value = new Measure(SharedRun.rating(weakest), "V");
    Measure limit = new Measure(met.highest(), "V");
    if (Comparison.fallsShort(SharedRun.rating(weakest), met.highest())) {
      return new Subject(
              FACTS, WireBundle.insulationMark(weakest), WireBundle.path(run.name(), shared.low()))
          .violated(
              "%s lies with mains and is not insulated for it".formatted(run.name()),
              "Its wires are insulated for %s; %s is present at the highest supply: %s too little."
                  .formatted(pair.value(), pair.limit(), pair.apart()),
              "insulated for " + pair.value())
          .alsoAt(weakest.mark(), "extra-low voltage")
          .alsoAt(mains.get(0).mark(), "mains in the same run")
          .detail(
              "The voltage that counts among the mains wires there is %s.".formatted(met.which()))
          .measured(value, limit)
          .change(WireBundle.insulation(weakest), pair.limit())
          .todo(
              "Give the extra-low voltage wires a run of their own, or use wire insulated for %s or more."
                  .formatted(pair.limit()),
              basis);
    }
    if (circuit.netlist().site().practice().value() == Site.Practice.NEC) {
      return subject.undecided(
          "the class of the control circuit in " + run.name(),
          "Its insulation is enough, but a Class 2 circuit may not share a raceway with power wires at all; the netlist does not say which class %s is wired to (NEC Article 725, from memory: confirm before relying on it)."
              .formatted(run.name()));
    }
    return subject.satisfied(
        "%s lies with mains; its wires are insulated for %s, and %s is present at most (%s)."
            .formatted(run.name(), pair.value(), pair.limit(), met.which()),
        value,
        limit,
        basis);
  }
}
