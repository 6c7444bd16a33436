package org.coilwright.rules;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;

/**
 * A load that gets more of its lines in one position than in another, though it should be on in
 * both.
 *
 * @param least the position in which it gets the fewest
 * @param most the one in which it gets the most
 */
record PartlyOn(Study study, Part load, State least, State most) {
  /**
   * Of a load, if it does.
   *
   * @param on the states in which it should be on
   */
  static Optional<PartlyOn> of(Study study, Part load, List<State> on) {
    Comparator<State> byLines = Comparator.comparing(s -> lines(study, load, s).size());
    Optional<State> most = on.stream().max(byLines);
    return on.stream()
        .min(byLines)
        .flatMap(
            least ->
                most.filter(m -> byLines.compare(least, m) < 0)
                    .map(m -> new PartlyOn(study, load, least, m)));
  }

  /** What there is to say of it; the subject's place is the intent. */
  Outcome outcome(Subject subject, Basis basis) {
    return subject
        .violated(
            "%s gets some of its lines only when it should be on".formatted(load.name()),
            "With %s it hangs on %s and takes %s; with %s on %s, and takes %s."
                .formatted(
                    Positions.of(study, least),
                    lines(least),
                    watts(least),
                    Positions.of(study, most),
                    lines(most),
                    watts(most)),
            "says on in both")
        .alsoAt(load.head().mark(), "is on in part")
        .detail(LoadTrail.openBefore(study, load.name(), least))
        .lighter(Weight.FIX)
        .todo(
            "Bring every line of %s through the contacts that its intent names, and through no other."
                .formatted(load.name()),
            basis);
  }

  private static List<String> lines(Study study, Part load, State state) {
    return study.load(load.name(), state).lines();
  }

  private String lines(State state) {
    return String.join(", ", lines(study, load, state));
  }

  private String watts(State state) {
    return Printed.of(study.load(load.name(), state).watts(), Dimension.POWER);
  }
}
