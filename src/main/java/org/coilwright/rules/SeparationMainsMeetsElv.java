package org.coilwright.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part.Isolation;
import org.coilwright.netlist.Wire;
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

/** A conducting path joins an extra-low voltage circuit and the mains. */
final class SeparationMainsMeetsElv implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("separation.mains-meets-elv", Weight.STOP, "mains and extra-low voltage joined")
          .what(
              "Looks for a way from each extra-low voltage supply to a line or the neutral of the"
                  + " mains: through wires, contacts in any position, coils, loads and whatever"
                  + " else conducts, the protective conductor left out. A supply that declares"
                  + " `isolation: none` joins the two by itself.")
          .why(
              "The control wires, their terminals and everything connected to them come to mains"
                  + " voltage: whoever touches them is hurt, and the controller may burn.")
          .remedy("Take the path apart, so that only insulation lies between the two.")
          .blind(
              "What happens inside the devices beyond what they declare, and what a damaged wire"
                  + " does.")
          .sources("iec-60364-4-41")
          .meansWiredOtherwise();

  private final Cited<Double> elvLimit;
  private final Basis basis;

  SeparationMainsMeetsElv(Tables tables) {
    elvLimit = tables.figure("separation.elv-dc");
    basis = Basis.of(FACTS, tables, Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    VoltageBands bands = VoltageBands.of(study, elvLimit.value());
    if (bands.mainsTerminals().isEmpty()) {
      return List.of();
    }
    List<Outcome> outcomes = new ArrayList<>();
    for (DirectSupply supply : bands.supplies()) {
      outcomes.add(check(study.circuit(), bands, supply));
    }
    return outcomes;
  }

  private Outcome check(Circuit circuit, VoltageBands bands, DirectSupply supply) {
    Optional<Path> path = joiningPath(circuit, bands, supply);
    if (path.isPresent()) {
      return joined(supply, path.get());
    }
    Subject subject = Subject.of(FACTS, supply.output().mark(), supply.part());
    Optional<Written<Isolation>> isolation = supply.output().isolation();
    if (isolation.isEmpty()) {
      return subject.undecided(
          supply.missing("isolation"),
          "No wire joins the %s circuit of %s and the mains; whether %s itself keeps them apart is not written."
              .formatted(supply.inWords(), supply.part(), supply.part()));
    }
    if (isolation.get().value() == Isolation.NONE) {
      return Subject.of(FACTS, isolation.get().mark(), supply.part())
          .violated(
              "%s does not keep its output off the mains".formatted(supply.part()),
              "Its %s output is not isolated: every wire on it can carry mains voltage to earth."
                  .formatted(supply.inWords()),
              "joined to the mains inside")
          .alsoAt(firstWire(circuit, supply).orElse(supply.mark()), "can carry mains voltage")
          .todo("Feed the control circuit from a supply whose output is SELV or PELV.", basis);
    }
    return subject.satisfied(
        "Nothing conducts between the %s circuit of %s (%s) and the mains."
            .formatted(supply.inWords(), supply.part(), isolation.get().text()),
        basis);
  }

  private static Optional<Mark> firstWire(Circuit circuit, DirectSupply supply) {
    return Stream.of(supply.source().to(), supply.source().from())
        .flatMap(pole -> pole.terminals().stream())
        .flatMap(terminal -> circuit.wiresAt(terminal).stream())
        .map(Wire::mark)
        .findFirst();
  }

  private static Optional<Path> joiningPath(
      Circuit circuit, VoltageBands bands, DirectSupply supply) {
    Set<Branch> own = Set.of(supply.source());
    List<Path> paths = new ArrayList<>();
    for (Node pole : List.of(supply.source().to(), supply.source().from())) {
      for (Node terminal : bands.mainsTerminals()) {
        circuit
            .path(
                pole,
                terminal,
                b ->
                    VoltageBands.avoidsEarth(b)
                        && !own.contains(b)
                        && !(b instanceof Branch.Source))
            .ifPresent(paths::add);
      }
    }
    return paths.stream().min(Comparator.comparingInt(p -> p.branches().size()));
  }

  private Outcome joined(DirectSupply supply, Path path) {
    Set<String> at = new LinkedHashSet<>(List.of(supply.part()));
    path.nodes().forEach(node -> at.add(node.name()));
    var finding =
        new Subject(FACTS, supply.output().mark(), List.copyOf(at))
            .violated(
                "mains and the %s circuit of %s are joined"
                    .formatted(supply.inWords(), supply.part()),
                "There is a way from one to the other: %s.".formatted(path.inWords()),
                "extra-low voltage starts here");
    List<Branch> wires =
        path.branches().stream().filter(Branch.Conductor.class::isInstance).toList();
    for (Branch wire : wires) {
      boolean last = wire.equals(wires.get(wires.size() - 1));
      finding.alsoAt(wire.mark(), last ? "reaches the mains" : "on the way");
    }
    return finding
        .detail(
            path.branches().stream().anyMatch(Branch.Contact.class::isInstance)
                ? "Contacts count in any position, as one can weld or be operated."
                : "")
        .todo(
            "Take this path apart. If the two have to act on one another, let a relay with"
                + " reinforced insulation stand between them.",
            basis);
  }
}
