package org.coilwright.rules;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import org.coilwright.circuit.Branch.Passive;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Run;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Change;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.Rewiring;
import org.coilwright.rule.Rule;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.rule.Weight;
import org.coilwright.solve.Study;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** The capacitance of the line to its contact can hold an AC coil in. */
final class CoilLineTooLong implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("coil.line-too-long", Weight.FIX, "line long enough to hold an AC coil in")
          .what(
              "Raised for each AC coil whose open line lies beside a live core in the same run so"
                  + " far that the capacitance between the two leaves more on it than it surely"
                  + " lets go at, a tenth taken off as margin: U·ωC / √((G + 1/R)² + (ωC − B)²), U"
                  + " the highest supply, G and B those of the coil while it holds, R a resistor"
                  + " drawn across it.")
          .why("The contactor stays in after its contact has opened, and what it feeds stays on.")
          .remedy(
              "Switch at the supply's end of the line, use a direct-voltage relay for the distance,"
                  + " or put a resistor across the coil.")
          .blind(
              "Wires of different runs that lie side by side, screens, and cables with more"
                  + " capacitance than the usual upper figure.")
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
    LineHold held = LineHold.of(feed, tables);
    return held.isTooLong() ? tooLong(feed, beside, held) : shortEnough(feed, held);
  }

  private Outcome shortEnough(CoilFeed feed, LineHold held) {
    Printed.Pair volts = Printed.inside(held.leaves(), held.most(), Dimension.VOLTAGE);
    return PerCoil.subject(FACTS, feed)
        .satisfied(
            "The open line of %s lies beside a live core for %s, which leaves %s on it%s; it lets go below %s (up to %s of line)."
                .formatted(
                    feed.relay(),
                    Printed.of(held.metres(), Dimension.LENGTH),
                    volts.value(),
                    beside(held),
                    volts.limit(),
                    Printed.atMost(held.allowed(), Dimension.LENGTH)),
            new Measure(held.leaves(), "V"),
            new Measure(held.most(), "V"),
            held.basis());
  }

  private static String beside(LineHold held) {
    return held.across().isEmpty()
        ? ""
        : " with %s across it"
            .formatted(String.join(" and ", held.across().stream().map(Passive::part).toList()));
  }

  private Outcome tooLong(CoilFeed feed, List<Run> beside, LineHold held) {
    Run longest =
        beside.stream()
            .max(Comparator.comparingDouble(r -> r.length().orElseThrow().value().high()))
            .orElseThrow();
    Printed.Pair volts = Printed.pair(held.leaves(), held.most(), Dimension.VOLTAGE);
    Subject.Finding finding =
        Subject.of(
                FACTS,
                longest.length().map(Written::mark).orElse(longest.mark()),
                feed.relay(),
                longest.name())
            .violated(
                "the line can hold %s in".formatted(feed.relay()),
                "Its open line lies beside a live core for %s; the capacitance between them leaves %s on the coil%s, and it surely lets go below %s: too much by %s."
                    .formatted(
                        Printed.of(held.metres(), Dimension.LENGTH),
                        volts.value(),
                        beside(held),
                        volts.limit(),
                        volts.apart()),
                "at most " + Printed.atMost(held.allowed(), Dimension.LENGTH))
            .alsoAt(
                feed.coil().mark(),
                "%s hold, lets go at %s"
                    .formatted(
                        Printed.of(held.coil().holdVoltAmperes(), Dimension.APPARENT_POWER),
                        Printed.volts(held.limits().release().value())));
    held.across().forEach(r -> finding.alsoAt(r.mark(), "lets too little past the coil"));
    return finding
        .detail(
            "Taken: %s at %s, %s, power factor %s; %s of the release voltage (%s) as margin."
                .formatted(
                    Printed.of(held.farads(), Dimension.CAPACITANCE),
                    Printed.volts(held.coil().supply()),
                    Printed.of(held.coil().hertz(), Dimension.FREQUENCY),
                    Printed.of(held.coil().powerFactor(), Dimension.COUNT),
                    Printed.percent(1 - tables.figure("coil.off-state-margin").value()),
                    held.limits().releaseReason()))
        .measured(new Measure(held.leaves(), "V"), new Measure(held.most(), "V"))
        .change(resistor(feed, held))
        .todo(cures(feed, held), held.basis());
  }

  /** The resistor drawn in, or in place of the one there. */
  private static List<Change> resistor(CoilFeed feed, LineHold held) {
    OptionalDouble ohms = held.coil().shuntOhms(held.farads(), held.most());
    if (ohms.isEmpty() || held.across().size() > 1) {
      return List.of();
    }
    double watts = held.coil().supply() * held.coil().supply() / ohms.getAsDouble();
    String value = Printed.atMost(ohms.getAsDouble(), Dimension.RESISTANCE);
    String power = Printed.atLeast(2 * watts, Dimension.POWER);
    if (!held.across().isEmpty()) {
      return held.across().get(0).spec() instanceof Part.Resistor there
          ? Stream.of(
                  there.resistance().map(r -> new Change(r.mark(), value)),
                  there.power().map(p -> new Change(p.mark(), power)))
              .flatMap(Optional::stream)
              .toList()
          : List.of();
    }
    Netlist netlist = feed.study().circuit().netlist();
    return Rewiring.across(
        netlist,
        Rewiring.free(netlist, "R"),
        "is: resistor, resistance: %s, power: %s".formatted(value, power),
        List.of("1", "2"),
        List.of(
            feed.relay() + "." + feed.spec().first(), feed.relay() + "." + feed.spec().second()));
  }

  /** The resistor that is enough; last of all where it would be a heater of its own. */
  private String cures(CoilFeed feed, LineHold held) {
    String others =
        "ut the contact at the supply's end of the line; or drive the distance with a DC relay that stands by %s; or take a coil for direct or for less voltage"
            .formatted(feed.relay());
    OptionalDouble ohms = held.coil().shuntOhms(held.farads(), held.most());
    if (ohms.isEmpty()) {
      return "P" + others + ".";
    }
    double watts = held.coil().supply() * held.coil().supply() / ohms.getAsDouble();
    String resistor =
        "a resistor of at most %s across %s and %s%s, which gives off %s as long as the coil is on: take one for %s"
            .formatted(
                Printed.atMost(ohms.getAsDouble(), Dimension.RESISTANCE),
                feed.coil().from(),
                feed.coil().to(),
                held.across().isEmpty() ? "" : " in place of the one there",
                Printed.of(watts, Dimension.POWER),
                Printed.atLeast(2 * watts, Dimension.POWER));
    boolean small = !Comparison.exceeds(watts, tables.figure("coil.shunt-most-watts").value());
    return small
        ? "Put %s; or p%s.".formatted(resistor, others)
        : "P%s; or, last, put %s.".formatted(others, resistor);
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
    Optional<Passive> unknown =
        CoilWays.resistorsAcross(feed).stream().filter(r -> LineHold.ohms(r).isEmpty()).findFirst();
    if (unknown.isPresent()) {
      return unknown.map(r -> new Gap("resistance of " + r.part(), r.mark()));
    }
    Site site = feed.study().circuit().netlist().site();
    return LineHold.hertz(feed).isPresent()
        ? Optional.empty()
        : Optional.of(
            new Gap("site.mains.frequency", site.mains().map(m -> m.mark()).orElse(site.mark())));
  }
}
