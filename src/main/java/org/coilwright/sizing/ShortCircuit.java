package org.coilwright.sizing;

import java.util.Map;
import java.util.Optional;
import org.coilwright.netlist.Part;
import org.coilwright.table.Cited;
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
