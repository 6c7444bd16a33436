package org.coilwright.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Comparison;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.CableCapacitance;
import org.coilwright.solve.CoilLimits;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** The capacitance of the line to its contact can hold an AC coil in. */
final class CoilLineTooLong implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("coil.line-too-long", Weight.FIX, "line long enough to hold an AC coil in")
          .what(
              "Raised for each AC coil whose open line lies beside a live core in the same run over"
                  + " more than the length at which the capacitance between the two holds the coil"
                  + " at its release voltage. With m = release over rated voltage and k = highest"
                  + " supply over rated voltage, that capacitance is m/(k+m) · hold VA / (2πf·U²).")
          .why("The contactor stays in after its contact has opened, and what it feeds stays on.")
          .remedy(
              "Switch at the supply's end of the line, use a direct-voltage relay for the distance,"
                  + " or put a resistor across the coil.")
          .blind(
              "Wires of different runs that lie side by side, screens, and cables with more"
                  + " capacitance than the one the figure was read for.")
          .sources("motor-control-handbook", "circuit-theory", "contactor-data")
          .consequenceOf("coil.wrong-current-kind", "separation.mains-meets-elv");

  private final Tables tables;

  CoilLineTooLong(Tables tables) {
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
    if (!feed.isAlternating() || feed.sources().stream().anyMatch(Source::isDirect)) {
      return Optional.empty();
    }
    return feed.idleStates().isEmpty()
        ? Optional.empty()
        : Optional.of(compare(feed, OpenLine.longestBesideLive(feed)));
  }

  private Outcome compare(CoilFeed feed, List<Run> beside) {
    Subject subject = PerCoil.subject(FACTS, feed);
    if (beside.isEmpty()) {
      return subject.satisfied(
          "No run holds a live core beside the line that hangs on %s while it is off."
              .formatted(feed.relay()),
          new Basis(List.of(tables.source("circuit-theory").cite()), Standing.PUBLISHED));
    }
    Optional<Gap> missing = missing(feed, beside);
    if (missing.isPresent()) {
      return PerCoil.undecided(
          FACTS,
          feed,
          missing.get(),
          "Whether the line to %s is short enough to let it go cannot be told."
              .formatted(feed.relay()));
    }
    CoilLimits limits = feed.study().limits(feed.relay()).orElseThrow();
    double hertz = hertz(feed).map(Quantity::nominal).orElseThrow();
    double rated = feed.ratedVolts();
    double hold = feed.spec().hold().orElseThrow().value().low();
    double m = limits.release().value() / rated;
    double k = supply(feed) / rated;
    Cited<Double> perMetre = tables.figure("coil.cable-capacitance-read");
    List<Cited<?>> figures = new ArrayList<>(List.of(perMetre, limits.release()));
    // a supply k times the rated voltage holds as a release voltage of m/k would at the rated one
    double farads = CableCapacitance.holdingFarads(m / k, hold, rated, hertz);
    double allowed = farads / perMetre.value();
    if (feed.holdsItself()) {
      Cited<Double> share = tables.figure("coil.momentary-control-share");
      figures.add(share);
      allowed *= share.value();
    }
    double metres = beside.stream().mapToDouble(r -> r.length().orElseThrow().value().high()).sum();
    Measure value = new Measure(metres, "m");
    Measure limit = new Measure(allowed, "m");
    Basis basis =
        Basis.of(figures)
            .and(
                new Basis(
                    List.of(tables.source("circuit-theory").cite()), limits.release().standing()));
    String control = feed.holdsItself() ? "held by its own contact" : "held by its contact alone";
    if (!Comparison.exceeds(metres, allowed)) {
      return subject.satisfied(
          "The open line of %s lies beside a live core for %s; up to %s lets it go (%s, %s hold, release %s)."
              .formatted(
                  feed.relay(),
                  Printed.of(metres, Dimension.LENGTH),
                  Printed.atMost(allowed, Dimension.LENGTH),
                  control,
                  Printed.of(hold, Dimension.APPARENT_POWER),
                  Printed.percent(m)),
          value,
          limit,
          basis);
    }
    Run longest =
        beside.stream()
            .max(Comparator.comparingDouble(r -> r.length().orElseThrow().value().high()))
            .orElseThrow();
    Printed.Pair farad =
        Printed.pair(perMetre.value() * metres, perMetre.value() * allowed, Dimension.CAPACITANCE);
    double shunt = CableCapacitance.shuntOhms(perMetre.value() * metres);
    Mark lengthMark = longest.length().map(Written::mark).orElse(longest.mark());
    return Subject.of(FACTS, lengthMark, feed.relay(), longest.name())
        .violated(
            "the line can hold %s in".formatted(feed.relay()),
            "Its open line lies beside a live core for %s; beyond %s the capacitance between them can hold it in."
                .formatted(
                    Printed.of(metres, Dimension.LENGTH),
                    Printed.atMost(allowed, Dimension.LENGTH)),
            "at most " + Printed.atMost(allowed, Dimension.LENGTH))
        .alsoAt(
            feed.coil().mark(),
            "%s hold, lets go at %s"
                .formatted(
                    Printed.of(hold, Dimension.APPARENT_POWER),
                    Printed.volts(limits.release().value())))
        .detail(
            "That much cable has %s; the coil, %s, lets go beside up to %s at %s, %s."
                .formatted(
                    farad.value(),
                    control,
                    farad.limit(),
                    Printed.volts(supply(feed)),
                    Printed.of(hertz, Dimension.FREQUENCY)))
        .measured(value, limit)
        .todo(
            "Put the contact at the supply's end of the line; or drive the distance with a DC relay; or put a resistor of %s that stands %s for good across %s and %s."
                .formatted(
                    Printed.atMost(shunt, Dimension.RESISTANCE),
                    Printed.atLeast(supply(feed) * supply(feed) / shunt, Dimension.POWER),
                    feed.coil().from(),
                    feed.coil().to()),
            basis);
  }

  private static Optional<Gap> missing(CoilFeed feed, List<Run> beside) {
    Optional<Run> endless = beside.stream().filter(r -> r.length().isEmpty()).findFirst();
    if (endless.isPresent()) {
      return endless.map(run -> new Gap("length of " + run.name(), run.mark()));
    }
    if (feed.spec().hold().isEmpty()) {
      return Optional.of(new Gap("coil.hold of " + feed.relay(), feed.coil().mark()));
    }
    if (feed.study().limits(feed.relay()).isEmpty()) {
      return Optional.of(Gap.ofLimits(feed));
    }
    Site site = feed.study().circuit().netlist().site();
    return hertz(feed).isPresent()
        ? Optional.empty()
        : Optional.of(
            new Gap("site.mains.frequency", site.mains().map(m -> m.mark()).orElse(site.mark())));
  }

  private static Optional<Quantity> hertz(CoilFeed feed) {
    return feed.study()
        .circuit()
        .netlist()
        .site()
        .mains()
        .flatMap(mains -> mains.frequency())
        .map(Written::value);
  }

  /** Highest voltage that the supply drives the coil with. */
  private static double supply(CoilFeed feed) {
    return feed.ratedVolts() * SourceVolts.rise(feed.sources());
  }
}
