package org.coilwright.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part.Isolation;
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

/** An extra-low voltage circuit is joined to earth, though it may be declared SELV. */
final class SeparationElvEarthed implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("separation.elv-earthed", Weight.FIX, "extra-low voltage joined to earth")
          .what(
              "Looks for a way from each extra-low voltage supply to a protective conductor. A"
                  + " circuit declared SELV must have none: one that is earthed is PELV and has to"
                  + " be declared so (FIX). For PELV, and where nothing is declared, the earth"
                  + " connection is only noted.")
          .why(
              "Earthing decides what a single earth fault does, and which measures the circuit"
                  + " needs: a SELV circuit with a hidden earth is neither.")
          .remedy("Take the earth connection off, or declare the supply `isolation: PELV`.")
          .blind("An earth connection inside a device, such as a minus joined to its case.")
          .sources("iec-60364-4-41")
          .consequenceOf("separation.mains-meets-elv");

  private final Cited<Double> elvLimit;
  private final Basis basis;

  SeparationElvEarthed(Tables tables) {
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
    List<Outcome> outcomes = new ArrayList<>();
    for (DirectSupply supply : VoltageBands.of(study, elvLimit.value()).supplies()) {
      Optional<Path> path = earthPath(circuit, supply);
      outcomes.add(
          path.isPresent()
              ? earthed(supply, path.get())
              : Subject.of(FACTS, supply.output().mark(), supply.part())
                  .satisfied(
                      "No wire joins the %s circuit of %s to a protective conductor."
                          .formatted(supply.inWords(), supply.part()),
                      basis));
    }
    return outcomes;
  }

  private static Optional<Path> earthPath(Circuit circuit, DirectSupply supply) {
    Predicate<Branch> joins = b -> !(b instanceof Branch.Source);
    List<Path> paths = new ArrayList<>();
    for (Node pole : List.of(supply.source().from(), supply.source().to())) {
      // what is reached comes nearest first
      circuit.reach(pole, joins).stream()
          .filter(VoltageBands::isEarth)
          .findFirst()
          .flatMap(earth -> circuit.path(pole, earth, joins))
          .ifPresent(paths::add);
    }
    return paths.stream().min(Comparator.comparingInt(p -> p.branches().size()));
  }

  private Outcome earthed(DirectSupply supply, Path path) {
    Optional<Written<Isolation>> isolation = supply.output().isolation();
    boolean selv = isolation.filter(i -> i.value() == Isolation.SELV).isPresent();
    boolean pelv = isolation.filter(i -> i.value() == Isolation.PELV).isPresent();
    Node earth = path.nodes().get(path.nodes().size() - 1);
    Subject.Finding finding =
        Subject.of(
                FACTS,
                isolation.map(Written::mark).orElse(supply.output().mark()),
                supply.part(),
                earth.name())
            .violated(
                "the %s circuit of %s is earthed".formatted(supply.inWords(), supply.part()),
                "It is joined to the protective conductor: %s.%s"
                    .formatted(
                        path.inWords(), selv ? " Declared is SELV, which has no earth." : ""),
                selv ? "with an earth it is PELV" : "earthed")
            .alsoAt(path.branches().get(path.branches().size() - 1).mark(), "joins it to earth");
    isolation.filter(any -> selv).ifPresent(i -> finding.change(i.mark(), "PELV"));
    return selv
        ? finding.todo(
            "Take the connection to %s off, or declare the supply PELV if the earth is meant."
                .formatted(earth),
            basis)
        : finding
            .lighter(Weight.NOTE)
            .todo(
                "Keep it earthed at this one point, and every contact on the side of the coil that is not earthed.%s"
                    .formatted(pelv ? "" : " Declare it: `isolation: PELV`."),
                basis);
  }
}
