package org.coilwright.solve;

import java.util.Optional;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.CoilSpec;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.table.Tables;

/** A coil as the solver sees it: impedance out and in, the limits of its armature, its polarity. */
final class CoilModel {
  /** Two voltages this close, relative, are the same. */
  private static final double CLOSE = 1e-9;

  final CoilSpec spec;
  final CurrentKind kind;
  final double rated;

  /** Impedance while the armature is out, and while it is in. */
  final Values out;

  final Values in;

  /** Voltages between which the armature does what it did before. */
  final Optional<CoilLimits> limits;

  /** +1 if the first pin must be positive, -1 if the second, 0 if it does not matter. */
  final int polarity;

  /** True if a diode is built in across the coil. */
  final boolean builtInDiode;

  private CoilModel(
      CoilSpec spec,
      CurrentKind kind,
      Values out,
      Values in,
      Optional<CoilLimits> limits,
      int polarity,
      boolean builtInDiode) {
    this.spec = spec;
    this.kind = kind;
    this.rated = spec.voltage().value().nominal();
    this.out = out;
    this.in = in;
    this.limits = limits;
    this.polarity = polarity;
    this.builtInDiode = builtInDiode;
  }

  static CoilModel of(Part.Relay relay, Tables tables, Copper copper, Air air, double hertz) {
    CoilSpec spec = relay.coil();
    CurrentKind written = spec.voltage().value().kind();
    CurrentKind kind =
        written == CurrentKind.UNSTATED && (spec.pickUp().isPresent() || spec.hold().isPresent())
            ? CurrentKind.AC
            : written;
    CoilImpedance impedance = new CoilImpedance(relay, tables, copper, air, hertz);
    boolean builtIn = hasBuiltInDiode(spec);
    return new CoilModel(
        spec,
        kind,
        impedance.values(kind, false),
        impedance.values(kind, true),
        new ArmatureLimits(tables, copper, air, relay, kind).find(),
        polarityOf(spec),
        builtIn);
  }

  /**
   * Volts at which the diode with zener that is built in conducts; 0 if there is none, or no value.
   */
  double zenerVolts() {
    return spec.suppression().filter(s -> s.value().equals("diode-with-zener")).isPresent()
        ? spec.clampingVoltage().map(v -> v.value().nominal()).orElse(0.0)
        : 0;
  }

  /** True if something is built in of which a part gives no value: a varistor, an RC member. */
  boolean isTakenByUnknown() {
    return !builtInDiode
        && zenerVolts() <= 0
        && spec.suppression().filter(s -> !s.value().equals("none")).isPresent();
  }

  /** True if a diode lies across the coil inside the relay. */
  static boolean hasBuiltInDiode(CoilSpec spec) {
    return spec.suppression().map(s -> s.value().equals("diode")).orElse(false);
  }

  /** +1 if the first pin must be positive, -1 if the second, 0 if it does not matter. */
  static int polarityOf(CoilSpec spec) {
    String words = spec.polarity().map(p -> p.value()).orElse("none");
    if (words.startsWith(spec.first() + " ")) {
      return 1;
    }
    if (words.startsWith(spec.second() + " ")) {
      return -1;
    }
    return hasBuiltInDiode(spec) ? 1 : 0;
  }

  /**
   * Where the armature goes, or stays.
   *
   * @param direct volts of direct current, first pin positive
   * @param alternating r.m.s. volts
   */
  boolean settles(boolean before, double direct, double alternating) {
    double volts =
        switch (kind) {
          case DC -> polarity == 0 ? Math.abs(direct) : polarity * direct;
          case AC -> Math.max(alternating, Math.abs(direct));
          case UNSTATED -> Math.max(alternating, Math.abs(direct));
        };
    double operate = limits.map(l -> l.operate().value()).orElse(rated);
    double release = limits.map(l -> l.release().value()).orElse(0.0);
    if (volts >= operate * (1 - CLOSE)) {
      return true;
    }
    return volts > release && before;
  }
}
