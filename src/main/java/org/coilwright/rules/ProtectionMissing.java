package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch;
import org.coilwright.netlist.Part;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.sizing.Guards;
import org.coilwright.sizing.PowerSide;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;

/** A mains line reaches a load past every overcurrent device. */
final class ProtectionMissing implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("protection.missing", Weight.STOP, "load without an overcurrent device")
          .what(
              "Looks whether some way leads from a mains line to a load, with every contact closed,"
                  + " without a fuse or circuit-breaker in it. A residual-current device is none.")
          .why("A short-circuit in the load or its cable is fed until something burns through.")
          .remedy("Put a fuse or circuit-breaker into every line of the load.")
          .blind("What lies before the mains of this circuit; loads on extra-low voltage.")
          .sources("iec-60364-4-43")
          .consequenceOf("poles.load-not-switched", "poles.neutral-crossed");

  private final PowerSides sides;
  private final Basis basis;

  ProtectionMissing(PowerSides sides) {
    this.sides = sides;
    basis = Basis.of(FACTS, sides.tables(), Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    PowerSides.Seen seen = sides.of(study);
    List<Outcome> outcomes = new ArrayList<>();
    for (Part load : seen.side().mainsLoads()) {
      outcomes.add(judge(seen.side(), seen.guards(), load));
    }
    return outcomes;
  }

  private Outcome judge(PowerSide side, Guards guards, Part load) {
    Subject subject = Subject.of(FACTS, load.head().mark(), load.name());
    Optional<PowerSide.Way> bare =
        side.waysOf(load).stream()
            .filter(PowerSide.Way::line)
            .filter(w -> guards.isUnguarded(w.path().nodes().get(w.path().nodes().size() - 1)))
            .filter(w -> w.path().nodes().stream().allMatch(guards::isUnguarded))
            .findFirst();
    if (bare.isEmpty()) {
      List<String> devices =
          side.waysOf(load).stream()
              .filter(PowerSide.Way::line)
              .map(w -> w.path().nodes().get(w.path().nodes().size() - 1))
              .flatMap(n -> guards.of(n).stream())
              .map(Part::name)
              .distinct()
              .toList();
      return subject.satisfied(
          "Every line reaches %s through %s.".formatted(load.name(), String.join(", ", devices)),
          basis);
    }
    List<Branch> branches = bare.get().path().branches();
    Branch first = branches.get(0);
    List<String> at = new ArrayList<>(List.of(load.name()));
    branches.forEach(b -> at.add(b.part().isEmpty() ? b.id() : b.part()));
    return new Subject(FACTS, subject.mark(), at.stream().distinct().toList())
        .violated(
            "nothing protects %s from overcurrent".formatted(load.name()),
            "A line gets to it without a fuse or circuit-breaker: %s."
                .formatted(bare.get().path().inWords()),
            "fed without a device")
        .alsoAt(first.mark(), "the line starts here")
        .todo("Put a fuse or circuit-breaker into this way, at its beginning.", basis);
  }
}
