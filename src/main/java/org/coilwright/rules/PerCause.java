package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Outcome.Violated;

/**
 * Outcomes about wires, with one finding for each cause: a run that is too thin for its load is too
 * thin before the device and behind it, and that is one fault to mend.
 */
final class PerCause {
  private final List<Outcome> others = new ArrayList<>();
  private final Map<String, Violated> worst = new LinkedHashMap<>();

  /**
   * Takes an outcome.
   *
   * @param cause the same text for all that one remedy mends
   */
  void add(String cause, Outcome outcome) {
    if (outcome instanceof Violated found) {
      worst.merge(cause, found, (a, b) -> excess(b) > excess(a) ? b : a);
    } else {
      others.add(outcome);
    }
  }

  /** Every outcome; of the findings of one cause the one that is missed by most. */
  List<Outcome> outcomes() {
    List<Outcome> all = new ArrayList<>(worst.values());
    all.addAll(others);
    return List.copyOf(all);
  }

  /** Value over limit; a finding without figures is the worst there is. */
  private static double excess(Violated found) {
    return found.value().map(Measure::number).orElse(Double.POSITIVE_INFINITY)
        / found.limit().map(Measure::number).orElse(1.0);
  }
}
