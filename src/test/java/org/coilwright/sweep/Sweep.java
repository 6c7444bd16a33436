package org.coilwright.sweep;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.function.Consumer;
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

  /** After so many mutants there is a line of progress. */
  private static final int STRETCH = 500;

  // tables are read lazily and are not for sharing between threads
  private final ThreadLocal<Examiner> examiners = ThreadLocal.withInitial(Examiner::new);
  private final Tally tally = new Tally();
  private final Consumer<? super Tally> soFar;
  private final int most;

  private Sweep(Consumer<? super Tally> soFar, int most) {
    this.soFar = soFar;
    this.most = most;
  }

  /**
   * Runs it.
   *
   * @param all true for every mutant, false for some of each kind, the same ones each time
   * @param soFar is told the counts after every {@value #STRETCH} mutants and at the end, so that a
   *     run that is broken off has not been for nothing
   */
  static Tally run(boolean all, Consumer<? super Tally> soFar) {
    Map<Base, List<Mutant>> mutants = new LinkedHashMap<>();
    for (Base base : Base.all()) {
      List<Mutant> of = new ArrayList<>(WiringMutants.of(base));
      of.addAll(ValueMutants.of(base));
      mutants.put(base, all ? of : sample(of));
    }
    Sweep sweep = new Sweep(soFar, mutants.values().stream().mapToInt(List::size).sum());
    mutants.forEach(sweep::circuit);
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
    // two threads on two cores; a stretch at a time, which is told when it is done
    for (int from = 0; from < mutants.size(); from += STRETCH) {
      List<Mutant> stretch = mutants.subList(from, Math.min(from + STRETCH, mutants.size()));
      stretch.parallelStream().forEach(m -> mutant(m, sound));
      System.out.printf("%s: %d of %d mutants%n", base.name(), tally.mutants(), most);
      soFar.accept(tally);
    }
  }

  private void mutant(Mutant mutant, Report base) {
    try {
      judge(mutant, base);
    } catch (RuntimeException | StackOverflowError e) {
      // the oracle or the verdict failed: that is one mutant lost, and not the others with it
      StringWriter trace = new StringWriter();
      e.printStackTrace(new PrintWriter(trace));
      tally.fault(mutant, mutant.name() + "\n" + trace);
    }
  }

  private void judge(Mutant mutant, Report base) {
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
