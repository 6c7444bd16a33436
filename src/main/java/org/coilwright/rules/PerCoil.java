package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.solve.CoilLimits;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;
import org.coilwright.solve.Trouble;

/** Asks one question of every coil that is wired. */
final class PerCoil {
  private PerCoil() {}

  /**
   * The answers in the order of the netlist. Where not every position was explored, an answer that
   * nothing was found is worth nothing and becomes undecided; a finding stays one. The same holds
   * for a coil that returns by the protective conductor: the positions take it for dead, and the
   * network may well join that conductor to the neutral.
   *
   * @param question empty where the coil is no subject of the rule
   */
  static List<Outcome> ask(
      Study study, RuleFacts rule, Function<CoilFeed, Optional<? extends Outcome>> question) {
    return ask(study, rule, Outcome.Satisfied.class, question);
  }

  /**
   * The same for a finding that speaks of every position: where some were left out it is the
   * finding that becomes undecided, and one position that speaks against it is enough.
   */
  static List<Outcome> askOfEveryPosition(
      Study study, RuleFacts rule, Function<CoilFeed, Optional<? extends Outcome>> question) {
    return ask(study, rule, Outcome.Violated.class, question);
  }

  /**
   * Compares a coil in its worst state with its limits, or says what is missing for that.
   *
   * @param worst the state to look at; empty if the coil is no subject of the rule
   * @param open what cannot be told without the voltage: {@code gets enough}
   */
  static Optional<Outcome> judge(
      RuleFacts rule, CoilFeed feed, Optional<State> worst, String open, Verdict verdict) {
    if (worst.isEmpty()) {
      return Optional.empty();
    }
    Optional<Gap> voltage = Gap.ofVoltage(feed);
    if (voltage.isPresent()) {
      return Optional.of(
          undecided(
              rule,
              feed,
              voltage.get(),
              "Whether %s %s cannot be told.".formatted(feed.relay(), open)));
    }
    return Optional.of(
        feed.study()
            .limits(feed.relay())
            .map(limits -> verdict.of(feed, worst.get(), limits))
            .orElseGet(() -> contradictory(rule, feed)));
  }

  /** Says what is to be said of a coil in a state, its limits being known. */
  @FunctionalInterface
  interface Verdict {
    Outcome of(CoilFeed feed, State state, CoilLimits limits);
  }

  private static List<Outcome> ask(
      Study study,
      RuleFacts rule,
      Class<? extends Outcome> worthless,
      Function<CoilFeed, Optional<? extends Outcome>> question) {
    Optional<Trouble.Gap> gap =
        study.troubles().stream()
            .filter(Trouble.Gap.class::isInstance)
            .map(Trouble.Gap.class::cast)
            .findFirst();
    List<Outcome> outcomes = new ArrayList<>();
    for (CoilFeed feed : CoilFeed.all(study)) {
      boolean byEarth = returnsByEarth(feed);
      question
          .apply(feed)
          .map(
              outcome ->
                  byEarth && (outcome instanceof Outcome.Satisfied || worthless.isInstance(outcome))
                      ? byEarth(subject(rule, feed), feed.relay())
                      : gap.isPresent() && worthless.isInstance(outcome)
                          ? unexplored(subject(rule, feed), feed.relay(), gap.get())
                          : outcome)
          .ifPresent(outcomes::add);
    }
    return outcomes;
  }

  /** True if the coil takes a line and returns by the protective conductor. */
  static boolean returnsByEarth(CoilFeed feed) {
    return NeutralEarth.of(feed.study()).isReturning(feed.coil(), Feeding.whole(feed.study()));
  }

  /** What is said of a coil that does. */
  static Outcome byEarth(Subject subject, String relay) {
    return subject.unsettled(
        "a return of %s by the neutral".formatted(relay),
        "%s returns by the protective conductor, so what it does was not looked at."
            .formatted(relay),
        "Return %s by the neutral and check again.".formatted(relay));
  }

  /** The coil as a subject. */
  static Subject subject(RuleFacts rule, CoilFeed feed) {
    return Subject.of(rule, feed.coil().mark(), feed.relay());
  }

  /** What is said in place of "satisfied" where positions are left out. */
  static Outcome unexplored(Subject subject, String name, Trouble.Gap gap) {
    return subject.undecided(
        Troubles.missing(gap),
        "%s was not looked at in every position: %s.".formatted(name, Troubles.reason(gap)));
  }

  /** Could not be checked because something is not written; the place is where it would be. */
  static Outcome undecided(RuleFacts rule, CoilFeed feed, Gap gap, String sentence) {
    return Subject.of(rule, gap.mark(), feed.relay()).undecided(gap.key(), sentence);
  }

  /** Could not be checked because the coil's limits contradict one another. */
  static Outcome contradictory(RuleFacts rule, CoilFeed feed) {
    return undecided(
        rule,
        feed,
        Gap.ofLimits(feed),
        "%s is written to let go at more than what it pulls in at.".formatted(feed.relay()));
  }
}
