package org.coilwright.sweep;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import org.coilwright.rule.Report;
import org.coilwright.sweep.Examiner.Answer;
import org.coilwright.sweep.Mutant.Kind;

/** Makes the mistakes, lets the program check them, and holds what it says against the oracle. */
final class Sweep {
  private static final long SEED = 20_261_201;

  /** How many mutants of a circuit are taken where not all are. */
  private static final Map<Kind, Integer> SAMPLE =
      new EnumMap<>(
          Map.of(
              Kind.MOVED, 22,
              Kind.LEFT_OUT, 5,
              Kind.EXCHANGED, 8,
              Kind.BRIDGED, 4,
              Kind.ADDED, 8,
              Kind.VALUE, 12));

  // tables are read lazily and are not for sharing between threads
  private final ThreadLocal<Examiner> examiners = ThreadLocal.withInitial(Examiner::new);
  private final Tally tally = new Tally();

  private Sweep() {}

  /**
   * Runs it.
   *
   * @param all true for every mutant, false for some of each kind, the same ones each time
   */
  static Tally run(boolean all) {
    Sweep sweep = new Sweep();
    for (Base base : Base.all()) {
      List<Mutant> mutants = new ArrayList<>(WiringMutants.of(base));
      mutants.addAll(ValueMutants.of(base));
      sweep.circuit(base, all ? mutants : sample(mutants));
    }
    return sweep.tally;
  }

  /** Some of each kind, drawn by their names, so that another mutant more or less changes few. */
  private static List<Mutant> sample(List<Mutant> mutants) {
    List<Mutant> drawn = new ArrayList<>(mutants);
    drawn.sort(Comparator.comparingLong(m -> new Random(SEED ^ m.name().hashCode()).nextLong()));
    List<Mutant> sample = new ArrayList<>();
    SAMPLE.forEach(
        (kind, most) ->
            drawn.stream().filter(m -> m.kind() == kind).limit(most).forEach(sample::add));
    return sample;
  }

  private void circuit(Base base, List<Mutant> mutants) {
    String text = String.join("\n", base.lines()) + "\n";
    Report sound =
        new Examiner()
            .check(text)
            .report()
            .orElseThrow(() -> new AssertionError(base.name() + " cannot be checked"));
    mutants.parallelStream().forEach(m -> mutant(m, sound));
  }

  private void mutant(Mutant mutant, Report base) {
    Answer answer = examiners.get().check(mutant.text());
    if (!answer.fault().isEmpty()) {
      tally.fault(mutant, answer.fault());
    } else if (answer.isRefused()) {
      tally.refused();
    } else {
      Set<Danger> dangers = Oracle.dangers(answer.netlist().orElseThrow());
      tally.add(Verdict.of(mutant, dangers, answer.report().orElseThrow(), base));
    }
  }
}
