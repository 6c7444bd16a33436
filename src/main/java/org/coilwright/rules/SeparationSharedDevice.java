package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.InsulationSpec;
import org.coilwright.netlist.Terminal;
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

/** Mains and extra-low voltage lie side by side in one device that is no relay. */
final class SeparationSharedDevice implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of(
              "separation.shared-device", Weight.FIX, "mains and extra-low voltage in one device")
          .what(
              "For each switch, thermostat, cut-out, protective device and controller with several"
                  + " poles or outputs, and each terminal strip, looks which of them the mains and"
                  + " which an extra-low voltage supply reaches, contacts in any position. Where"
                  + " both do, reinforced insulation between them must be written. A strip raises a"
                  + " note.")
          .why(
              "Between two poles lies a thin wall that nobody made for protective separation:"
                  + " soot, water or a broken spring puts mains on the control wires.")
          .remedy(
              "Switch the two with a device each, or with an interposing relay, or take a device"
                  + " whose maker states reinforced insulation between its poles.")
          .blind(
              "Relays and contactors, which are looked at by themselves; what a controller has"
                  + " between an output and its own supply.")
          .sources("iec-60364-4-41", "iec-60664-1")
          .consequenceOf("separation.mains-meets-elv");

  private final Cited<Double> elvLimit;
  private final CoilBarrier barrier;
  private final Basis requirement;

  SeparationSharedDevice(Tables tables) {
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
    VoltageBands bands = VoltageBands.of(study, elvLimit.value());
    if (bands.mainsTerminals().isEmpty() || bands.supplies().isEmpty()) {
      return List.of();
    }
    Circuit circuit = study.circuit();
    List<Outcome> outcomes = new ArrayList<>();
    for (Part part : circuit.netlist().parts().values()) {
      if (part instanceof Part.TerminalStrip strip) {
        checkStrip(circuit, bands, strip).ifPresent(outcomes::add);
      } else if (!(part instanceof Part.Relay)) {
        checkDevice(circuit, bands, part).ifPresent(outcomes::add);
      }
    }
    return outcomes;
  }

  private Optional<Outcome> checkDevice(Circuit circuit, VoltageBands bands, Part part) {
    List<Branch> poles =
        circuit.branchesOf(part.name()).stream().filter(Contact.class::isInstance).toList();
    Optional<Branch> mains = poles.stream().filter(bands::onMains).findFirst();
    Optional<Branch> low = poles.stream().filter(b -> isLow(bands, b)).findFirst();
    if (mains.isPresent() && low.isPresent()) {
      return Optional.of(judge(circuit, bands, part, low.get(), mains.get()));
    }
    boolean several = poles.size() > 1 && (mains.isPresent() || low.isPresent());
    return several
        ? Optional.of(
            Subject.of(FACTS, part.head().mark(), part.name())
                .satisfied(
                    "%s holds %s alone."
                        .formatted(part.name(), mains.isPresent() ? "mains" : "extra-low voltage"),
                    requirement))
        : Optional.empty();
  }

  private static boolean isLow(VoltageBands bands, Branch branch) {
    return bands.elvAt(branch.from()).isPresent() || bands.elvAt(branch.to()).isPresent();
  }

  private static Optional<InsulationSpec> insulation(Part part) {
    return part instanceof Part.Switch hand
        ? hand.insulation()
        : part instanceof Part.Thermal thermal
            ? thermal.insulation()
            : part instanceof Part.Controller controller
                ? controller.insulation()
                : Optional.empty();
  }

  private Outcome judge(Circuit circuit, VoltageBands bands, Part part, Branch low, Branch mains) {
    Optional<InsulationSpec> spec = insulation(part);
    if (spec.isEmpty()) {
      return shared(
          circuit,
          Subject.of(FACTS, part.head().mark(), part.name()),
          low,
          mains,
          "nothing is written of the insulation between them",
          requirement);
    }
    InsulationGrade grade = barrier.gradeOfPoles(circuit, bands, spec.get());
    Basis basis = requirement.and(Basis.of(grade.figures()));
    if (!grade.faults().isEmpty()) {
      InsulationGrade.Fault fault = grade.faults().get(0);
      return shared(
          circuit,
          Subject.of(FACTS, fault.mark(), part.name()),
          low,
          mains,
          "what is written between them is not enough: "
              + fault.why().replaceFirst("\\.$", "").replaceFirst("^Its", "its"),
          basis);
    }
    Subject subject = Subject.of(FACTS, spec.get().mark(), part.name());
    if (!grade.isReinforced()) {
      return subject.undecided(
          "insulation.%s of %s".formatted(grade.decidingKey(), part.name()),
          "%s is on extra-low voltage and %s on mains, and what is written of the insulation of %s does not show that it keeps them apart%s."
              .formatted(low.id(), mains.id(), part.name(), grade.remark()));
    }
    return subject.satisfied(
        "%s keeps extra-low voltage at %s and mains at %s apart: %s%s."
            .formatted(
                part.name(),
                low.id(),
                mains.id(),
                String.join("; ", grade.proofs()),
                grade.remark()),
        basis);
  }

  private static Outcome shared(
      Circuit circuit, Subject subject, Branch low, Branch mains, String why, Basis basis) {
    String name = subject.at().get(0);
    return subject
        .violated(
            "%s holds mains and extra-low voltage side by side".formatted(name),
            "%s is on mains and %s on extra-low voltage, and %s."
                .formatted(mains.id(), low.id(), why),
            "both in one device")
        .alsoAt(wire(circuit, mains.from()), "mains at " + mains.id())
        .alsoAt(wire(circuit, low.from()), "extra-low voltage at " + low.id())
        .todo(
            "Give each of the two a device of its own, or let an interposing relay stand between"
                + " them; or take one whose maker states reinforced insulation between its poles,"
                + " and write that.",
            basis);
  }

  private Optional<Outcome> checkStrip(
      Circuit circuit, VoltageBands bands, Part.TerminalStrip strip) {
    Optional<Node> mains = clamp(circuit, strip, bands, true);
    Optional<Node> low = clamp(circuit, strip, bands, false);
    if (mains.isEmpty() || low.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        Subject.of(FACTS, strip.head().mark(), strip.name())
            .violated(
                "%s holds mains and extra-low voltage side by side".formatted(strip.name()),
                "%s is on mains and %s on extra-low voltage.".formatted(mains.get(), low.get()),
                "both on one strip")
            .alsoAt(wire(circuit, mains.get()), "mains")
            .alsoAt(wire(circuit, low.get()), "extra-low voltage")
            .lighter(Weight.NOTE)
            .todo(
                "Use two strips, or put a partition between %s and %s and mark the two sides."
                    .formatted(mains.get(), low.get()),
                requirement));
  }

  private static Optional<Node> clamp(
      Circuit circuit, Part.TerminalStrip strip, VoltageBands bands, boolean mains) {
    return strip.pins().stream()
        .flatMap(pin -> circuit.find(new Terminal(strip.name(), pin)).stream())
        .filter(n -> mains ? bands.onMains(n) : bands.elvAt(n).isPresent())
        .findFirst();
  }

  private static Mark wire(Circuit circuit, Node clamp) {
    return clamp.terminals().stream()
        .flatMap(terminal -> circuit.wiresAt(terminal).stream())
        .findFirst()
        .map(wire -> wire.mark())
        .orElseGet(() -> Where.part(circuit, clamp.terminals().get(0).part()));
  }
}
