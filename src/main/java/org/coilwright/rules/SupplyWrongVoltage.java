package org.coilwright.rules;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.CurrentKind;
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
import org.coilwright.rules.SupplyInput.Feed;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** The mains input of a controller or a supply lies on a voltage it is not made for. */
final class SupplyWrongVoltage implements Rule {
  private static final RuleFacts FACTS =
      RuleFacts.of("supply.wrong-voltage", Weight.STOP, "supply on the wrong voltage")
          .what(
              "For the mains input of each controller and supply unit, finds between which sides of"
                  + " which source its two pins come to lie, in any position, and compares that"
                  + " voltage and its kind with what is written at the input. A single value may be"
                  + " missed by a tenth; a range such as 100..240 V is taken as it stands.")
          .why(
              "Between two lines of a 400 V network an input made for 230 V burns; on too little it"
                  + " does not work, and what it feeds hangs between on and off.")
          .remedy("Wire the input to the two sides that have its voltage, or take one for these.")
          .blind(
              "How far the mains rise and sag: nominal voltages are compared. Frequency, and which"
                  + " of the two pins is on the neutral.")
          .sources("iec-60038", "circuit-theory")
          .consequenceOf("wiring.short-circuit", "separation.mains-meets-elv")
          .meansWiredOtherwise();

  private static final String TAKE = "Take a device";

  private final Cited<Double> band;
  private final Basis written;

  SupplyWrongVoltage(Tables tables) {
    band = tables.figure("sizing.rated-voltage-band");
    written = new Basis(List.of(tables.source("circuit-theory").cite()), Standing.PUBLISHED);
  }

  @Override
  public RuleFacts facts() {
    return FACTS;
  }

  @Override
  public List<Outcome> check(Study study) {
    List<Outcome> outcomes = new ArrayList<>();
    for (SupplyInput input : SupplyInput.all(study)) {
      if (!input.feeds().isEmpty()) {
        outcomes.add(judge(study, input));
      }
    }
    return outcomes;
  }

  private Outcome judge(Study study, SupplyInput input) {
    String name = input.part().name();
    Optional<Written<Quantity>> made = input.input().voltage();
    if (made.isEmpty()) {
      return Subject.of(FACTS, input.input().mark(), name)
          .undecided(
              "%s.voltage of %s".formatted(SupplyInput.key(input.part()), name),
              "Whether %s gets the voltage it is made for is open: that is not written."
                  .formatted(name));
    }
    Subject subject = Subject.of(FACTS, made.get().mark(), name);
    Optional<Feed> unknown = input.feeds().stream().filter(f -> f.volts().isEmpty()).findFirst();
    if (unknown.isPresent()) {
      Source source = source(study.circuit(), unknown.get());
      return subject.undecided(
          "%s.voltage of %s".formatted(DirectSupply.keyOf(study.circuit(), source), source.part()),
          "Whether %s gets the voltage it is made for is open: that of %s is not written."
              .formatted(name, source.part()));
    }
    Quantity rated = made.get().value();
    Feed feed =
        input.feeds().stream()
            .filter(f -> misses(f, rated))
            .max(Comparator.comparingDouble(SupplyWrongVoltage::volts))
            .orElse(input.feeds().get(0));
    return misses(feed, rated)
        ? wrong(study, input, made.get(), feed)
        : subject.satisfied(
            "%s is made for %s and lies between %s and %s: %s."
                .formatted(name, made.get().text(), feed.one(), feed.other(), inWords(feed)),
            new Measure(volts(feed), "V"),
            new Measure(rated.nominal(), "V"),
            basis(rated));
  }

  private Outcome wrong(Study study, SupplyInput input, Written<Quantity> made, Feed feed) {
    String name = input.part().name();
    Subject.Finding finding =
        Subject.of(FACTS, made.mark(), name)
            .violated(
                "%s lies on the wrong voltage".formatted(name),
                "Its input is made for %s and lies between %s and %s, which is %s."
                    .formatted(made.text(), feed.one(), feed.other(), inWords(feed)),
                "made for " + made.text())
            .alsoAt(lastWire(study, input, feed), "brings " + inWords(feed))
            .alsoAt(
                SourceVolts.mark(study, source(study.circuit(), feed)),
                "this is where it comes from")
            .measured(new Measure(volts(feed), "V"), new Measure(made.value().nominal(), "V"));
    String remedy = remedy(study, input, made, feed);
    if (remedy.startsWith(TAKE)) {
      finding.change(made.mark(), inWords(feed));
    }
    return finding.todo(remedy, basis(made.value()));
  }

  /** The side of the mains that would do, else a device that would. */
  private String remedy(Study study, SupplyInput input, Written<Quantity> made, Feed feed) {
    List<Source> lines =
        study.circuit().branches(Source.class).stream().filter(s -> !s.isDirect()).toList();
    String take =
        TAKE
            + " whose input is made for %s in place of %s."
                .formatted(inWords(feed), input.part().name());
    Quantity rated = made.value();
    if (rated.kind() == CurrentKind.DC || lines.isEmpty()) {
      return take;
    }
    Optional<Double> toNeutral = lines.get(0).volts().map(Quantity::nominal);
    if (toNeutral.filter(v -> !isOutside(v, rated)).isPresent()) {
      return "Wire %s between one line and the neutral: that is %s."
          .formatted(input.part().name(), Printed.volts(toNeutral.get()));
    }
    Optional<Double> toLine =
        lines.size() > 1 ? SourceVolts.between(lines.get(0), lines.get(1)) : Optional.empty();
    return toLine
        .filter(v -> !isOutside(v, rated))
        .map(
            v ->
                "Wire %s between two lines: that is %s."
                    .formatted(input.part().name(), Printed.volts(v)))
        .orElse(take);
  }

  private boolean misses(Feed feed, Quantity rated) {
    CurrentKind wants = rated.kind();
    boolean otherKind = wants != CurrentKind.UNSTATED && feed.direct() != (wants == CurrentKind.DC);
    return otherKind || isOutside(volts(feed), rated);
  }

  /** Outside what is written; a value that stands alone may be missed by the band. */
  private boolean isOutside(double volts, Quantity rated) {
    double share = rated.isExact() ? band.value() : 0;
    return Comparison.exceeds(volts, rated.high() * (1 + share))
        || Comparison.fallsShort(volts, rated.low() * (1 - share));
  }

  private Basis basis(Quantity rated) {
    return rated.isExact() ? Basis.of(band) : written;
  }

  private static double volts(Feed feed) {
    return feed.volts().orElse(0.0);
  }

  private static String inWords(Feed feed) {
    return Printed.of(volts(feed), Dimension.VOLTAGE) + (feed.direct() ? " DC" : "");
  }

  private static Source source(Circuit circuit, Feed feed) {
    return circuit.branches(Source.class).stream()
        .filter(s -> s.isDirect() == feed.direct())
        .filter(
            s -> Stream.of(feed.one(), feed.other()).anyMatch(side -> side.node().equals(s.to())))
        .findFirst()
        .orElseThrow();
  }

  /** The wire by which it comes to the first pin. */
  private static Mark lastWire(Study study, SupplyInput input, Feed feed) {
    return study
        .circuit()
        .path(feed.one().node(), input.pins().get(0), Feeding::isWay)
        .map(path -> path.branches())
        .filter(branches -> !branches.isEmpty())
        .map(branches -> branches.get(branches.size() - 1).mark())
        .orElse(input.input().mark());
  }
}
