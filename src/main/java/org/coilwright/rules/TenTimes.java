package org.coilwright.rules;

import java.util.Optional;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.quantity.Printed;
import org.coilwright.quantity.Quantity;
import org.coilwright.table.Tables;

/** Tells a voltage that is ten times what it meets: mostly a slip of a decimal point or a zero. */
final class TenTimes {
  private TenTimes() {}

  /** A sentence that begins with a space, about a coil and its supply; empty text if they match. */
  static String between(CoilFeed feed, Tables tables) {
    Optional<Source> source =
        feed.sources().stream().filter(s -> s.volts().isPresent()).findFirst();
    double volts = source.flatMap(Source::volts).map(Quantity::nominal).orElse(feed.ratedVolts());
    double rated = feed.ratedVolts();
    double ratio = Math.max(volts, rated) / Math.min(volts, rated);
    boolean slip =
        ratio >= tables.figure("coil.ten-times-low").value()
            && ratio <= tables.figure("coil.ten-times-high").value();
    return slip
        ? " %s is rated %s and %s gives %s, ten times %s: compare both with what is printed on the parts, a zero or a point may have slipped."
            .formatted(
                feed.relay(),
                Printed.volts(rated),
                source.map(Source::part).orElse("the supply"),
                Printed.volts(volts),
                volts > rated ? "as much" : "less")
        : "";
  }
}
