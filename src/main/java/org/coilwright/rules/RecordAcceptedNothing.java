package org.coilwright.rules;

import java.util.List;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;

/**
 * An accepted entry matches no finding; the runner raises it, because only the whole list can tell.
 */
final class RecordAcceptedNothing implements Rule {
  static final RuleFacts FACTS =
      RuleFacts.of("record.accepted-nothing", Weight.NOTE, "accepted entry that matches no finding")
          .what("Raised for each entry under `accepted:` whose rule and place meet no finding.")
          .why(
              "The fault it once accepted is mended, or the entry has a slip in it and the finding that it should cover still stands.")
          .remedy("Strike the entry out, or correct its rule or its place.")
          .blind("Whether the reason given for an acceptance is a good one.")
          .sources("common-practice");

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  /** Nothing: see {@link org.coilwright.rule.Runner}. */
  @Override
  public List<Outcome> check(Study study) {
    return List.of();
  }
}
