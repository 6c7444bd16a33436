package org.coilwright.sizing;

import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.coilwright.quantity.Comparison;
import org.coilwright.quantity.ConductorSize;
import org.coilwright.quantity.Printed;
import org.coilwright.table.Cited;
import org.coilwright.table.CitedTable;
import org.coilwright.table.Tables;

/** Series of preferred ratings and sizes, and the largest device that a wire may have. */
public final class Series {
  private Series() {}

  /** The smallest standard rating that is at least this; empty above the table. */
  public static Optional<Cited<Double>> atLeast(double amps, Tables tables) {
    return next("device-ratings-nec", amps, tables);
  }

  /** The smallest preferred breaker that is at least this; empty above the series. */
  public static Optional<Cited<Double>> breakerAtLeast(double amps, Tables tables) {
    return next("breaker-ratings", amps, tables);
  }

  /** The smallest preferred contactor that is at least this; empty above the series. */
  public static Optional<Cited<Double>> contactorAtLeast(double amps, Tables tables) {
    return next("contactor-ratings", amps, tables);
  }

  /** The largest preferred breaker that is at most this; empty below the series. */
  public static Optional<Cited<Double>> breakerUpTo(double amps, Tables tables) {
    return tables.table("breaker-ratings").rows().stream()
        .flatMap(r -> r.number("amps").stream())
        .filter(r -> !Comparison.exceeds(r.value(), amps))
        .reduce((a, b) -> b);
  }

  /** The thinnest metric size that is at least this, mm². */
  public static Optional<Double> wireOf(double mm2, Tables tables) {
    return tables.table("conductor-resistance-mm2").rows().stream()
        .flatMap(r -> r.number("mm2").stream())
        .map(Cited::value)
        .filter(s -> !Comparison.fallsShort(s, mm2))
        .findFirst();
  }

  /** The smallest figure of a series that is at least this. */
  static Optional<Cited<Double>> next(String series, double amps, Tables tables) {
    return from(series, amps, tables).findFirst();
  }

  /** All figures of a series that are at least this, the smallest first. */
  static Stream<Cited<Double>> from(String series, double amps, Tables tables) {
    return tables.table(series).rows().stream()
        .map(CitedTable.Row::numbers)
        .flatMap(r -> Optional.ofNullable(r.get("amps")).stream())
        .filter(r -> !Comparison.fallsShort(r.value(), amps));
  }

  /**
   * The largest device a copper wire may have: the small-conductor limit of 240.4(D), or the next
   * standard rating of 240.4(B).
   *
   * @param ampacity A, as laid
   */
  public static Optional<Cited<Double>> largestFor(
      ConductorSize size, double ampacity, Tables tables) {
    Optional<Cited<Double>> small =
        tables.lookup(
            "small-conductor-nec", Map.of("awg", Printed.of(size).replace(" AWG", "")), "amps");
    Optional<Cited<Double>> next = atLeast(ampacity, tables);
    if (small.isPresent() && next.isPresent()) {
      return small.get().value() <= next.get().value() ? small : next;
    }
    return small.isPresent() ? small : next;
  }
}
