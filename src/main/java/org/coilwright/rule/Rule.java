package org.coilwright.rule;

import java.util.List;
import org.coilwright.solve.Study;

/** One thing that is looked at. Pure: same study, same outcomes in the same order. */
public interface Rule {
  RuleFacts facts();

  /** One outcome a subject; none if the circuit has no subject for it. */
  List<Outcome> check(Study study);
}
