package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Circuit;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rewiring;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** Wires alone join both ends of a coil, a load or a source. */
final class WiringSelfJoined implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("wiring.self-joined", Weight.STOP, "both ends joined by wire")
          .what(
              "Raised for each coil, load element, source and mains input whose two ends are one"
                  + " node: wires and bridged clamps lead from one to the other.")
          .why(
              "A coil or load with joined ends gets no voltage and never works; whatever feeds it"
                  + " feeds a short-circuit. A source with joined ends is one.")
          .remedy("Take out the wire that joins the two ends, or move one end of it.")
          .blind(
              "Ends that are joined through a closed contact: the short-circuit rule sees those.")
          .sources("circuit-theory")
          .meansWiredOtherwise();

  private final Basis basis;

  WiringSelfJoined(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    Circuit circuit = study.circuit();
    List<Outcome> outcomes = new ArrayList<>();
    for (Branch branch : circuit.branches()) {
      name(branch)
          .flatMap(
              kind -> joined(circuit, branch).map(path -> violated(circuit, branch, kind, path)))
          .ifPresent(outcomes::add);
    }
    if (outcomes.isEmpty()) {
      outcomes.add(
          Subject.ofCircuit(FACTS, circuit.netlist())
              .satisfied("No coil, load or source has both ends on one node.", basis));
    }
    return outcomes;
  }

  /** What the trade calls the thing between the two ends; empty if it may be bridged. */
  private static Optional<String> name(Branch branch) {
    if (branch instanceof Branch.Coil) {
      return Optional.of("coil");
    }
    if (branch instanceof Branch.LoadElement) {
      return Optional.of("load");
    }
    if (branch instanceof Branch.Source) {
      return Optional.of("source");
    }
    return branch instanceof Branch.Input ? Optional.of("mains input") : Optional.empty();
  }

  private static Optional<Path> joined(Circuit circuit, Branch branch) {
    return circuit.path(branch.from(), branch.to(), Conductor.class::isInstance);
  }

  private Outcome violated(Circuit circuit, Branch branch, String kind, Path path) {
    String from = branch.from().name();
    String to = branch.to().name();
    var finding =
        Subject.of(FACTS, branch.mark(), from, to)
            .violated(
                "%s has both ends joined".formatted(branch.part()),
                "Wires lead from %s to %s, the two ends of the %s, with nothing in between: %s."
                    .formatted(from, to, kind, path.inWords()),
                "this %s is bridged".formatted(kind.toLowerCase(Locale.ROOT)));
    path.branches().forEach(wire -> finding.alsoAt(wire.mark(), "joins the two ends"));
    if (path.branches().size() == 1 && path.branches().get(0) instanceof Conductor only) {
      finding.change(Rewiring.without(circuit.netlist(), only.wire()));
    }
    return finding.todo(
        path.branches().isEmpty()
            ? "Take the bridge between %s and %s out.".formatted(from, to)
            : "Take this wire out, or move the end of it that landed on the wrong pin.",
        basis);
  }
}
