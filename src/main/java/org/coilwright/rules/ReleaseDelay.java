package org.coilwright.rules;

import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Coil;
import org.coilwright.circuit.Branch.Passive;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Quantity;
import org.coilwright.rule.Basis;
import org.coilwright.solve.CoilDecay;
import org.coilwright.solve.CoilLimits;
import org.coilwright.solve.CopperLaw;
import org.coilwright.solve.Study;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * What a suppressor adds to a coil's release time at worst: how long its current lasts until the
 * armature surely lets go, the supply at its highest and the coil cold.
 *
 * @param by in words: {@code V1}, or {@code the diode built in}
 * @param mark where that is written
 * @param seconds on top of the bare release time
 */
record ReleaseDelay(String by, Mark mark, double seconds, Basis basis) {
  /**
   * What the computation takes from tables.
   *
   * @param diodeDrop forward drop of a diode, V
   * @param varistorExtra what makers publish for a varistor, s
   * @param cold the coil when it is coldest
   */
  record Figures(Cited<Double> diodeDrop, Cited<Double> varistorExtra, Cold cold) {}

  /**
   * The coldest that a coil is when it is switched off.
   *
   * @param celsius of the air
   * @param reference at which a coil's resistance is written, °C
   */
  record Cold(double celsius, double reference, CopperLaw copper) {
    static Cold of(Study study, Tables tables) {
      return new Cold(
          Surroundings.coldest(study.circuit(), tables),
          tables.figure("coil.reference-temperature").value(),
          CopperLaw.from(tables));
    }

    double at(double ohms) {
      return copper.at(ohms, reference, Math.min(celsius, reference));
    }
  }

  /** The key without which it cannot be computed, if one is missing. */
  static Optional<String> missing(Study study, FedCoil feed, AcrossCoil across) {
    Coil coil = feed.coil();
    if (isKnownWithoutCoil(across)) {
      return Optional.empty();
    }
    if (coil.spec().timeConstant().isEmpty()) {
      return Optional.of("coil.time-constant of " + coil.part());
    }
    if (feed.ohms().isEmpty()) {
      return Optional.of("coil.resistance of " + coil.part());
    }
    if (feed.direct().flatMap(Branch.Source::volts).isEmpty()) {
      return Optional.of(feed.voltageKey());
    }
    if (study.limits(coil.part()).isEmpty()) {
      return Optional.of("coil.release of " + coil.part());
    }
    if (across.hasBuiltIn(AcrossCoil.DIODE_WITH_ZENER) && coil.spec().clampingVoltage().isEmpty()) {
      return Optional.of("coil.clamping-voltage of " + coil.part());
    }
    return across.diodes().isEmpty()
        ? across.others().stream().flatMap(p -> missing(p).stream()).findFirst()
        : Optional.empty();
  }

  private static Optional<String> missing(Passive suppressor) {
    if (suppressor.spec() instanceof Part.Varistor v && v.clampingVoltage().isEmpty()) {
      return Optional.of("clamping-voltage of " + v.name());
    }
    if (suppressor.spec() instanceof Part.Resistor r && r.resistance().isEmpty()) {
      return Optional.of("resistance of " + r.name());
    }
    return Optional.empty();
  }

  /** A varistor or RC member that is built in, or a snubber: makers publish what these add. */
  private static boolean isKnownWithoutCoil(AcrossCoil across) {
    return across.diodes().isEmpty()
        && across.others().stream().allMatch(p -> p.spec() instanceof Part.Snubber)
        && !across.hasBuiltIn(AcrossCoil.DIODE);
  }

  /**
   * The delay by what lies across a coil. A diode decides alone, as the current takes the easiest
   * way. Only where nothing is {@link #missing}.
   */
  static ReleaseDelay of(Study study, FedCoil feed, AcrossCoil across, Figures figures) {
    Mark builtIn = across.builtIn().map(Written::mark).orElse(feed.coil().mark());
    if (isKnownWithoutCoil(across)) {
      Basis published = Basis.of(figures.varistorExtra());
      return across.hasBuiltIn(AcrossCoil.VARISTOR)
          ? new ReleaseDelay(
              "the varistor built in", builtIn, figures.varistorExtra().value(), published)
          : new ReleaseDelay(
              "an RC member",
              across.others().stream().map(Branch::mark).findFirst().orElse(builtIn),
              0,
              published);
    }
    Coil coil = feed.coil();
    CoilLimits limits = study.limits(coil.part()).orElseThrow();
    double volts = feed.direct().flatMap(Branch.Source::volts).map(Quantity::high).orElseThrow();
    Quantity ohms = feed.ohms().orElseThrow();
    double tau = coil.spec().timeConstant().map(Written::value).orElseThrow().high();
    // most current at first: supply high, coil cold and at the low end of its resistance
    double cold = figures.cold().at(ohms.low());
    CoilDecay decay = new CoilDecay(tau * ohms.nominal(), cold, volts / cold);
    // the armature answers to current, whatever the temperature
    double released = Math.min(limits.release().value() / ohms.low(), volts / cold);
    double drop = figures.diodeDrop().value();
    double zener =
        across.hasBuiltIn(AcrossCoil.DIODE_WITH_ZENER)
            ? coil.spec().clampingVoltage().map(v -> v.value().low()).orElse(0.0)
            : 0;
    Basis byDiode = Basis.of(figures.diodeDrop(), limits.release());
    Stream<ReleaseDelay> diodes =
        across.diodes().stream()
            .map(
                d ->
                    new ReleaseDelay(
                        d.part(), d.mark(), decay.clampedSeconds(drop, released), byDiode));
    Stream<ReleaseDelay> inside =
        across.hasBuiltIn(AcrossCoil.DIODE)
            ? Stream.of(
                new ReleaseDelay(
                    zener > 0 ? "the diode and zener built in" : "the diode built in",
                    builtIn,
                    decay.clampedSeconds(drop + zener, released),
                    byDiode))
            : Stream.empty();
    Stream<ReleaseDelay> others =
        across.others().stream().map(p -> of(p, decay, released, Basis.of(limits.release())));
    return Stream.of(diodes, inside, others)
        .flatMap(s -> s)
        .max(Comparator.comparingDouble(ReleaseDelay::seconds))
        .orElseThrow(() -> new IllegalStateException("nothing across " + coil.part()));
  }

  private static ReleaseDelay of(
      Passive suppressor, CoilDecay decay, double released, Basis basis) {
    double seconds = 0;
    if (suppressor.spec() instanceof Part.Varistor v && v.clampingVoltage().isPresent()) {
      seconds = decay.clampedSeconds(v.clampingVoltage().get().value().low(), released);
    } else if (suppressor.spec() instanceof Part.Resistor r && r.resistance().isPresent()) {
      seconds = decay.resistorSeconds(r.resistance().get().value().low(), released);
    }
    return new ReleaseDelay(suppressor.part(), suppressor.mark(), seconds, basis);
  }
}
