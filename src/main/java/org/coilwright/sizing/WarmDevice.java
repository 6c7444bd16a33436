package org.coilwright.sizing;

import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.sizing.Factor.Cause;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;
import org.coilwright.table.Tables;

/**
 * What the rated current of a breaker or fuse comes to in air warmer than it holds at. Cold air
 * never raises it.
 *
 * @param kind what it is built to
 * @param rating its rated current, A
 * @param ratedAir °C up to which its sheet says the rated current holds; empty: as its kind usually
 *     does
 */
public record WarmDevice(Kind kind, double rating, OptionalDouble ratedAir) {
  /** What a device is built to, and so where its rated current holds. */
  public enum Kind {
    /** IEC 60898-1: 30 °C. */
    BREAKER_IEC("breaker-60898"),
    /** UL 489: 40 °C. */
    BREAKER_UL("breaker-ul489"),
    /** IEC 60947-2: where its maker says. */
    BREAKER_INDUSTRIAL("breaker-60947-2"),
    /** IEC 60269: 40 °C as one maker says. */
    FUSE("fuse-gg"),
    /** IEC 61008-1, IEC 61009-1: no release that warmth moves. */
    RESIDUAL("rcd");

    private final String row;

    Kind(String row) {
      this.row = row;
    }

    /** Of a protective device, by what it is made to or else what the practice uses. */
    public static Kind of(Part device, Site.Practice practice, Tables tables) {
      if (device instanceof Part.Protective p && !p.isRcd()) {
        return switch (new OpeningTimes(practice, tables).standard(p)) {
          case "UL 489" -> BREAKER_UL;
          case "IEC 60947-2" -> BREAKER_INDUSTRIAL;
          default -> BREAKER_IEC;
        };
      }
      return device instanceof Part.Fuse ? FUSE : RESIDUAL;
    }
  }

  /** °C up to which the rated current of such a device holds; empty if no source says. */
  public static Optional<Cited<Double>> reference(Kind kind, Tables tables) {
    return tables.lookup("device-air", Map.of("device", kind.row), "reference");
  }

  /** The warmest air that the standard lets such a device work in, °C. */
  public static Optional<Cited<Double>> warmest(Kind kind, Tables tables) {
    return tables.lookup("device-air", Map.of("device", kind.row), "warmest");
  }

  /** The coldest, °C. */
  public static Optional<Cited<Double>> coldest(Kind kind, Tables tables) {
    return tables.lookup("device-air", Map.of("device", kind.row), "coldest");
  }

  /**
   * What its rated current is multiplied by; known and empty where the rated current holds.
   *
   * @param air °C around it
   */
  public Found<Optional<Factor>> in(double air, Tables tables) {
    Optional<Cited<Double>> usual = reference(kind, tables);
    if (ratedAir.isEmpty() && usual.isEmpty()) {
      return new Found.Unknown<>(
          "rated-air", "Where its rated current holds is for its maker to say.");
    }
    double holds = ratedAir.orElse(usual.map(Cited::value).orElse(Double.NEGATIVE_INFINITY));
    if (air <= holds) {
      return new Found.Known<>(Optional.empty());
    }
    boolean asUsual = usual.filter(u -> u.value() == holds).isPresent();
    String at = Printed.of(air, Dimension.TEMPERATURE);
    Optional<Cited<Double>> factor =
        switch (kind) {
          case BREAKER_IEC, BREAKER_INDUSTRIAL -> law(holds, air, asUsual, tables);
          case BREAKER_UL ->
              asUsual
                  ? tables
                      .lookup(
                          "breaker-air-ul489",
                          Map.of("rating", Printed.of(rating, Dimension.COUNT)),
                          air,
                          "amps")
                      .map(amps -> amps.map(a -> a / rating))
                  : Optional.empty();
          case FUSE ->
              tables
                  .lookup("fuse-air", Map.of(), air - holds, "factor")
                  .map(f -> asUsual ? f : practice(f));
          case RESIDUAL -> Optional.empty();
        };
    return factor.isEmpty()
        ? new Found.Unknown<>(
            "rated current in air of " + at,
            "What is read here says nothing of a device of %s in air of %s."
                .formatted(Printed.of(rating, Dimension.CURRENT), at))
        : new Found.Known<>(Optional.of(new Factor(Cause.AIR, factor.get(), "air at " + at)));
  }

  /** A bimetal that trips at so many K above its reference trips at less current in warmer air. */
  private static Optional<Cited<Double>> law(
      double holds, double air, boolean asUsual, Tables tables) {
    Cited<Double> end = tables.figure("sizing.breaker-air-end");
    Cited<Double> zero = tables.figure("sizing.breaker-air-zero");
    if (air > end.value() || holds >= zero.value()) {
      return Optional.empty();
    }
    Cited<Double> factor = zero.map(z -> Math.sqrt((z - air) / (z - holds)));
    return Optional.of(asUsual ? factor : practice(factor));
  }

  /** The table was read for devices of another reference: moved to this one it is practice. */
  private static Cited<Double> practice(Cited<Double> factor) {
    return new Cited<>(
        factor.value(),
        factor.source(),
        factor.place(),
        factor.standing().weaker(Standing.COMMON_PRACTICE));
  }

  /** What many breakers in a row, all loaded, are multiplied by. */
  public static Factor inARow(int breakers, Tables tables) {
    Cited<Double> most = tables.figure("sizing.breakers-in-a-row-most");
    return new Factor(
        Cause.CLOSE_MOUNTED,
        tables
            .lookup("breakers-in-a-row", Map.of(), Math.min(breakers, most.value()), "factor")
            .orElseThrow(),
        breakers + " side by side");
  }
}
