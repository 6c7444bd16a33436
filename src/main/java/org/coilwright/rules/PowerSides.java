package org.coilwright.rules;

import java.util.List;
import org.coilwright.sizing.Guards;
import org.coilwright.sizing.PowerSide;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;

/** The power side of a study, looked over once for all rules that ask about it. */
final class PowerSides {
  private final Tables tables;

  /** A study and what was seen in it. */
  record Seen(
      Study study, PowerSide side, Guards guards, List<Stretch> stretches, StretchIndex index) {
    /** The stretch that some wires were taken out of. */
    Stretch wholeOf(Stretch part) {
      return stretches.stream()
          .filter(s -> s.wires().contains(part.first()))
          .findFirst()
          .orElse(part);
    }
  }

  PowerSides(Tables tables) {
    this.tables = tables;
  }

  Tables tables() {
    return tables;
  }

  Seen of(Study study) {
    return study.derived(Seen.class, this::look);
  }

  private Seen look(Study study) {
    PowerSide side = PowerSide.of(study, tables);
    Guards guards = new Guards(study.circuit());
    List<Stretch> stretches = Stretch.of(side, guards);
    return new Seen(study, side, guards, stretches, new StretchIndex(stretches));
  }
}
