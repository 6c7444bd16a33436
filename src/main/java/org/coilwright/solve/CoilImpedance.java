package org.coilwright.solve;

import java.util.Optional;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.CoilSpec;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Quantity;
import org.coilwright.table.Tables;

/**
 * A coil's impedance from whatever its data sheet gives. Direct current: resistance, else power.
 * Alternating current: pick-up VA while the armature is out, hold VA and hold power while it is in;
 * one is estimated from the other where only one is given. Of a coil of which nothing is known only
 * the voltage is told: it is taken as a meter.
 */
final class CoilImpedance {
  private final CoilSpec spec;
  private final Tables tables;
  private final Copper copper;
  private final Air air;
  private final double hertz;
  private final double rated;
  private final double tolerance;

  CoilImpedance(Part.Relay relay, Tables tables, Copper copper, Air air, double hertz) {
    this.spec = relay.coil();
    this.tables = tables;
    this.copper = copper;
    this.air = air;
    this.hertz = hertz;
    this.rated = spec.voltage().value().nominal();
    this.tolerance = tables.figure("coil.resistance-tolerance").value();
  }

  /** What the coil's current is worked out from; empty if the data sheet gives nothing for it. */
  static Optional<String> basis(CoilSpec spec, CurrentKind kind) {
    if (kind == CurrentKind.AC) {
      return first(
          spec.hold().map(w -> "hold " + w.text()),
          spec.pickUp().map(w -> "pick-up " + w.text()),
          spec.power().map(Written::text),
          spec.resistance().map(Written::text));
    }
    return first(
        spec.resistance().map(Written::text),
        spec.power().map(Written::text),
        spec.hold().map(w -> "hold " + w.text()),
        spec.pickUp().map(w -> "pick-up " + w.text()));
  }

  @SafeVarargs
  private static Optional<String> first(Optional<String>... candidates) {
    for (Optional<String> candidate : candidates) {
      if (candidate.isPresent()) {
        return candidate;
      }
    }
    return Optional.empty();
  }

  Values values(CurrentKind kind, boolean in) {
    Spread direct = spread(directOhms(kind, in));
    Spread starting = kind == CurrentKind.AC ? direct : spread(directOhms(kind, false));
    Optional<Impedance> held = kind == CurrentKind.AC ? alternating(in) : Optional.empty();
    if (held.isEmpty()) {
      boolean solid = kind == CurrentKind.AC;
      return new Values(
          Optional.of(direct),
          Optional.of(solid ? direct : wound(direct)),
          Optional.of(starting),
          Optional.of(solid ? starting : wound(starting)));
    }
    Impedance pulling = alternating(false).orElse(held.get());
    return new Values(
        Optional.of(direct),
        Optional.of(Spread.within(held.get(), tolerance)),
        Optional.of(direct),
        Optional.of(Spread.within(pulling, tolerance)));
  }

  private Spread spread(Optional<Quantity> ohms) {
    return ohms.map(this::atTemperatures)
        .orElseGet(() -> Spread.exact(Impedance.ohms(Values.METER)));
  }

  /** A direct-current coil on alternating current: its time constant gives the inductance. */
  private Spread wound(Spread direct) {
    double tau = spec.timeConstant().map(t -> t.value().nominal()).orElse(0.0);
    double turn = 2 * Math.PI * hertz * tau;
    return new Spread(
        wound(direct.nominal(), turn), wound(direct.low(), turn), wound(direct.high(), turn));
  }

  private static Impedance wound(Impedance z, double turn) {
    return new Impedance(z.re(), z.re() * turn);
  }

  /** Least resistance when it is cold, most when it is hot. */
  private Spread atTemperatures(Quantity ohms) {
    double low = ohms.isExact() ? ohms.nominal() * (1 - tolerance) : ohms.low();
    double high = ohms.isExact() ? ohms.nominal() * (1 + tolerance) : ohms.high();
    return Spread.ohms(
        ohms.nominal(),
        low * copper.factor(air.coldest().value()),
        high * copper.factor(air.hottest().value()));
  }

  private Optional<Quantity> directOhms(CurrentKind kind, boolean in) {
    if (spec.resistance().isPresent()) {
      return spec.resistance().map(Written::value).filter(q -> q.low() > 0);
    }
    if (kind != CurrentKind.AC) {
      // a direct-current coil with a holding winding draws its pick-up power until it is in
      Optional<Written<Quantity>> steady = spec.power().or(spec::hold).or(spec::pickUp);
      Optional<Written<Quantity>> drawn = in ? steady : spec.pickUp().or(() -> steady);
      return ohmsOf(drawn.map(Written::value));
    }
    // Copper loss is at most the hold power: an upper bound for what the winding resists.
    return spec.hold()
        .filter(h -> spec.holdPower().isPresent() && h.value().nominal() > 0)
        .map(
            h -> {
              double amps = h.value().nominal() / rated;
              double watts = spec.holdPower().get().value().nominal();
              return Quantity.of(watts / (amps * amps), Dimension.RESISTANCE);
            })
        .filter(q -> q.low() > 0);
  }

  private Optional<Quantity> ohmsOf(Optional<Quantity> power) {
    return power.filter(p -> p.low() > 0).map(p -> p.dividing(rated * rated, Dimension.RESISTANCE));
  }

  private Optional<Impedance> alternating(boolean in) {
    double holdFactor =
        spec.hold()
            .flatMap(h -> spec.holdPower().map(p -> p.value().nominal() / h.value().nominal()))
            .filter(f -> f > 0 && f <= 1)
            .orElseGet(() -> tables.figure("coil.hold-power-factor").value());
    double pickUpFactor = tables.figure("coil.pick-up-power-factor").value();
    double multiple = tables.figure("coil.pick-up-multiple").value();
    Optional<Double> pickUp = spec.pickUp().map(w -> w.value().nominal()).filter(v -> v > 0);
    Optional<Double> hold =
        spec.hold().or(spec::power).map(w -> w.value().nominal()).filter(v -> v > 0);
    Optional<Double> volt =
        in ? hold.or(() -> pickUp.map(v -> v / multiple)) : pickUp.or(() -> hold);
    return volt.map(va -> Impedance.inductive(rated * rated / va, in ? holdFactor : pickUpFactor));
  }
}
