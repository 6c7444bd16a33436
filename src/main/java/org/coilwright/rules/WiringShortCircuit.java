package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.solve.Trouble.ShortCircuit;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** In some position of the contacts a source has a path with no load in it. */
final class WiringShortCircuit implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("wiring.short-circuit", Weight.STOP, "short-circuit in some position")
          .what(
              "Looks for a way from one side of a source to the other, through wires, closed"
                  + " contacts and conducting diodes only, in every position the contacts can"
                  + " take.")
          .why(
              "The current is limited by the source alone: wires burn, contacts weld, and on the"
                  + " mains an arc hurts whoever stands before it.")
          .remedy("Take the path apart at the wire or contact that does not belong in it.")
          .blind(
              "Paths that exist only after something has broken, or for the moment in which one"
                  + " contactor lets go and another pulls in.")
          .sources("circuit-theory")
          .consequenceOf(
              "wiring.self-joined",
              "suppression.reversed",
              "suppression.diode-on-ac",
              "coil.reversed")
          .meansWiredOtherwise();

  private final Basis basis;

  WiringShortCircuit(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    Troubles.alike(study, ShortCircuit.class, s -> List.of(s.source(), s.path()))
        .forEach(alike -> outcomes.add(shorted(study, alike)));
    outcomes.addAll(Troubles.unexplored(FACTS, study));
    if (outcomes.isEmpty()) {
      outcomes.add(
          Subject.ofCircuit(FACTS, study.circuit().netlist())
              .satisfied(
                  "No source has a path without a load in any of %s states."
                      .formatted(study.states().size()),
                  basis));
    }
    return outcomes;
  }

  private Outcome shorted(Study study, List<ShortCircuit> alike) {
    Circuit circuit = study.circuit();
    ShortCircuit first = alike.get(0);
    List<Branch> branches = first.path().branches();
    String source = circuit.branch(first.source()).map(Branch::part).orElse(first.source());
    List<String> at = new ArrayList<>(List.of(source));
    first.path().nodes().stream().map(Node::name).forEach(at::add);
    var finding =
        new Subject(FACTS, Where.part(circuit, source), List.copyOf(at))
            .violated(
                "%s is short-circuited".formatted(source),
                "%s, current finds a way with no load in it: %s."
                    .formatted(Troubles.with(study, alike), first.path().inWords()),
                "this source");
    for (Branch branch : branches) {
      finding.alsoAt(branch.mark(), "in the path");
    }
    return finding.todo(
        "Take out what does not belong in this path: a wire on the wrong pin, or a contact that"
            + " should have a load behind it.",
        basis);
  }
}
