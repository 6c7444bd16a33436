package org.coilwright.rule;

import java.util.List;
import java.util.Map;
import org.coilwright.netlist.Netlist;
import org.coilwright.rule.Outcome.Satisfied;
import org.coilwright.rule.Outcome.Undecided;
import org.coilwright.rule.Outcome.Violated;

/**
 * Everything the rules said about one netlist.
 *
 * @param findings heaviest first, then in file order; accepted ones among them
 * @param silenced consequences that a finding makes uninteresting, by that finding
 * @param beside findings told along with the first of those that hang together, where these are too
 *     many to be shown one by one
 * @param accepted the entry by which a finding is accepted, by that finding
 */
public record Report(
    Netlist netlist,
    List<Violated> findings,
    List<Satisfied> satisfied,
    List<Undecided> undecided,
    Map<Violated, List<Violated>> silenced,
    Map<Violated, List<Violated>> beside,
    Map<Violated, Netlist.Accepted> accepted) {

  /**
   * True if {@code finding} counts for the verdict. An accepted FIX or NOTE does not; a STOP always
   * does: what must not be energised cannot be signed away.
   */
  public boolean counts(Violated finding) {
    return finding.weight() == Weight.STOP || !accepted.containsKey(finding);
  }

  /** The heaviest weight that counts. */
  public Verdict verdict() {
    return findings.stream()
        .filter(this::counts)
        .map(Violated::weight)
        .min(Weight::compareTo)
        .map(w -> Verdict.valueOf(w.name()))
        .orElse(Verdict.CLEAR);
  }

  /** How many findings of a weight count. */
  public long count(Weight weight) {
    return findings.stream().filter(f -> f.weight() == weight && counts(f)).count();
  }
}
