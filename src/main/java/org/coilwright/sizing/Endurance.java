package org.coilwright.sizing;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.coilwright.quantity.Dimension;
import org.coilwright.quantity.Printed;
import org.coilwright.table.Cited;
import org.coilwright.table.Tables;

/**
 * How often a contact closes and opens before it is worn out.
 *
 * @param cycles one closing and one opening each; a maker that counts both states twice as many
 * @param words how they come about
 * @param daysPerYear days of use
 */
public record Endurance(
    double cycles, String words, double daysPerYear, List<Cited<Double>> cited) {
  /** Less than this share of a year is told in days. */
  private static final double WEEKS = 0.1;

  /**
   * At another current than the one the life is given for: one over the current, a law fitted to
   * one maker's series, in which the life at a third of the current is an eighth longer still. A
   * current above the rating is another rule's matter; the same law then cuts the life.
   *
   * @param given cycles at {@code atAmps}
   * @param amps real current
   * @param mechanical cycles without load, which end it in any case
   */
  public static Endurance of(
      double given, double atAmps, double amps, Optional<Double> mechanical, Tables tables) {
    Cited<Double> exponent = tables.figure("sizing.life-exponent");
    Cited<Double> days = tables.figure("sizing.days-per-year");
    double electrical = given * Math.pow(atAmps / amps, exponent.value());
    double cycles = Math.min(electrical, mechanical.orElse(Double.POSITIVE_INFINITY));
    List<Cited<Double>> cited = new ArrayList<>(List.of(exponent, days));
    return new Endurance(
        cycles,
        cycles < electrical
            ? "%s cycles, the mechanical life".formatted(thousands(cycles))
            : "%s cycles at %s, so %s at %s"
                .formatted(
                    thousands(given),
                    Printed.of(atAmps, Dimension.CURRENT),
                    thousands(electrical),
                    Printed.of(amps, Dimension.CURRENT)),
        days.value(),
        cited);
  }

  /** Years at a number of starts a day. */
  public double years(double startsPerDay) {
    return cycles / (startsPerDay * daysPerYear);
  }

  /** How long it lasts at a number of starts a day, in words: years, or days where it is weeks. */
  public String lasting(double startsPerDay) {
    double years = years(startsPerDay);
    return years < WEEKS
        ? String.format(Locale.ROOT, "%.1f days", cycles / startsPerDay)
        : String.format(Locale.ROOT, "%.1f years", years);
  }

  /** Seconds in whole minutes, rounded up. */
  public static String minutes(double seconds) {
    return (long) Math.ceil(seconds / 60 - 1e-9) + " min";
  }

  static String thousands(double count) {
    return count >= 10_000 ? Math.round(count / 1000) + " 000" : Long.toString(Math.round(count));
  }

  /**
   * Mean years to a dangerous failure: B10d over a tenth of the operations a year (ISO 13849-1
   * formula).
   */
  public static double meanYears(double b10d, double operationsPerYear) {
    return b10d / (0.1 * operationsPerYear);
  }

  /** The characteristic life of a Weibull distribution from B10. */
  public static double weibullEta(double b10, double shape) {
    return b10 * Math.pow(-Math.log(0.9), -1 / shape);
  }
}
