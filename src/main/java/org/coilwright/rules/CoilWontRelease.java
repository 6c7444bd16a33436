package org.coilwright.rules;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.CoilLimits;
import org.coilwright.solve.CoilReading;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** Something leaves enough on the coil to hold it in when it should be off. */
final class CoilWontRelease implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("coil.wont-release", Weight.STOP, "coil that does not let go")
          .what(
              "Raised for each coil that keeps more than its release voltage in a position in which"
                  + " no contact feeds it: through a leaking output, a snubber or resistor across"
                  + " an open contact, or another coil or load.")
          .why("The relay stays in after its contact has opened, and what it feeds stays on.")
          .remedy(
              "Move the snubber from the contact to the coil, take an output that leaks less, or"
                  + " put a resistor across the coil.")
          .blind(
              "Leakage that the netlist does not give, damp, and the capacitance of cables, which"
                  + " has its own rule.")
          .sources("circuit-theory", "iec-61810-1", "contactor-data")
          .consequenceOf(
              "coil.wrong-current-kind",
              "coil.line-too-long",
              "wiring.sneak-path",
              "wiring.short-circuit",
              "separation.mains-meets-elv")
          .meansWiredOtherwise();

  private final Basis theory;

  CoilWontRelease(Tables tables) {
    theory = new Basis(List.of(tables.source("circuit-theory").cite()), Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    return PerCoil.ask(study, FACTS, this::judge);
  }

  private Optional<Outcome> judge(CoilFeed feed) {
    if (feed.fedStates().isEmpty()) {
      return Optional.empty();
    }
    Optional<State> worst =
        feed.idleStates().stream().max(Comparator.comparingDouble(s -> left(feed, s)));
    if (worst.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        feed.study()
            .limits(feed.relay())
            .map(limits -> compare(feed, worst.get(), limits))
            .orElseGet(() -> PerCoil.contradictory(FACTS, feed)));
  }

  private Outcome compare(CoilFeed feed, State state, CoilLimits limits) {
    Subject subject = PerCoil.subject(FACTS, feed);
    CoilReading reading = feed.study().coil(feed.relay(), state);
    double left = left(feed, state);
    double release = limits.release().value();
    Basis basis = Basis.of(limits.release()).and(theory);
    if (!Comparison.exceeds(left, release)) {
      Printed.Pair volts = Printed.inside(left, release, Dimension.VOLTAGE);
      return subject.satisfied(
          "Off, %s gets %s at most and lets go at %s (%s)."
              .formatted(feed.relay(), volts.value(), volts.limit(), limits.releaseReason()),
          new Measure(left, "V"),
          new Measure(release, "V"),
          basis);
    }
    Printed.Pair volts = Printed.pair(left, release, Dimension.VOLTAGE);
    if (Gap.ofCurrent(feed).isPresent()) {
      return PerCoil.undecided(
          FACTS,
          feed,
          Gap.ofCurrent(feed).get(),
          "%s is joined to its supply by a leak, and what the coil draws is not given: the voltage that is left on it cannot be told."
              .formatted(feed.relay()));
    }
    List<Leaks.Leak> leaks = Leaks.of(feed, state);
    Subject.Finding finding =
        Subject.of(FACTS, feed.coil().mark(), feed.relay())
            .violated(
                "%s does not let go".formatted(feed.relay()),
                "With %s it should be off, but up to %s is left on it. It surely lets go only at %s (%s): too much by %s."
                    .formatted(
                        Positions.of(feed.study(), state),
                        volts.value(),
                        volts.limit(),
                        limits.releaseReason(),
                        volts.apart()),
                "lets go at " + volts.limit())
            .measured(new Measure(left, "V"), new Measure(release, "V"));
    leaks.forEach(leak -> finding.alsoAt(leak.mark(), leak.label()));
    return finding
        .detail(
            left > reading.highest()
                ? "Worst case: the whole leakage flows through the coil at its highest resistance."
                : "Worst case: %s.".formatted(reading.highestCorner()))
        .todo(whatToDo(feed, leaks), basis);
  }

  /** What is left on the coil at worst. */
  private static double left(CoilFeed feed, State state) {
    return Math.max(feed.study().coil(feed.relay(), state).highest(), Leaks.mostVolts(feed, state));
  }

  private static String whatToDo(CoilFeed feed, List<Leaks.Leak> leaks) {
    return leaks.stream()
        .findFirst()
        .map(Leaks.Leak::cure)
        .orElse(
            "Find the second way by which current reaches %s, and part it."
                .formatted(feed.relay()));
  }
}
