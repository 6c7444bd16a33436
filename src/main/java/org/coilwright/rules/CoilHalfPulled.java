package org.coilwright.rules;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch.Source;
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
import org.coilwright.rules.LineLoss.Stretch;
import org.coilwright.solve.CoilLimits;
import org.coilwright.solve.CoilReading;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** In some position the coil's voltage lies between letting go and pulling in. */
final class CoilHalfPulled implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("coil.half-pulled", Weight.STOP, "coil neither in nor out")
          .what(
              "Raised for each coil that, in a position in which it shall be on, gets more than it"
                  + " lets go at and less than it pulls in at, everything at its nominal value. A"
                  + " coil that no position feeds by a way of its own is looked at in all of them."
                  + " In an economy circuit, where a contact of its own puts a resistor in once it"
                  + " is in, what it is held with is judged by what it surely holds with.")
          .why(
              "The armature may hang, hum or chatter: contacts touch without force and weld, and an"
                  + " AC coil carries its pick-up current until it burns.")
          .remedy(
              "Give the coil its whole rated voltage, or none; where the line loses it, thicker"
                  + " wire or a shorter line.")
          .blind(
              "Voltages that pass through this range while a supply comes up or goes down; whether"
                  + " the opening contact of an economy circuit opens late enough.")
          .sources("circuit-theory", "iec-61810-1", "contactor-data")
          .consequenceOf(
              "coil.wrong-current-kind",
              "coil.reversed",
              "wiring.sneak-path",
              "wiring.short-circuit",
              "wiring.self-joined",
              "suppression.reversed",
              "suppression.diode-on-ac",
              "separation.mains-meets-elv");

  /** Where the supply folds back whenever the coil is on, the overload is the cause. */
  private static final RuleFacts OVERLOADED = FACTS.alsoConsequenceOf("supply.overloaded");

  private final Tables tables;
  private final Basis theory;

  CoilHalfPulled(Tables tables) {
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
    List<State> own = feed.soundStates();
    List<State> economy = feed.economyStates();
    List<State> looked = own.isEmpty() ? feed.states() : own;
    Optional<CoilLimits> known = feed.study().limits(feed.relay());
    if (known.isEmpty()) {
      return Optional.of(PerCoil.contradictory(FACTS, feed));
    }
    CoilLimits limits = known.get();
    return looked.stream()
        .filter(state -> isBetween(volts(feed, state), limits))
        .findFirst()
        .<Outcome>map(state -> halfPulled(feed, state, limits))
        .or(() -> economy.isEmpty() ? Optional.empty() : Optional.of(held(feed, economy)))
        .or(() -> own.isEmpty() ? Optional.empty() : Optional.of(clear(feed, own, limits)));
  }

  private Outcome held(CoilFeed feed, List<State> economy) {
    return Gap.ofVoltage(feed)
        .or(() -> Gap.ofCurrent(feed))
        .map(gap -> PerCoil.undecided(FACTS, feed, gap, unknown(feed)))
        .orElseGet(() -> EconomyHold.of(feed, economy, tables).judge(FACTS));
  }

  private static String unknown(CoilFeed feed) {
    return "Whether %s hangs half-way cannot be told.".formatted(feed.relay());
  }

  private static double volts(CoilFeed feed, State state) {
    return Math.abs(feed.study().coil(feed.relay(), state).volts());
  }

  private static boolean isBetween(double volts, CoilLimits limits) {
    return Comparison.exceeds(volts, limits.release().value())
        && Comparison.fallsShort(volts, limits.operate().value());
  }

  private Outcome clear(CoilFeed feed, List<State> own, CoilLimits limits) {
    double least =
        own.stream()
            .map(s -> volts(feed, s))
            .min(Comparator.naturalOrder())
            .orElse(feed.ratedVolts());
    Subject subject = PerCoil.subject(FACTS, feed);
    Optional<Gap> voltage = Gap.ofVoltage(feed);
    if (voltage.isPresent()) {
      return PerCoil.undecided(FACTS, feed, voltage.get(), unknown(feed));
    }
    Printed.Pair volts = Printed.inside(least, limits.operate().value(), Dimension.VOLTAGE);
    return subject.satisfied(
        "Where %s shall be on it gets %s or more, and it pulls in at %s."
            .formatted(feed.relay(), volts.value(), volts.limit()),
        new Measure(least, "V"),
        new Measure(limits.operate().value(), "V"),
        Basis.of(limits.operate()).and(theory));
  }

  private Outcome halfPulled(CoilFeed feed, State state, CoilLimits limits) {
    CoilReading reading = feed.study().coil(feed.relay(), state);
    double volts = Math.abs(reading.volts());
    Printed.Pair up = Printed.pair(volts, limits.operate().value(), Dimension.VOLTAGE);
    Optional<LineCure> line = line(feed, state, volts, limits);
    Optional<Stretch> most = line.flatMap(cure -> cure.loss().stretches().stream().findFirst());
    if (line.isPresent() && most.isPresent()) {
      return byLine(feed, state, limits, line.get(), most.get(), up);
    }
    Subject.Finding finding =
        Subject.of(feed.supplyFolds() ? OVERLOADED : FACTS, feed.rangeMark(), feed.relay())
            .violated(
                "%s may hang between in and out".formatted(feed.relay()),
                "With %s it gets %s: more than the %s at which it lets go (%s), less than the %s that it needs to pull in (%s)."
                        .formatted(
                            Positions.of(feed.study(), state),
                            up.value(),
                            Printed.volts(limits.release().value()),
                            limits.releaseReason(),
                            up.limit(),
                            limits.operateReason())
                    + TenTimes.between(feed, tables),
                "pulls in at " + up.limit())
            .measured(new Measure(volts, "V"), new Measure(limits.operate().value(), "V"));
    feed.wayIn(state).stream()
        .flatMap(way -> CoilFeed.sourcesOf(way).stream())
        .forEach(
            source ->
                finding.alsoAt(SourceVolts.mark(feed.study(), source), "gives " + gives(source)));
    return finding.todo(
        "Feed %s with its rated %s from contact to return by a way that nothing else shares, or fit a coil for the voltage that is there."
            .formatted(feed.relay(), Printed.volts(feed.ratedVolts())),
        Basis.of(limits.operate(), limits.release()).and(theory));
  }

  /** What the line loses, where the whole of the supply's voltage would pull the coil in. */
  private Optional<LineCure> line(CoilFeed feed, State state, double volts, CoilLimits limits) {
    double source =
        feed.wayIn(state).stream()
            .flatMap(way -> CoilFeed.sourcesOf(way).stream())
            .flatMap(s -> s.volts().stream())
            .mapToDouble(Quantity::nominal)
            .findFirst()
            .orElse(0);
    return feed.wayIn(state)
        .map(way -> LineLoss.of(feed.study(), way, tables))
        .map(loss -> new LineCure(tables, loss, source, volts, limits.operate().value()))
        .filter(LineCure::lineCanHelp)
        .filter(cure -> feed.isSound(state));
  }

  private Outcome byLine(
      CoilFeed feed, State state, CoilLimits limits, LineCure cure, Stretch most, Printed.Pair up) {
    String lost = Printed.volts(cure.lost(most));
    return Subject.of(FACTS, most.mark(), feed.relay())
        .violated(
            "%s loses so much that %s hangs between in and out"
                .formatted(most.name(), feed.relay()),
            cure.lossInWords(most)
                + "With %s %s gets %s: more than the %s at which it lets go (%s), less than the %s that it needs to pull in (%s)."
                    .formatted(
                        Positions.of(feed.study(), state),
                        feed.relay(),
                        up.value(),
                        Printed.volts(limits.release().value()),
                        limits.releaseReason(),
                        up.limit(),
                        limits.operateReason()),
            "loses " + lost)
        .alsoAt(feed.rangeMark(), "pulls in at " + up.limit())
        .measured(new Measure(cure.coil(), "V"), new Measure(limits.operate().value(), "V"))
        .change(cure.change(feed, most))
        .todo(
            cure.inWords(feed, Optional.of(most)),
            Basis.of(limits.operate(), limits.release()).and(theory));
  }

  private static String gives(Source source) {
    return source.volts().map(v -> Printed.volts(v.nominal())).orElse("an unknown voltage");
  }
}
