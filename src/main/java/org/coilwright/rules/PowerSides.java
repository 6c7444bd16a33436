package org.coilwright.rules;

import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import org.coilwright.sizing.Guards;
import org.coilwright.sizing.PowerSide;
import org.coilwright.solve.Study;
import org.coilwright.table.Tables;

/** The power side of a study, looked over once for all rules that ask about it in turn. */
final class PowerSides {
  private final Tables tables;
  private final AtomicReference<Seen> last = new AtomicReference<>();

  /** A study and what was seen in it. */
  record Seen(Study study, PowerSide side, Guards guards, List<Stretch> stretches) {
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
    Seen seen = last.get();
    if (seen == null || seen.study() != study) {
      PowerSide side = PowerSide.of(study, tables);
      Guards guards = new Guards(study.circuit());
      seen = new Seen(study, side, guards, Stretch.of(side, guards));
      last.set(seen);
    }
    return seen;
  }
}
