package org.coilwright.checklist;

import java.util.List;
import org.coilwright.netlist.Part;

/** What an ohmmeter sees between two pins of a heater. Circuit theory alone. */
final class ElementOhms {
  private ElementOhms() {}

  /** Two pins and the resistance between them at rated power. */
  record Pair(String from, String to, double ohms) {}

  /** Every pair that should be measured; none if power or voltage is not stated. */
  static List<Pair> pairs(Part.Heater heater) {
    if (heater.power().isEmpty() || heater.voltage().isEmpty()) {
      return List.of();
    }
    double volts = heater.voltage().get().value().nominal();
    double watts = heater.power().get().value().nominal();
    if (volts <= 0 || watts <= 0) {
      return List.of();
    }
    // One element at line voltage and the whole power: also each element of a star, because it has
    // 1/√3 of the voltage and 1/3 of the power.
    double ohms = volts * volts / watts;
    return switch (heater.connection().value()) {
      case SINGLE -> List.of(new Pair("1", "2", ohms));
      case STAR_WITH_NEUTRAL ->
          List.of(new Pair("1", "N", ohms), new Pair("2", "N", ohms), new Pair("3", "N", ohms));
      // Two elements in series; or in delta, three times as high each, one beside two: both 2R.
      case STAR, DELTA ->
          List.of(
              new Pair("1", "2", 2 * ohms),
              new Pair("2", "3", 2 * ohms),
              new Pair("3", "1", 2 * ohms));
    };
  }
}
