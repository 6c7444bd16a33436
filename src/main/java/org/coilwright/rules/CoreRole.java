package org.coilwright.rules;

import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.rules.Feeding.Kind;
import org.coilwright.rules.Feeding.Side;
import org.coilwright.solve.Study;

/**
 * What a wire is for, by what it hangs on with every contact closed.
 *
 * @param use of it; empty if nothing reaches it or several things do
 * @param on the side of a source that it hangs on, for a sentence
 */
record CoreRole(Optional<Use> use, String on) {
  /** What a conductor is for. */
  enum Use {
    LINE,
    NEUTRAL,
    PROTECTIVE,
    /** Plus or minus of a direct-voltage output. */
    DIRECT
  }

  static final CoreRole UNKNOWN = new CoreRole(Optional.empty(), "");

  static CoreRole of(Study study, Conductor wire) {
    Set<Side> sides = Feeding.whole(study).at(wire.from());
    if (NeutralEarth.of(study).earth().contains(wire.from())) {
      return new CoreRole(Optional.of(Use.PROTECTIVE), "the protective conductor");
    }
    Set<Use> uses = sides.stream().map(side -> use(side.kind())).collect(Collectors.toSet());
    return uses.size() == 1
        ? new CoreRole(
            Optional.of(uses.iterator().next()),
            sides.stream().map(Side::toString).distinct().collect(Collectors.joining(" and ")))
        : UNKNOWN;
  }

  private static Use use(Kind kind) {
    return switch (kind) {
      case LINE -> Use.LINE;
      case NEUTRAL -> Use.NEUTRAL;
      case PLUS, MINUS -> Use.DIRECT;
    };
  }
}
