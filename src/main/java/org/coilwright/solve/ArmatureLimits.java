package org.coilwright.solve;

import java.util.Optional;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.CoilSpec;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.CurrentKind;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/**
 * How a coil's limits come from its data sheet, or from the cited defaults where that is silent.
 */
final class ArmatureLimits {
  private final Tables tables;
  private final Copper copper;
  private final Air air;
  private final CoilSpec spec;
  private final CurrentKind kind;
  private final boolean contactor;
  private final double rated;

  ArmatureLimits(Tables tables, Copper copper, Air air, Part.Relay relay, CurrentKind kind) {
    this.tables = tables;
    this.copper = copper;
    this.air = air;
    this.spec = relay.coil();
    this.kind = kind;
    this.contactor = relay.isContactor();
    this.rated = spec.voltage().value().nominal();
  }

  /** A voltage, how it came about, and where the cold pull-in value is written if that is it. */
  private record Limit(Cited<Double> volts, String reason, Optional<Mark> mark) {
    Limit(Cited<Double> volts, String reason) {
      this(volts, reason, Optional.empty());
    }
  }

  /** Empty if what is written contradicts itself: it would release above what it operates at. */
  Optional<CoilLimits> find() {
    Limit operate = operate();
    Limit release = release();
    Limit highest = highest();
    if (release.volts().value() > operate.volts().value()) {
      return Optional.empty();
    }
    return Optional.of(
        new CoilLimits(
            operate.volts(),
            operate.reason(),
            operate.mark(),
            release.volts(),
            release.reason(),
            highest.volts(),
            highest.reason()));
  }

  private Limit operate() {
    Optional<Limit> cold = scaledColdPullIn();
    if (spec.range().isEmpty()) {
      return cold.orElseGet(
          () -> usual(contactor ? "contactor-operative-low" : "operative-range-low"));
    }
    Written<Quantity> range = spec.range().get();
    Limit written = sheet(range, range.value().low(), "low end of ");
    return cold.filter(c -> c.volts().value() > written.volts().value()).orElse(written);
  }

  /**
   * The cold pull-in value at the hottest coil. The pull-in current of a direct-current coil is
   * constant, so its voltage follows the copper; an alternating-current coil is mostly reactance
   * and is left as written.
   */
  private Optional<Limit> scaledColdPullIn() {
    return spec.operate()
        .map(
            operate -> {
              double cold = volts(operate.value().amount(), operate.value().amount().high());
              double from =
                  operate
                      .value()
                      .at()
                      .map(Quantity::nominal)
                      .orElseGet(() -> tables.figure("coil.reference-temperature").value());
              double hot = air.hottest().value();
              if (kind == CurrentKind.AC || hot <= from) {
                return new Limit(
                    partData(cold),
                    operate.text() + ", as its data sheet says",
                    Optional.of(operate.mark()));
              }
              double scaled = cold * copper.factor(hot, from);
              return new Limit(
                  tables.figure("coil.copper-constant").map(any -> scaled),
                  operate.text()
                      + ", which is "
                      + Printed.volts(scaled)
                      + " with the coil at "
                      + Printed.of(hot, Dimension.TEMPERATURE),
                  Optional.of(operate.mark()));
            });
  }

  private Limit release() {
    if (spec.release().isPresent()) {
      Written<Quantity> release = spec.release().get();
      return sheet(release, release.value().low(), release.value().isExact() ? "" : "low end of ");
    }
    String group = contactor ? "contactor-release-" : "relay-release-";
    return usual(group + (kind == CurrentKind.AC ? "ac" : "dc"));
  }

  private Limit highest() {
    if (spec.range().isPresent()) {
      Written<Quantity> range = spec.range().get();
      return sheet(range, range.value().high(), "high end of ");
    }
    return usual(contactor ? "contactor-operative-high" : "operative-range-high");
  }

  private Limit sheet(Written<Quantity> written, double bound, String end) {
    String ofRated =
        written.value().dimension() == Dimension.VOLTAGE ? "" : " of " + Printed.volts(rated);
    return new Limit(
        partData(volts(written.value(), bound)),
        end + written.text() + ofRated + ", as its data sheet says");
  }

  private Limit usual(String figure) {
    Cited<Double> share = tables.figure("coil." + figure);
    return new Limit(
        share.map(s -> s * rated),
        Printed.percent(share.value())
            + " of "
            + Printed.volts(rated)
            + ", the general limit because the part gives none");
  }

  private Cited<Double> partData(double volts) {
    return new Cited<>(volts, tables.source("part-data"), "", Standing.PUBLISHED);
  }

  private double volts(Quantity written, double bound) {
    return written.dimension() == Dimension.VOLTAGE ? bound : bound * rated;
  }
}
