package org.coilwright.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
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
import org.coilwright.rules.LineLoss.Stretch;
import org.coilwright.solve.CoilLimits;
import org.coilwright.solve.CoilReading;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/** At worst the coil gets less than it needs to pull in. */
final class CoilTooLow implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("coil.too-low", Weight.FIX, "coil voltage too low")
          .what(
              "Raised for each coil that gets less than it needs to operate when the supply is at"
                  + " its lowest and the line at its hottest, in any position in which it shall be"
                  + " on. Where a line without loss would be enough, the line leads.")
          .why(
              "The relay may not pull in, or only when it is cold. A contactor that hangs half-way"
                  + " welds its contacts and burns its coil.")
          .remedy("Thicker wire, a shorter line, or a supply that sags less.")
          .blind(
              "Supplies that sag under load beyond their written tolerance, bad joints, and coils"
                  + " that are hotter than the site says.")
          .sources("circuit-theory", "iec-60228", "iec-61810-1", "iec-60947-4-1")
          .consequenceOf(
              "coil.wrong-current-kind",
              "coil.reversed",
              "coil.half-pulled",
              "wiring.short-circuit",
              "wiring.self-joined",
              "suppression.reversed",
              "suppression.diode-on-ac",
              "separation.mains-meets-elv");

  /** Where the supply folds back whenever the coil is on, the overload is the cause. */
  private static final RuleFacts OVERLOADED = FACTS.alsoConsequenceOf("supply.overloaded");

  private final Tables tables;

  CoilTooLow(Tables tables) {
    this.tables = tables;
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
        feed.soundStates().stream()
            .min(Comparator.comparingDouble(s -> feed.study().coil(feed.relay(), s).lowest()));
    return PerCoil.judge(FACTS, feed, worst, "gets enough", this::compare);
  }

  private Outcome compare(CoilFeed feed, State state, CoilLimits limits) {
    RuleFacts rule = feed.supplyFolds() ? OVERLOADED : FACTS;
    Subject subject = Subject.of(rule, operateMark(feed, limits), feed.relay());
    CoilReading reading = feed.study().coil(feed.relay(), state);
    Path way = feed.wayIn(state).orElseThrow();
    LineLoss loss = LineLoss.of(feed.study(), way, tables);
    double needed = limits.operate().value();
    if (Comparison.fallsShort(reading.lowest(), needed)) {
      return tooLow(subject, feed, state, limits, loss);
    }
    Optional<Outcome> gap = whatIsMissing(feed, reading, needed, loss);
    if (gap.isPresent()) {
      return gap.get();
    }
    Printed.Pair volts = Printed.inside(reading.lowest(), needed, Dimension.VOLTAGE);
    return subject.satisfied(
        "%s gets %s at worst (%s) and needs %s (%s)."
            .formatted(
                feed.relay(),
                volts.value(),
                reading.lowestCorner(),
                volts.limit(),
                limits.operateReason()),
        new Measure(reading.lowest(), "V"),
        new Measure(needed, "V"),
        basis(feed, limits, loss));
  }

  /** Where that is written which decides at what voltage the coil pulls in. */
  private static Mark operateMark(CoilFeed feed, CoilLimits limits) {
    return limits.operateMark().orElse(feed.rangeMark());
  }

  /** Enough as computed, but computed without something that matters. */
  private Optional<Outcome> whatIsMissing(
      CoilFeed feed, CoilReading reading, double needed, LineLoss loss) {
    Printed.Pair volts = Printed.pair(reading.lowest(), needed, Dimension.VOLTAGE);
    String without =
        "; were nothing lost there, it would get %s at worst, and it needs %s."
            .formatted(volts.value(), volts.limit());
    if (loss.missing().isPresent()) {
      return Optional.of(
          PerCoil.undecided(
              FACTS,
              feed,
              loss.missing().get(),
              "What the line to %s loses cannot be told".formatted(feed.relay()) + without));
    }
    if (Gap.ofCurrent(feed).isPresent()) {
      return Optional.of(
          PerCoil.undecided(
              FACTS,
              feed,
              Gap.ofCurrent(feed).get(),
              "What %s draws, and so what its line loses, cannot be told".formatted(feed.relay())
                  + without));
    }
    if (feed.isAlternating() && feed.spec().pickUp().isEmpty()) {
      // pulling in, it draws up to this many times what it holds with, and the line loses as much
      double multiple = tables.figure("coil.pick-up-multiple").value();
      double lost = (reading.sourceVolts() - reading.lowest()) * multiple;
      if (Comparison.fallsShort(reading.sourceVolts() - lost, needed)) {
        return Optional.of(
            PerCoil.undecided(
                FACTS,
                feed,
                Gap.ofPickUp(feed),
                "%s draws more while it pulls in than while it holds, and how much is not given. With what it holds with, it gets %s at worst and needs %s."
                    .formatted(feed.relay(), volts.value(), volts.limit())));
      }
    }
    return Optional.empty();
  }

  private Outcome tooLow(
      Subject subject, CoilFeed feed, State state, CoilLimits limits, LineLoss loss) {
    CoilReading reading = feed.study().coil(feed.relay(), state);
    double needed = limits.operate().value();
    LineCure cure = new LineCure(tables, loss, reading.sourceVolts(), reading.lowest(), needed);
    Printed.Pair volts = Printed.pair(reading.lowest(), needed, Dimension.VOLTAGE);
    Optional<Stretch> most = loss.stretches().stream().findFirst();
    Optional<Part.Resistor> resistor = loss.resistor().filter(r -> loss.isMostlyResistor());
    boolean byLine = resistor.isEmpty() && cure.lineCanHelp() && most.isPresent();
    Subject cause =
        byLine
            ? new Subject(subject.rule(), most.get().mark(), subject.at())
            : resistor
                .map(r -> new Subject(subject.rule(), r.head().mark(), subject.at()))
                .orElse(subject);
    String needs = "needs at least " + volts.limit();
    Subject.Finding finding =
        cause
            .violated(
                byLine || resistor.isPresent()
                    ? "%s loses too much for %s to pull in"
                        .formatted(
                            resistor.map(Part::name).orElseGet(() -> most.orElseThrow().name()),
                            feed.relay())
                    : "%s may not pull in".formatted(feed.relay()),
                (byLine ? cure.lossInWords(most.get()) : "")
                    + resistor.map(r -> cure.resistorInWords(r)).orElse("")
                    + "%s gets %s at worst and needs %s (%s): short by %s."
                        .formatted(
                            byLine || resistor.isPresent() ? feed.relay() : "It",
                            volts.value(),
                            volts.limit(),
                            limits.operateReason(),
                            volts.apart())
                    + TenTimes.between(feed, tables),
                byLine
                    ? lost(most.get(), cure)
                    : resistor
                        .map(r -> "loses " + Printed.volts(cure.lostInResistor()))
                        .orElse(needs))
            .measured(new Measure(reading.lowest(), "V"), new Measure(needed, "V"))
            .alsoAt(subject.mark(), needs);
    showSupply(finding, feed, state, reading);
    most.filter(stretch -> resistor.isEmpty())
        .ifPresent(stretch -> showLine(finding, stretch, cure));
    most.ifPresent(stretch -> finding.change(cure.change(feed, stretch)));
    return finding
        .detail(
            "Worst case: %s; %s."
                .formatted(reading.lowestCorner(), Positions.of(feed.study(), state)))
        .todo(
            cure.inWords(feed, most.filter(stretch -> resistor.isEmpty())),
            basis(feed, limits, loss));
  }

  private static void showLine(Subject.Finding finding, Stretch stretch, LineCure cure) {
    if (cure.lost(stretch) > 0) {
      finding.alsoAt(stretch.mark(), lost(stretch, cure));
    }
  }

  /** {@code loses 2.12 V there and back}. */
  private static String lost(Stretch stretch, LineCure cure) {
    return "loses %s%s"
        .formatted(Printed.volts(cure.lost(stretch)), stretch.cores() > 1 ? " there and back" : "");
  }

  private static void showSupply(
      Subject.Finding finding, CoilFeed feed, State state, CoilReading reading) {
    feed.wayIn(state).stream()
        .flatMap(way -> CoilFeed.sourcesOf(way).stream())
        .forEach(
            source ->
                finding.alsoAt(
                    SourceVolts.mark(feed.study(), source),
                    "gives %s at its lowest".formatted(Printed.volts(reading.sourceVolts()))));
  }

  private Basis basis(CoilFeed feed, CoilLimits limits, LineLoss loss) {
    List<Cited<?>> figures = new ArrayList<>();
    figures.add(limits.operate());
    if (feed.isAlternating() && feed.spec().pickUp().isEmpty()) {
      figures.add(tables.figure("coil.pick-up-multiple"));
    }
    loss.stretches().forEach(stretch -> figures.addAll(stretch.figures()));
    return Basis.of(figures);
  }
}
