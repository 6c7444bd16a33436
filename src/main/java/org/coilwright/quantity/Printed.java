package org.coilwright.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;

/**
 * Numbers as a person reads them: three significant digits, a unit that fits, no decimals where
 * they are all zero ({@code 24 V}, {@code 9.60 V}, {@code 36.1 mA}).
 */
public final class Printed {
  private static final int DIGITS = 3;

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
    Scale scale = Scale.of(value, dimension);
    double shown = value / scale.factor;
    return number(shown, decimals(shown)) + scale.suffix();
  }

  /** Rounded up: for what must not be undercut. */
  public static String atLeast(double value, Dimension dimension) {
    return of(stepped(value, RoundingMode.CEILING), dimension);
  }

  /** Rounded down: for what must not be exceeded. */
  public static String atMost(double value, Dimension dimension) {
    return of(stepped(value, RoundingMode.FLOOR), dimension);
  }

  /** A size of conductor as it is written: {@code 0.75 mm²}, {@code 16 AWG}, {@code 2/0 AWG}. */
  public static String of(ConductorSize size) {
    if (size.awg().isEmpty()) {
      return BigDecimal.valueOf(size.mm2()).stripTrailingZeros().toPlainString() + " mm²";
    }
    int awg = size.awg().getAsInt();
    return (awg > 0 ? Integer.toString(awg) : (1 - awg) + "/0") + " AWG";
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
    double larger = Math.max(Math.abs(value), Math.abs(limit));
    double smaller = Math.min(Math.abs(value), Math.abs(limit));
    if (smaller > 0 && larger >= FAR * smaller) {
      return new Pair(
          of(value, dimension), of(limit, dimension), of(Math.abs(value - limit), dimension));
    }
    Scale scale = Scale.of(larger, dimension);
    double a = value / scale.factor;
    double b = limit / scale.factor;
    int decimals = decimals(Math.max(Math.abs(a), Math.abs(b)));
    if (!isWhole(b, decimals) && isWhole(b, decimals + 1)) {
      // 85 % of 230 V is 195.5 V, and a reader who works it out must find it
      decimals++;
    }
    while (decimals < MOST_DECIMALS && Math.abs(a - b) > 0 && rounded(a - b, decimals) == 0) {
      decimals++;
    }
    return new Pair(
        number(a, decimals) + scale.suffix(),
        number(b, decimals) + scale.suffix(),
        number(Math.abs(a - b), decimals) + scale.suffix());
  }

  /**
   * Two compared figures as text.
   *
   * @param apart how far they lie apart, without sign
   */
  public record Pair(String value, String limit, String apart) {}

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

  /** A multiple of the base unit and its symbol. */
  private record Scale(double factor, String unit) {
    static Scale of(double value, Dimension dimension) {
      double size = Math.abs(value);
      String unit = dimension.baseUnit();
      return switch (dimension) {
        case RATIO -> new Scale(0.01, unit);
        case CURRENT, TIME -> size > 0 && size < 1 ? new Scale(1e-3, "m" + unit) : base(unit);
        case VOLTAGE -> size > 0 && size < 0.1 ? new Scale(1e-3, "m" + unit) : base(unit);
        case POWER, APPARENT_POWER, ENERGY ->
            size >= 1e3
                ? new Scale(1e3, "k" + unit)
                : size > 0 && size < 0.1 ? new Scale(1e-3, "m" + unit) : base(unit);
        case RESISTANCE -> size >= 1e4 ? new Scale(1e3, "k" + unit) : base(unit);
        case CAPACITANCE -> size < 1e-7 ? new Scale(1e-9, "n" + unit) : new Scale(1e-6, "µ" + unit);
        case LENGTH ->
            size >= 1e4
                ? new Scale(1e3, "k" + unit)
                : size > 0 && size < 0.1 ? new Scale(1e-3, "m" + unit) : base(unit);
        case AREA, TEMPERATURE, FREQUENCY, VOLUME, COUNT -> base(unit);
      };
    }

    private static Scale base(String unit) {
      return new Scale(1, unit);
    }

    String suffix() {
      return unit.isEmpty() ? "" : " " + unit;
    }
  }
}
