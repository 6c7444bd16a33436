package org.coilwright.rules;

import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch.Passive;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.rule.Measure;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.solve.CoilReading;
import org.coilwright.solve.State;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/**
 * What a coil is held with in an economy circuit, against what it surely holds with.
 *
 * @param state the one of its economy states in which it gets least
 */
record EconomyHold(CoilFeed feed, State state, Tables tables) {
  /** Looks at the state in which least is left; {@code economy} is not empty. */
  static EconomyHold of(CoilFeed feed, List<State> economy, Tables tables) {
    State worst =
        economy.stream()
            .min(Comparator.comparingDouble(s -> feed.study().coil(feed.relay(), s).lowest()))
            .orElseThrow();
    return new EconomyHold(feed, worst, tables);
  }

  /** Volts at and above which it surely stays in, and in words where that comes from. */
  private record Holds(Cited<Double> volts, String reason, boolean written) {}

  private Optional<Holds> holds() {
    Optional<Written<Quantity>> release = feed.spec().release().filter(r -> !r.value().isExact());
    if (release.isPresent()) {
      Quantity range = release.get().value();
      boolean volts = range.dimension() == Dimension.VOLTAGE;
      double high = volts ? range.high() : range.high() * feed.ratedVolts();
      return Optional.of(
          new Holds(
              new Cited<>(high, tables.source("part-data"), "", Standing.PUBLISHED),
              "upper end of its release voltage, " + release.get().text(),
              true));
    }
    return feed.part().filter(Part.Relay::isContactor).isPresent()
        ? Optional.of(
            new Holds(
                tables.figure("coil.contactor-holds-above").map(s -> s * feed.ratedVolts()),
                "any contactor's, its own is not written",
                false))
        : Optional.empty();
  }

  Outcome judge(RuleFacts rule) {
    CoilReading reading = feed.study().coil(feed.relay(), state);
    Optional<Holds> holds = holds();
    double least = reading.lowest();
    boolean enough = holds.stream().anyMatch(h -> !Comparison.fallsShort(least, h.volts().value()));
    if (holds.isEmpty() || (!enough && !holds.get().written())) {
      return Subject.of(rule, feed.rangeMark(), feed.relay())
          .undecided(
              "upper end of coil.release of " + feed.relay(),
              "Once it is in, %s is held with %s at worst; whether that is enough is open: the voltage above which it surely stays in is not written, such as release: 10..50 %%."
                  .formatted(feed.relay(), Printed.volts(least)));
    }
    Holds known = holds.get();
    Printed.Pair volts = Printed.pair(least, known.volts().value(), Dimension.VOLTAGE);
    Measure value = new Measure(least, "V");
    Measure limit = new Measure(known.volts().value(), "V");
    Basis basis =
        Basis.of(known.volts())
            .and(new Basis(List.of(tables.source("circuit-theory").cite()), Standing.PUBLISHED));
    if (enough) {
      return Subject.of(rule, feed.rangeMark(), feed.relay())
          .satisfied(
              "%s pulls in with its whole voltage, is then held with %s at worst (%s) and stays in above %s (%s)."
                  .formatted(
                      feed.relay(),
                      volts.value(),
                      reading.lowestCorner(),
                      volts.limit(),
                      known.reason()),
              value,
              limit,
              basis);
    }
    Subject.Finding finding =
        Subject.of(
                rule,
                feed.spec().release().map(Written::mark).orElse(feed.rangeMark()),
                feed.relay())
            .violated(
                "%s may let go again once it is in".formatted(feed.relay()),
                "Its own contact then leaves it %s at worst, and it surely stays in only above %s (%s): short by %s."
                    .formatted(volts.value(), volts.limit(), known.reason(), volts.apart()),
                "holds above " + volts.limit())
            .measured(value, limit);
    Optional<Passive> resistor = resistor();
    resistor.ifPresent(r -> finding.alsoAt(r.mark(), "takes the rest"));
    return finding
        .detail(
            "Worst case: %s; %s."
                .formatted(reading.lowestCorner(), Positions.of(feed.study(), state)))
        .change(
            resistor
                .map(Passive::spec)
                .filter(Part.Resistor.class::isInstance)
                .flatMap(r -> ((Part.Resistor) r).resistance()),
            ohms(reading, known, resistor)
                .map(o -> Printed.atMost(o, Dimension.RESISTANCE))
                .orElse(""))
        .todo(cure(reading, known, resistor), basis);
  }

  /** The resistor that its own opening contact bridges while it pulls in. */
  private Optional<Passive> resistor() {
    return feed.switches().stream()
        .filter(feed::opensAsItPullsIn)
        .flatMap(
            contact ->
                feed.study().circuit().branches(Passive.class).stream()
                    .filter(p -> CoilWays.acrossTheSame(feed.study().circuit(), p, contact)))
        .findFirst();
  }

  /** Ω that leave the coil what it needs, as far as a resistor can. */
  private Optional<Double> ohms(CoilReading reading, Holds known, Optional<Passive> resistor) {
    double source = reading.sourceVolts();
    double needed = known.volts().value();
    if (source <= needed || reading.lowest() <= 0) {
      return Optional.empty();
    }
    double ratio = ((source - needed) / needed) / ((source - reading.lowest()) / reading.lowest());
    return resistor
        .map(Passive::spec)
        .filter(Part.Resistor.class::isInstance)
        .map(Part.Resistor.class::cast)
        .flatMap(Part.Resistor::resistance)
        .map(ohms -> (ohms.value().high() + line()) * ratio - line())
        .filter(ohms -> ohms > 0);
  }

  /** Ω of the wires, which stay what they are. */
  private double line() {
    // the way that holds leads through the resistor, and otherwise over the same wires
    return feed.ways().stream()
        .mapToDouble(way -> LineLoss.of(feed.study(), way, tables).ohms())
        .max()
        .orElse(0);
  }

  /** The coil's share follows from the ratio of what is in series with it to its own ohms. */
  private String cure(CoilReading reading, Holds known, Optional<Passive> resistor) {
    if (reading.sourceVolts() <= known.volts().value() || reading.lowest() <= 0) {
      return "Take a coil that holds with less, or leave the resistor of %s out."
          .formatted(feed.relay());
    }
    return ohms(reading, known, resistor)
        .map(
            ohms ->
                "Take a resistor of at most %s there, or a coil that holds with %s."
                    .formatted(
                        Printed.atMost(ohms, Dimension.RESISTANCE),
                        Printed.atMost(reading.lowest(), Dimension.VOLTAGE)))
        .orElse("Let less resistance into the way of %s once it is in.".formatted(feed.relay()));
  }
}
