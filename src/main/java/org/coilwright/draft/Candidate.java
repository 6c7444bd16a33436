package org.coilwright.draft;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.rule.Report;

/**
 * An arrangement tried for a job.
 *
 * @param figures what was chosen; empty if nothing could be
 * @param report what the rules say of it; empty if it was not written
 * @param why why it does not do; empty if it passes
 * @param shopping what to ask for, by designation
 */
record Candidate(
    Arrangement arrangement,
    Optional<Figures> figures,
    Optional<Report> report,
    List<String> why,
    Map<String, String> shopping) {

  static Candidate refused(Arrangement arrangement, String why) {
    return new Candidate(arrangement, Optional.empty(), Optional.empty(), List.of(why), Map.of());
  }

  boolean passes() {
    return why.isEmpty();
  }

  /** How many of its faults are worth a note. */
  long faults() {
    return report.stream()
        .flatMap(r -> r.findings().stream())
        .filter(f -> f.rule().group().equals("fault"))
        .count();
  }
}
