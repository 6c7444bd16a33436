package org.coilwright.rules;

import org.coilwright.rule.Outcome;
import org.coilwright.rule.Subject;
import org.coilwright.sizing.Found;
import org.coilwright.sizing.Opening;

/** What is not known, said as an outcome: by the key that is missing, or by who else settles it. */
final class Unknowns {
  private Unknowns() {}

  /**
   * An outcome.
   *
   * @param open one sentence on what stays open
   */
  static Outcome.Undecided outcome(Subject subject, String open, Found.Unknown<?> unknown) {
    return outcome(subject, open, unknown.missing(), unknown.why(), unknown.settledBy());
  }

  /** The same for a device of which nothing is known. */
  static Outcome.Undecided outcome(Subject subject, String open, Opening.Unknown unknown) {
    return outcome(subject, open, unknown.missing(), unknown.words(), unknown.settledBy());
  }

  private static Outcome.Undecided outcome(
      Subject subject, String open, String missing, String why, String settledBy) {
    String sentence = open + " " + why;
    return settledBy.isEmpty()
        ? subject.undecided(missing, sentence)
        : subject.unsettled(missing, sentence, settledBy);
  }
}
