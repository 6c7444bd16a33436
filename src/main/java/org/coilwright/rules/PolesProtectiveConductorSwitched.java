package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Part;
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

/** A contact, fuse or switch lies in the protective conductor. */
final class PolesProtectiveConductorSwitched implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of(
              "poles.protective-conductor-switched",
              Weight.STOP,
              "protective conductor that can open")
          .what(
              "Follows the protective conductor of each load, and of a controller or supply with a"
                  + " PE among the pins of its mains input, back to the mains; raised if it gets"
                  + " there only through a contact, a fuse, a switch or a diode.")
          .why(
              "With the contact open, a fault in the load puts its metal parts on the line, and"
                  + " nothing trips.")
          .remedy(
              "Run the protective conductor past every contact, in one piece of wire and clamps.")
          .blind("A joint that is only screwed to paint, or a wire that is broken.")
          .sources("iec-60364-4-41", "common-practice");

  private final Basis basis;

  PolesProtectiveConductorSwitched(Tables tables) {
    basis = Basis.of(FACTS, tables, Standing.COMMON_PRACTICE);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    for (Earthing earthing : Earthing.ofLoadsAndInputs(study)) {
      if (earthing.byWire()) {
        outcomes.add(
            subject(earthing.load())
                .satisfied(
                    "Wires alone lead from %s to %s.".formatted(earthing.pin(), earthing.mains()),
                    basis));
      } else {
        earthing
            .way()
            .map(way -> switched(study.circuit(), earthing, way))
            .ifPresent(outcomes::add);
      }
    }
    return outcomes;
  }

  private static Subject subject(Part load) {
    return Subject.of(FACTS, load.head().mark(), load.name() + ".PE");
  }

  private Outcome switched(Circuit circuit, Earthing earthing, Path way) {
    List<Branch> inTheWay =
        way.branches().stream().filter(branch -> !(branch instanceof Conductor)).toList();
    Branch first = inTheWay.get(0);
    var finding =
        Subject.of(FACTS, first.mark(), earthing.pin().toString(), first.part())
            .violated(
                "%s is earthed through %s".formatted(earthing.load().name(), first.id()),
                "Its protective conductor leads through %s: %s."
                    .formatted(
                        String.join(", ", inTheWay.stream().map(Branch::id).toList()),
                        way.inWords()),
                "stands in the protective conductor")
            .alsoAt(
                Where.part(circuit, earthing.load().name()),
                "loses its protective conductor when it opens");
    Optional<Conductor> wire =
        way.branches().stream()
            .filter(Conductor.class::isInstance)
            .map(Conductor.class::cast)
            .reduce((one, next) -> next);
    wire.ifPresent(
        last ->
            finding
                .alsoAt(last.mark(), "lands behind the contact")
                .change(
                    last.wire().farEnd(earthing.pin().terminals().get(0)).mark(),
                    earthing.mains().name()));
    // what led to the contact leads nowhere then
    way.branches().stream()
        .filter(b -> b instanceof Conductor c && wire.filter(c::equals).isEmpty())
        .forEach(b -> finding.change(Rewiring.without(circuit.netlist(), ((Conductor) b).wire())));
    return finding.todo(
        "Lead the protective conductor from %s straight to %s."
            .formatted(earthing.mains(), earthing.pin()),
        basis);
  }
}
