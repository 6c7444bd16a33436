package org.coilwright.rules;

import java.util.List;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;

/** A check could not be made for want of a key; the runner raises it for every rule. */
final class RecordNotChecked implements Rule {
  static final RuleFacts FACTS =
      RuleFacts.of("record.not-checked", Weight.NOTE, "check that could not be made")
          .what(
              "Raised for each key that some check needed and the netlist does not give; it names"
                  + " the key and the checks that wait for it.")
          .why(
              "What was not looked at may be wrong: silence would read as if it had been looked"
                  + " at.")
          .remedy(
              "Write the key as the data sheet, the plate or the drawing has it. What a meter shows"
                  + " on site, such as a length or a resistance, may be measured there and entered"
                  + " on the checklist; what only the maker can state may not. What no key can"
                  + " settle says who does.")
          .blind("Checks that no rule makes at all.")
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
