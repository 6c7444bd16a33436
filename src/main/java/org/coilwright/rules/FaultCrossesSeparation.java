package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.InsulationSpec;
import org.coilwright.netlist.Run;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.FaultWords;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Fault;
import org.coilwright.solve.Faults;
import org.coilwright.solve.Faults.Crossed;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** One fault brings mains to the extra-low voltage side. */
final class FaultCrossesSeparation implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of(
              "fault.crosses-separation", Weight.STOP, "one fault brings mains to the low side")
          .what(
              "Breaks down each relay's insulation between coil and contacts and joins the cores of"
                  + " each run, one at a time, and looks whether mains then reaches an extra-low"
                  + " voltage circuit. What is made so that one fault does not do this does not"
                  + " count: double or reinforced insulation, by the tables of"
                  + " `separation.relay-insulation`; cores that each carry insulation for the"
                  + " highest voltage present.")
          .why(
              "People touch extra-low voltage without a thought, and nothing trips when mains"
                  + " arrives there.")
          .remedy(
              "Put two layers between the two, each good for the mains: reinforced insulation in"
                  + " the relay, runs of their own or full insulation on every core.")
          .blind(
              "Faults inside a controller or a power supply, between the contacts of one relay, and"
                  + " in sockets, glands and boxes.")
          .sources("iec-60364-4-41", "iec-60664-1", "iec-60364-5-52")
          .consequenceOf("separation.relay-insulation", "separation.shared-run");

  private final Cited<Double> elvLimit;
  private final CoilBarrier barrier;
  private final Basis protection;
  private final Basis cables;

  FaultCrossesSeparation(Tables tables) {
    elvLimit = tables.figure("separation.elv-dc");
    barrier = new CoilBarrier(tables);
    protection = new Basis(List.of(tables.source("iec-60364-4-41").cite()), Standing.PUBLISHED);
    cables =
        protection.and(
            new Basis(List.of(tables.source("iec-60364-5-52").cite()), Standing.PUBLISHED));
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
    Map<String, Crossed> byRun = new LinkedHashMap<>();
    for (Crossed crossed : Faults.crossing(study)) {
      Fault fault = crossed.fault();
      if (fault.kind() == Fault.Kind.INSULATION_FAILED) {
        if (circuit.netlist().parts().get(fault.at().get(0)) instanceof Part.Relay relay) {
          outcomes.add(relay(circuit, bands, relay, crossed));
        }
      } else if (fault.kind() == Fault.Kind.CORES_JOINED) {
        circuit
            .branch(fault.at().get(0))
            .filter(Conductor.class::isInstance)
            .flatMap(wire -> ((Conductor) wire).run())
            .ifPresent(run -> byRun.putIfAbsent(run.name(), crossed));
      }
    }
    for (SharedRun shared : SharedRun.all(circuit, bands)) {
      Crossed crossed = byRun.get(shared.run().name());
      if (crossed != null && !shared.mainsWithin().isEmpty()) {
        outcomes.add(run(bands, shared, crossed));
      }
    }
    return outcomes;
  }

  private Outcome relay(Circuit circuit, VoltageBands bands, Part.Relay relay, Crossed crossed) {
    String name = relay.name();
    String happens = happens(crossed);
    Optional<InsulationSpec> spec = relay.insulation();
    if (spec.isEmpty()) {
      return Subject.of(FACTS, relay.head().mark(), name)
          .undecided(
              "insulation of " + name,
              "%s; whether its insulation is made so that one fault does not do this is not written."
                  .formatted(happens));
    }
    InsulationGrade grade = barrier.grade(circuit, bands, spec.get());
    Subject subject = Subject.of(FACTS, spec.get().mark(), name);
    Basis basis = protection.and(Basis.of(grade.figures()));
    if (!grade.faults().isEmpty()) {
      return Subject.of(FACTS, grade.faults().get(0).mark(), name)
          .violated(
              "one fault in %s brings mains to the low side".formatted(name),
              "%s. %s"
                  .formatted(
                      happens,
                      String.join(
                          " ", grade.faults().stream().map(InsulationGrade.Fault::why).toList())),
              grade.faults().get(0).label())
          .alsoAt(crossed.fault().mark(), "breaks down to the contacts")
          .todo(
              "Use a part whose maker states reinforced insulation between coil and contacts.",
              basis);
    }
    if (!grade.isReinforced()) {
      return subject.undecided(
          "insulation.%s of %s".formatted(grade.decidingKey(), name),
          "%s; what is written of its insulation does not show that one fault cannot do this%s."
              .formatted(happens, grade.remark()));
    }
    return subject.satisfied(
        "%s is made so that one fault does not join coil and contacts: %s%s."
            .formatted(name, String.join("; ", grade.proofs()), grade.remark()),
        basis);
  }

  private Outcome run(VoltageBands bands, SharedRun shared, Crossed crossed) {
    Run run = shared.run();
    String happens = happens(crossed);
    List<Conductor> cores = new ArrayList<>(shared.low());
    cores.addAll(shared.mainsWithin());
    Subject subject = Subject.of(FACTS, run.mark(), run.name());
    if (SharedRun.isUnrated(cores)) {
      return subject.undecided(
          "insulation of " + run.name(),
          "%s; whether every core there is insulated for that is not written.".formatted(happens));
    }
    Conductor weakest = SharedRun.weakest(cores);
    double highest = bands.met(shared.mains()).highest();
    Printed.Pair pair = Printed.pair(SharedRun.rating(weakest), highest, Dimension.VOLTAGE);
    if (Comparison.fallsShort(SharedRun.rating(weakest), highest)) {
      return Subject.of(FACTS, WireBundle.insulationMark(weakest), run.name(), weakest.id())
          .violated(
              "one fault in %s brings mains to the low side".formatted(run.name()),
              "%s. The core from %s is insulated for %s, and %s is present at the highest supply: %s too little, so that one fault is enough."
                  .formatted(
                      happens, WireBundle.ends(weakest), pair.value(), pair.limit(), pair.apart()),
              "insulated for " + pair.value())
          .alsoAt(shared.low().get(0).mark(), "extra-low voltage")
          .alsoAt(shared.mainsWithin().get(0).mark(), "mains in the same run")
          .change(WireBundle.insulation(weakest), pair.limit())
          .todo(
              "Give the extra-low voltage wires a run of their own, or use wire insulated for %s or more throughout."
                  .formatted(pair.limit()),
              cables);
    }
    return subject.satisfied(
        "Every core of %s is insulated for %s or more, and %s is present at most: one fault does not join extra-low voltage and mains there."
            .formatted(run.name(), pair.value(), pair.limit()),
        cables);
  }

  private static String happens(Crossed crossed) {
    return "If %s, %s"
        .formatted(crossed.fault().inWords(), FaultWords.crossing(crossed.crossing()));
  }
}
