package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Part;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Outcome.Satisfied;
import org.coilwright.rule.Outcome.Undecided;
import org.coilwright.rule.Subject;
import org.coilwright.sizing.LoadCurrent;
import org.coilwright.sizing.PowerSide;
import org.coilwright.solve.Study;

/**
 * What rules of currents say where a motor's current was taken from its power. The plate gives the
 * power at the shaft (IEC 60034-1), so what its wires carry is more by its efficiency, which no key
 * holds: no such rule is satisfied. What is too much even so stays a finding.
 */
final class ByShaft {
  private ByShaft() {}

  /** The outcomes, open where they hang on such a motor. */
  static List<Outcome> open(Study study, PowerSides sides, List<Outcome> outcomes) {
    PowerSide side = sides.of(study).side();
    List<Part> motors = side.loads().stream().filter(LoadCurrent::isByShaft).toList();
    if (motors.isEmpty()) {
      return outcomes;
    }
    List<Outcome> open = new ArrayList<>();
    for (Outcome outcome : outcomes) {
      Optional<Part> motor =
          outcome instanceof Satisfied
              ? motors.stream().filter(m -> isAbout(side, outcome, m)).findFirst()
              : Optional.empty();
      open.add(motor.isPresent() ? undecided(outcome, motor.get().name()) : outcome);
    }
    return List.copyOf(open);
  }

  /** True for the motor itself, and for a source, device or contact in its way. */
  private static boolean isAbout(PowerSide side, Outcome outcome, Part motor) {
    String subject = outcome.path().get(0);
    return outcome.path().contains(motor.name())
        || side.waysOf(motor).stream()
            .anyMatch(
                way ->
                    way.source().part().equals(subject)
                        || way.path().branches().stream().anyMatch(b -> b.part().equals(subject)));
  }

  private static Undecided undecided(Outcome outcome, String motor) {
    return new Subject(outcome.rule(), outcome.mark(), outcome.path())
        .undecided(
            "current of " + motor,
            "Only the power at its shaft is written of %s: it takes more from the mains, as its plate says."
                .formatted(motor));
  }
}
