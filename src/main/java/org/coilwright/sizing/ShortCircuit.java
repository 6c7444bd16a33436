package org.coilwright.sizing;

import java.util.Map;
import java.util.Optional;
import org.coilwright.netlist.Part;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/** Heat of a short-circuit in a wire: let-through energy against k²S². */
public final class ShortCircuit {
  private ShortCircuit() {}

  /** What a conductor stands, A²s. */
  public static double stands(double k, double mm2) {
    return k * k * mm2 * mm2;
  }

  /** The least size for a current that lasts a time, mm². */
  public static double leastSize(double amps, double seconds, double k) {
    return amps * Math.sqrt(seconds) / k;
  }

  /**
   * What a gG fuse lets through at most, A²s: at the current that melts it within 0.1 s, or what
   * melts it faster, with its arc. Empty for other families and ratings without a figure.
   */
  public static Optional<Cited<Double>> fuseLetsThrough(
      Part.Fuse fuse, double fastAmps, double fastSeconds, Tables tables) {
    if (fuse.family().filter(f -> !f.value().equals("gG")).isPresent()) {
      return Optional.empty();
    }
    double slowest = fastAmps * fastAmps * fastSeconds;
    double arc = tables.figure("sizing.fuse-arc").value();
    return tables
        .lookup("fuse-melting", Map.of(), Overcurrent.rating(fuse).orElse(0), "energy")
        .map(
            melts ->
                new Cited<>(
                    Math.max(slowest, arc * melts.value()),
                    melts.source(),
                    melts.place()
                        + ", × %s for the arc".formatted(Printed.of(arc, Dimension.COUNT)),
                    Standing.COMMON_PRACTICE));
  }

  /** What a circuit-breaker of energy-limiting class 3 lets through at most. */
  public static Optional<Cited<Double>> letThrough(Part device, double faultAmps, Tables tables) {
    if (!(device instanceof Part.Protective breaker) || breaker.curve().isEmpty()) {
      return Optional.empty();
    }
    double rating = Overcurrent.rating(device).orElse(Double.POSITIVE_INFINITY);
    if (rating > 32) {
      return Optional.empty();
    }
    return tables.lookup(
        "let-through",
        Map.of(
            "curve",
            breaker.curve().get().value(),
            "ratings",
            rating <= 16 ? "up-to-16" : "up-to-32"),
        faultAmps,
        "energy");
  }
}
