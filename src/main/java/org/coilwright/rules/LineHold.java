package org.coilwright.rules;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.coilwright.circuit.Branch.Passive;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.solve.CoilLimits;
import org.coilwright.solve.HeldByLine;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * What a line beside a live core leaves on an alternating-current coil, and what may be left.
 *
 * @param metres beside a live core
 * @param farads of that much line
 * @param most volts that may be left
 * @param across resistors that are drawn across the coil
 */
record LineHold(
    HeldByLine coil,
    CoilLimits limits,
    double metres,
    double farads,
    double most,
    List<Passive> across,
    Basis basis) {

  double leaves() {
    return coil.volts(farads);
  }

  boolean isTooLong() {
    return Comparison.exceeds(leaves(), most);
  }

  /** The longest line, m. */
  double allowed() {
    return metres * coil.farads(most) / farads;
  }

  /** Everything it needs is written. */
  static LineHold of(CoilFeed feed, Tables tables) {
    CoilLimits limits = feed.study().limits(feed.relay()).orElseThrow();
    double metres =
        OpenLine.longestBesideLive(feed).stream()
            .mapToDouble(r -> r.length().orElseThrow().value().high())
            .sum();
    Cited<Double> perMetre = tables.figure("coil.cable-capacitance");
    Cited<Double> margin = tables.figure("coil.off-state-margin");
    List<Cited<?>> figures = new ArrayList<>(List.of(perMetre, limits.release(), margin));
    double farads = metres * perMetre.value();
    if (feed.holdsItself()) {
      // two cores lie beside the live one
      Cited<Double> share = tables.figure("coil.momentary-control-share");
      figures.add(share);
      farads /= share.value();
    }
    List<Passive> across = CoilWays.resistorsAcross(feed);
    HeldByLine coil =
        new HeldByLine(
            feed.ratedVolts(),
            feed.spec().hold().orElseThrow().value().low(),
            powerFactor(feed),
            hertz(feed).map(Quantity::nominal).orElseThrow(),
            supply(feed),
            across.stream().mapToDouble(r -> 1 / ohms(r).orElseThrow().high()).sum());
    return new LineHold(
        coil,
        limits,
        metres,
        farads,
        limits.release().value() * margin.value(),
        across,
        Basis.of(figures)
            .and(
                new Basis(
                    List.of(tables.source("circuit-theory").cite()), limits.release().standing())));
  }

  /**
   * Of the closed coil; where its watts are not written it is taken to have none, the strictest.
   */
  private static double powerFactor(CoilFeed feed) {
    double hold = feed.spec().hold().orElseThrow().value().low();
    return feed.spec()
        .holdPower()
        .map(watts -> Math.min(1, watts.value().low() / hold))
        .orElse(0.0);
  }

  static Optional<Quantity> ohms(Passive resistor) {
    return resistor.spec() instanceof Part.Resistor r
        ? r.resistance().map(Written::value).filter(q -> q.low() > 0)
        : Optional.empty();
  }

  static Optional<Quantity> hertz(CoilFeed feed) {
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
