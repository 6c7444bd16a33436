package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Coil;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.InsulationSpec;
import org.coilwright.netlist.Written;
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

/** A relay stands between extra-low voltage and mains without reinforced insulation. */
final class SeparationRelayInsulation implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("separation.relay-insulation", Weight.STOP, "relay does not separate")
          .what(
              "For each relay with extra-low voltage on one side (coil or contacts) and mains on"
                  + " the other, wants insulation stated as reinforced, or a test voltage as"
                  + " reinforced insulation has, or clearance and creepage distance by the tables"
                  + " for overvoltage category III, corrected for altitude. Whatever is stated and"
                  + " too small raises it, under every practice and beside the word reinforced too;"
                  + " above 2000 m only distances count.")
          .why(
              "Basic insulation is one layer: when it fails, mains stands on the control wires and"
                  + " nothing trips.")
          .remedy(
              "Use a relay or contactor whose maker states reinforced insulation (protective"
                  + " separation) between coil and contacts at this mains voltage.")
          .blind(
              "Terminals and wires beside the relay, and sockets; between two contacts of one"
                  + " relay it goes by the word at `between-poles` alone.")
          .sources("iec-60364-4-41", "iec-60664-1", "relay-insulation-data");

  private final Cited<Double> elvLimit;
  private final CoilBarrier barrier;
  private final Basis requirement;

  SeparationRelayInsulation(Tables tables) {
    elvLimit = tables.figure("separation.elv-dc");
    barrier = new CoilBarrier(tables);
    requirement = new Basis(List.of(tables.source("iec-60364-4-41").cite()), Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    Circuit circuit = study.circuit();
    VoltageBands bands = VoltageBands.of(study, elvLimit.value());
    List<Outcome> outcomes = new ArrayList<>();
    if (bands.mainsTerminals().isEmpty()) {
      return outcomes;
    }
    for (Part part : circuit.netlist().parts().values()) {
      if (part instanceof Part.Relay relay) {
        checkRelay(circuit, bands, relay, outcomes);
      } else if (part instanceof Part.Controller controller) {
        checkController(circuit, bands, controller, outcomes);
      }
    }
    return outcomes;
  }

  private void checkRelay(
      Circuit circuit, VoltageBands bands, Part.Relay relay, List<Outcome> outcomes) {
    List<Branch> coil = of(circuit, relay.name(), Coil.class);
    List<Branch> contacts = of(circuit, relay.name(), Contact.class);
    Optional<Branch> mainsCoil = coil.stream().filter(bands::onMains).findFirst();
    Optional<Branch> mainsContact = contacts.stream().filter(bands::onMains).findFirst();
    Optional<Branch> elvCoil = coil.stream().filter(b -> isElv(bands, b)).findFirst();
    Optional<Branch> elvContact = contacts.stream().filter(b -> isElv(bands, b)).findFirst();
    if (elvCoil.isPresent() && mainsContact.isPresent()) {
      outcomes.add(judge(circuit, bands, relay, elvCoil.get(), mainsContact.get()));
    } else if (mainsCoil.isPresent() && elvContact.isPresent()) {
      outcomes.add(judge(circuit, bands, relay, elvContact.get(), mainsCoil.get()));
    }
    if (mainsContact.isPresent() && elvContact.isPresent()) {
      outcomes.add(beside(relay, elvContact.get(), mainsContact.get()));
    }
  }

  /** Two contacts side by side: only the word of the maker tells, the figures are of the coil. */
  private Outcome beside(Part.Relay relay, Branch low, Branch mains) {
    Optional<Written<String>> word = relay.insulation().flatMap(InsulationSpec::betweenPoles);
    String sides =
        "%s has mains at %s and extra-low voltage at %s, side by side"
            .formatted(relay.name(), mains.id(), low.id());
    if (word.isEmpty()) {
      return Subject.of(FACTS, low.mark(), relay.name())
          .undecided(
              "insulation.between-poles of " + relay.name(),
              sides + "; nothing is written of the insulation between them.");
    }
    Subject subject = Subject.of(FACTS, word.get().mark(), relay.name());
    if (InsulationGrade.isReinforced(word.get())) {
      return subject.satisfied(
          "%s, with insulation stated as %s between them.".formatted(sides, word.get().text()),
          requirement);
    }
    return subject
        .violated(
            "%s does not keep mains off the extra-low voltage side".formatted(relay.name()),
            "%s, and its insulation between them is stated as %s."
                .formatted(sides, word.get().text()),
            "reinforced is needed")
        .alsoAt(low.mark(), "extra-low voltage")
        .alsoAt(mains.mark(), "mains")
        .change(word, "reinforced")
        .todo(
            "Switch the two with a relay each, or use one whose maker states reinforced insulation"
                + " between its contacts.",
            requirement);
  }

  private void checkController(
      Circuit circuit, VoltageBands bands, Part.Controller controller, List<Outcome> outcomes) {
    boolean lowSide =
        bands.supplies().stream()
            .filter(s -> !bands.onMains(s.source().to()))
            .anyMatch(s -> s.part().equals(controller.name()));
    of(circuit, controller.name(), Contact.class).stream()
        .filter(c -> lowSide && bands.onMains(c))
        .forEach(c -> outcomes.add(output(circuit, bands, controller, c)));
  }

  private Outcome output(
      Circuit circuit, VoltageBands bands, Part.Controller controller, Branch output) {
    String name = controller.name();
    String sides =
        "Output %s is on mains and the supply of %s is extra-low voltage"
            .formatted(output.id(), name);
    Optional<InsulationGrade> grade =
        controller.insulation().map(spec -> barrier.gradeOfPoles(circuit, bands, spec));
    Subject subject = Subject.of(FACTS, output.mark(), name);
    Optional<InsulationGrade.Fault> fault = grade.flatMap(g -> g.faults().stream().findFirst());
    if (fault.isPresent()) {
      return Subject.of(FACTS, fault.get().mark(), name)
          .violated(
              "%s does not keep mains off the extra-low voltage side".formatted(name),
              sides + ". " + fault.get().why(),
              fault.get().label())
          .alsoAt(output.mark(), "mains")
          .todo(
              "Let this output switch a relay at extra-low voltage, and that the mains.",
              requirement.and(Basis.of(grade.get().figures())));
    }
    return grade
        .filter(InsulationGrade::isReinforced)
        .<Outcome>map(
            g ->
                subject.satisfied(
                    "%s; they are kept apart: %s%s."
                        .formatted(sides, String.join("; ", g.proofs()), g.remark()),
                    basis(g)))
        .orElseGet(
            () ->
                subject.undecided(
                    "insulation.between-poles of " + name,
                    sides + "; nothing written shows the insulation between them."));
  }

  private static List<Branch> of(Circuit circuit, String part, Class<? extends Branch> kind) {
    return circuit.branchesOf(part).stream().filter(kind::isInstance).toList();
  }

  private static boolean isElv(VoltageBands bands, Branch branch) {
    return bands.elvAt(branch.from()).isPresent() || bands.elvAt(branch.to()).isPresent();
  }

  private Outcome judge(
      Circuit circuit, VoltageBands bands, Part.Relay relay, Branch low, Branch mains) {
    String sides = "extra-low voltage at %s and mains at %s".formatted(low.id(), mains.id());
    Optional<InsulationSpec> spec = relay.insulation();
    if (spec.isEmpty()) {
      return Subject.of(FACTS, relay.head().mark(), relay.name())
          .undecided(
              "insulation of " + relay.name(),
              "%s has %s, and nothing is written of the insulation between them."
                  .formatted(relay.name(), sides));
    }
    Mark mark = spec.get().mark();
    InsulationGrade grade = barrier.grade(circuit, bands, spec.get());
    if (!grade.faults().isEmpty()) {
      return refused(grade, relay, sides, low, mains);
    }
    Subject subject = Subject.of(FACTS, mark, relay.name());
    if (!grade.isReinforced()) {
      return subject.undecided(
          "insulation.%s of %s".formatted(grade.decidingKey(), relay.name()),
          "%s has %s, and what is written of its insulation does not show that it keeps them apart%s."
              .formatted(relay.name(), sides, grade.remark()));
    }
    String sentence =
        "%s keeps %s apart: %s%s."
            .formatted(relay.name(), sides, String.join("; ", grade.proofs()), grade.remark());
    return grade
        .measured()
        .map(d -> subject.satisfied(sentence, d.value(), d.limit(), basis(grade)))
        .orElseGet(() -> subject.satisfied(sentence, basis(grade)));
  }

  private Outcome refused(
      InsulationGrade grade, Part.Relay relay, String sides, Branch low, Branch mains) {
    Subject.Finding finding =
        Subject.of(FACTS, grade.faults().get(0).mark(), relay.name())
            .violated(
                "%s does not keep mains off the extra-low voltage side".formatted(relay.name()),
                "It has %s. %s"
                    .formatted(
                        sides,
                        String.join(
                            " ", grade.faults().stream().map(InsulationGrade.Fault::why).toList())),
                grade.faults().get(0).label());
    grade.faults().forEach(f -> finding.alsoAt(f.mark(), f.label()));
    finding.alsoAt(low.mark(), "extra-low voltage").alsoAt(mains.mark(), "mains");
    grade.faults().stream()
        .flatMap(f -> f.datum().stream())
        .findFirst()
        .ifPresent(d -> finding.measured(d.value(), d.limit()));
    return finding.todo(
        "Use a part whose maker states reinforced insulation (protective separation) between coil"
            + " and contacts for this mains.",
        basis(grade));
  }

  /**
   * That reinforced insulation is asked for is no figure, and there is no stricter grade: a part
   * that has it does not rest on memory. The distances do, by the rules that lead to them.
   */
  private Basis basis(InsulationGrade grade) {
    return requirement.and(Basis.of(grade.figures()));
  }
}
