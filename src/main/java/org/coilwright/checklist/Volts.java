package org.coilwright.checklist;

import org.coilwright.checklist.Expected.Band;
import org.coilwright.netlist.Site;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;

/** Voltages of the mains with the tolerance that is written, or the usual one if none is. */
final class Volts {
  private final Bands bands;
  private final Site.MainsSupply mains;
  private final Texts texts;

  Volts(Bands bands, Site.MainsSupply mains, Texts texts) {
    this.bands = bands;
    this.mains = mains;
    this.texts = texts;
  }

  /** Nominal voltage between a line and earth. */
  static double toEarth(Site.MainsSupply mains) {
    double volts = mains.voltage().value().nominal();
    return switch (mains.phases().value()) {
      case ONE -> volts;
      case SPLIT -> volts / 2;
      case THREE -> volts / Math.sqrt(3);
    };
  }

  double toEarth() {
    return toEarth(mains);
  }

  /** Between two lines, or as written where there is one. */
  Quantity acrossLines() {
    Quantity written = mains.voltage().value();
    if (!written.isExact()) {
      return written;
    }
    return new Quantity(
        written.dimension(),
        written.nominal() * bands.figure("supply.mains-low").value(),
        written.nominal(),
        written.nominal() * bands.figure("supply.mains-high").value(),
        written.kind());
  }

  /** Between a line and the neutral. */
  Quantity toNeutral() {
    Quantity lines = acrossLines();
    return lines.times(toEarth() / lines.nominal());
  }

  /** A band that also allows for a share of drop on the way. */
  static Band band(Quantity volts, double drop) {
    return Band.between(volts.low() * (1 - drop), volts.high(), "V AC");
  }

  Grounds grounds() {
    Quantity written = mains.voltage().value();
    return written.isExact()
        ? Reasons.of(texts.of("how.usual-tolerance"), bands.figure("supply.mains-low"))
        : Reasons.ofNetlist("site.mains: " + texts.figure(Printed.of(written)));
  }
}
