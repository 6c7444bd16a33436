// Over 250 lines: the one printer, with a method for each kind of figure.
package org.coilwright.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Values as a person reads them. What was computed has three significant digits, a unit that fits,
 * and no decimals where they are all zero ({@code 24 V}, {@code 9.60 V}, {@code 36.1 mA}); what was
 * given has up to four and no idle zeros ({@code 2.5 mm²}).
 */
public final class Printed {
  private static final int DIGITS = 3;

  private static final int GIVEN_DIGITS = 4;

  /** Figures this many times apart need no common unit to be compared. */
  private static final double FAR = 10;

  /** Two figures this close, relative, are the same. */
  private static final double SAME = 1e-9;

  /** Digits that a computed figure surely has. */
  private static final int SURE_DIGITS = 12;

  /** More decimals than this tell a reader nothing. */
  private static final int MOST_DECIMALS = 9;

  private Printed() {}

  /**
   * A value of {@code dimension} with its unit.
   *
   * @param value in the base unit of {@code dimension}
   */
  public static String of(double value, Dimension dimension) {
    // what rounds up to a thousand watts is a kilowatt
    Scale scale = Scale.of(Math.abs(significant(value, DIGITS).doubleValue()), dimension);
    double shown = value / scale.factor();
    return scale.with(number(shown, decimals(shown)));
  }

  /** Rounded up: for what must not be undercut. */
  public static String atLeast(double value, Dimension dimension) {
    return of(stepped(value, RoundingMode.CEILING), dimension);
  }

  /** Rounded down: for what must not be exceeded. */
  public static String atMost(double value, Dimension dimension) {
    return of(stepped(value, RoundingMode.FLOOR), dimension);
  }

  /**
   * A value that somebody chose, such as one of the netlist or of a table: no idle zeros.
   *
   * @param value in the base unit of {@code dimension}
   */
  public static String given(double value, Dimension dimension) {
    Scale scale = Scale.of(Math.abs(significant(value, GIVEN_DIGITS).doubleValue()), dimension);
    return scale.with(plain(value / scale.factor()));
  }

  /** A quantity as a netlist would have it: {@code 24 V DC ± 10 %}, {@code 0..45 °C}. */
  public static String of(Quantity q) {
    if (q.isExact()) {
      return given(q.nominal(), q.dimension()) + kind(q);
    }
    boolean points = q.dimension() == Dimension.RATIO || q.dimension() == Dimension.TEMPERATURE;
    double up = 100 * (q.high() - q.nominal()) / Math.abs(q.nominal());
    double down = 100 * (q.nominal() - q.low()) / Math.abs(q.nominal());
    if (!points && isHalfPercents(up) && isHalfPercents(down)) {
      String value = given(q.nominal(), q.dimension()) + kind(q);
      String above = plain(up);
      String below = plain(down);
      return above.equals(below)
          ? value + " ± " + above + " %"
          : value + " +" + above + " % -" + below + " %";
    }
    Scale scale = Scale.of(Math.max(Math.abs(q.low()), Math.abs(q.high())), q.dimension());
    String low = plain(q.low() / scale.factor());
    return scale.with(low + ".." + plain(q.high() / scale.factor())) + kind(q);
  }

  /** A rating as a netlist would have it: {@code 16 A at 250 V}, {@code 1.6 W per pole}. */
  public static String of(Rating rating) {
    StringBuilder words = new StringBuilder(of(rating.amount()));
    if (rating.amount().dimension() == Dimension.COUNT
        && rating.at().filter(at -> at.dimension() == Dimension.TIME).isPresent()) {
      words.append(" x");
    }
    rating
        .at()
        .ifPresent(
            at -> words.append(at.dimension() == Dimension.TIME ? " for " : " at ").append(of(at)));
    return words.append(rating.perPole() ? " per pole" : "").toString();
  }

  /** A size of conductor as it is written: {@code 0.75 mm²}, {@code 16 AWG}, {@code 2/0 AWG}. */
  public static String of(ConductorSize size) {
    if (size.awg().isEmpty()) {
      return given(size.mm2(), Dimension.AREA);
    }
    int awg = size.awg().getAsInt();
    return (awg > 0 ? Integer.toString(awg) : (1 - awg) + "/0") + " AWG";
  }

  /**
   * A span of time in the unit a person would use: {@code 40 s}, {@code 10 min}, {@code 3.10 h}.
   *
   * @param seconds 0 or more
   */
  public static String span(double seconds) {
    return span(seconds, RoundingMode.HALF_UP);
  }

  /** A span of time rounded up: for what must not be undercut. */
  public static String spanAtLeast(double seconds) {
    return span(seconds, RoundingMode.CEILING);
  }

  /** A span of time rounded down: for what must not be exceeded. */
  public static String spanAtMost(double seconds) {
    return span(seconds, RoundingMode.FLOOR);
  }

  private static String span(double seconds, RoundingMode mode) {
    if (seconds < 100) {
      return of(stepped(seconds, mode), Dimension.TIME);
    }
    double minutes = seconds / 60;
    boolean hours = minutes >= 100;
    double shown = stepped(hours ? minutes / 60 : minutes, mode);
    return number(shown, decimals(shown)) + (hours ? " h" : " min");
  }

  /** A volt figure. */
  public static String volts(double volts) {
    return of(volts, Dimension.VOLTAGE);
  }

  /** An ampere figure, in mA below 1 A. */
  public static String amps(double amps) {
    return of(amps, Dimension.CURRENT);
  }

  /**
   * A share of one as percent.
   *
   * @param ratio 0.8 for {@code 80 %}
   */
  public static String percent(double ratio) {
    return of(ratio, Dimension.RATIO);
  }

  /**
   * Two figures that are compared and what lies between them, in one unit and with as many decimals
   * as it takes to tell them apart.
   *
   * @param value in the base unit of {@code dimension}
   * @param limit likewise
   */
  public static Pair pair(double value, double limit, Dimension dimension) {
    return pair(value, limit, dimension, true);
  }

  private static Pair pair(double value, double limit, Dimension dimension, boolean apart) {
    double larger = Math.max(Math.abs(value), Math.abs(limit));
    double smaller = Math.min(Math.abs(value), Math.abs(limit));
    if (smaller > 0 && larger >= FAR * smaller) {
      return new Pair(
          of(value, dimension), of(limit, dimension), of(Math.abs(value - limit), dimension));
    }
    Scale scale = Scale.of(larger, dimension);
    double a = value / scale.factor();
    double b = limit / scale.factor();
    int decimals = decimals(Math.max(Math.abs(a), Math.abs(b)));
    if (!isWhole(b, decimals) && isWhole(b, decimals + 1)) {
      // 85 % of 230 V is 195.5 V, and a reader who works it out must find it
      decimals++;
    }
    while (apart
        && decimals < MOST_DECIMALS
        && Math.abs(a - b) > 0
        && rounded(a - b, decimals) == 0) {
      decimals++;
    }
    return new Pair(
        scale.with(number(a, decimals)),
        scale.with(number(b, decimals)),
        scale.with(number(Math.abs(a - b), decimals)));
  }

  /**
   * As {@link #pair}, for a value that is inside its limit: the two may look the same where they
   * all but are.
   */
  public static Pair inside(double value, double limit, Dimension dimension) {
    return pair(value, limit, dimension, false);
  }

  /**
   * Two compared figures as text.
   *
   * @param apart how far they lie apart, without sign
   */
  public record Pair(String value, String limit, String apart) {}

  private static String kind(Quantity q) {
    return q.kind() == CurrentKind.UNSTATED ? "" : " " + q.kind();
  }

  private static boolean isHalfPercents(double percent) {
    return percent <= 100 && Math.abs(percent * 2 - Math.rint(percent * 2)) < 1e-6;
  }

  private static String plain(double value) {
    BigDecimal number = significant(value, GIVEN_DIGITS);
    return number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString();
  }

  private static BigDecimal significant(double value, int digits) {
    return BigDecimal.valueOf(value).round(new MathContext(digits, RoundingMode.HALF_UP));
  }

  private static double stepped(double value, RoundingMode mode) {
    if (value == 0) {
      return 0;
    }
    // a computed 20.4 may stand as 20.400000000000002: that is not a reason for a step
    BigDecimal exact = BigDecimal.valueOf(value).round(new MathContext(SURE_DIGITS));
    return exact.round(new MathContext(DIGITS, mode)).doubleValue();
  }

  private static boolean isWhole(double value, int decimals) {
    double rounded = rounded(value, decimals);
    return Math.abs(rounded - value) <= Math.abs(value) * SAME;
  }

  private static double rounded(double value, int decimals) {
    return BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP).doubleValue();
  }

  private static String number(double value, int decimals) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(decimals, RoundingMode.HALF_UP);
    if (rounded.signum() == 0) {
      return "0";
    }
    BigDecimal whole = rounded.setScale(0, RoundingMode.DOWN);
    return (rounded.compareTo(whole) == 0 ? whole : rounded).toPlainString();
  }

  private static int decimals(double shown) {
    if (shown == 0) {
      return 0;
    }
    int magnitude = (int) Math.floor(Math.log10(Math.abs(shown)));
    return Math.min(MOST_DECIMALS, Math.max(0, DIGITS - 1 - magnitude));
  }
}
