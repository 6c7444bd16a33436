package org.coilwright.rules;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
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
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** At worst the coil gets more than it may have for long. */
final class CoilTooHigh implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("coil.too-high", Weight.FIX, "coil voltage too high")
          .what(
              "Raised for each coil that gets more than the upper end of its range when the supply"
                  + " is at its highest and the line loses nothing.")
          .why(
              "The heat grows with the square of the voltage: the winding's insulation ages, and in"
                  + " warm air the coil burns out.")
          .remedy("A supply with less tolerance upwards, or a coil with a wider range.")
          .blind(
              "Short peaks, and data sheets that allow more in cool air: the range as written"
                  + " counts for the whole of the rated air temperature.")
          .sources("circuit-theory", "iec-61810-1", "iec-60947-4-1")
          .consequenceOf(
              "coil.wrong-current-kind",
              "wiring.short-circuit",
              "wiring.self-joined",
              "separation.mains-meets-elv");

  private final Tables tables;
  private final Basis theory;

  CoilTooHigh(Tables tables) {
    this.tables = tables;
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
    Optional<State> worst =
        feed.fedStates().stream()
            .max(Comparator.comparingDouble(s -> feed.study().coil(feed.relay(), s).highest()));
    return PerCoil.judge(FACTS, feed, worst, "gets too much", this::compare);
  }

  private Outcome compare(CoilFeed feed, State state, CoilLimits limits) {
    Subject subject = Subject.of(FACTS, feed.rangeMark(), feed.relay());
    CoilReading reading = feed.study().coil(feed.relay(), state);
    Cited<Double> limit = limits.highest();
    Basis basis = Basis.of(limit).and(theory);
    Measure value = new Measure(reading.highest(), "V");
    Measure most = new Measure(limit.value(), "V");
    if (!Comparison.exceeds(reading.highest(), limit.value())) {
      Printed.Pair volts = Printed.inside(reading.highest(), limit.value(), Dimension.VOLTAGE);
      return subject.satisfied(
          "%s gets %s at most (%s) and may have %s (%s)."
              .formatted(
                  feed.relay(),
                  volts.value(),
                  reading.highestCorner(),
                  volts.limit(),
                  limits.highestReason()),
          value,
          most,
          basis);
    }
    Printed.Pair volts = Printed.pair(reading.highest(), limit.value(), Dimension.VOLTAGE);
    Subject.Finding finding =
        subject
            .violated(
                "%s gets too much".formatted(feed.relay()),
                "It gets up to %s and may have %s (%s): too much by %s."
                        .formatted(
                            volts.value(), volts.limit(), limits.highestReason(), volts.apart())
                    + TenTimes.between(feed, tables),
                "may have at most " + volts.limit())
            .measured(value, most);
    CoilFeed.sourcesOf(feed.wayIn(state).orElseThrow())
        .forEach(
            source ->
                finding.alsoAt(
                    SourceVolts.mark(feed.study(), source),
                    source
                        .volts()
                        .filter(v -> v.high() > v.nominal())
                        .map(v -> "may rise to " + Printed.volts(v.high()))
                        .orElse("gives this much")));
    return finding
        .detail(
            "Worst case: %s; %s. It heats with %s of the power that it may."
                .formatted(
                    reading.highestCorner(),
                    Positions.of(feed.study(), state),
                    Printed.atLeast(
                        Math.pow(reading.highest() / limit.value(), 2), Dimension.RATIO)))
        .change(
            feed.spec().range(),
            reaching(feed.spec().range().map(Written::text).orElse(""), reading, feed))
        .todo(whatToDo(feed, reading, limit.value()), basis);
  }

  /** The range as written, its upper end raised. */
  private static String reaching(String range, CoilReading reading, CoilFeed feed) {
    return range.replaceFirst(
        "\\.\\..*", ".." + Printed.atLeast(reading.highest() / feed.ratedVolts(), Dimension.RATIO));
  }

  private static String whatToDo(CoilFeed feed, CoilReading reading, double limit) {
    String coil =
        "a coil whose range reaches %s of its %s"
            .formatted(
                Printed.atLeast(reading.highest() / feed.ratedVolts(), Dimension.RATIO),
                Printed.volts(feed.ratedVolts()));
    if (!feed.sources().stream().allMatch(Source::isDirect)) {
      return "Take " + coil + ", or one made for the next voltage up.";
    }
    double source =
        feed.sources().stream()
            .flatMap(s -> s.volts().stream())
            .mapToDouble(Quantity::high)
            .max()
            .orElse(reading.highest());
    return "A supply that never rises above %s, or %s."
        .formatted(Printed.atMost(limit * source / reading.highest(), Dimension.VOLTAGE), coil);
  }
}
