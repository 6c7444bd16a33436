package org.coilwright.quantity;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.List;

/**
 * Prints values for people: three significant figures for what was computed ({@code 9.60 V}), up to
 * four without idle zeros for what was given ({@code 230 V}, {@code 0.75 mm²}), with the prefix
 * that keeps the number short.
 */
public final class Figures {
  private static final int COMPUTED_FIGURES = 3;
  private static final int GIVEN_FIGURES = 4;
  private static final int MOST_FIGURES = 9;

  private Figures() {}

  /** A computed value in base units: three significant figures, {@code 9.60 V}. */
  public static String computed(double value, Dimension dimension) {
    return printed(value, dimension, COMPUTED_FIGURES, true);
  }

  /** A given value in base units: up to four significant figures, no idle zeros, {@code 85 mA}. */
  public static String given(double value, Dimension dimension) {
    return printed(value, dimension, GIVEN_FIGURES, false);
  }

  /**
   * Two computed values side by side, with as many figures as it takes to tell them apart: {@code
   * 9.596 V} and {@code 9.600 V}. Equal values print alike.
   */
  public static List<String> apart(double one, double other, Dimension dimension) {
    for (int figures = COMPUTED_FIGURES; figures < MOST_FIGURES; figures++) {
      String first = printed(one, dimension, figures, true);
      String second = printed(other, dimension, figures, true);
      if (!first.equals(second)) {
        return List.of(first, second);
      }
    }
    return List.of(computed(one, dimension), computed(other, dimension));
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
      return rounded(up, GIVEN_FIGURES).equals(rounded(down, GIVEN_FIGURES))
          ? value + " ± " + percent(up)
          : value + " +" + percent(up) + " -" + percent(down);
    }
    Scale scale = Scale.of(Math.max(Math.abs(q.low()), Math.abs(q.high())), q.dimension());
    String low = rounded(q.low() / scale.factor(), GIVEN_FIGURES);
    String high = rounded(q.high() / scale.factor(), GIVEN_FIGURES);
    return withUnit(low + ".." + high, scale) + kind(q);
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

  /** A conductor size in the terms it was written in: {@code 2.5 mm²}, {@code 2/0 AWG}. */
  public static String of(ConductorSize size) {
    if (size.awg().isEmpty()) {
      return given(size.mm2(), Dimension.AREA);
    }
    int gauge = size.awg().getAsInt();
    return (gauge > 0 ? String.valueOf(gauge) : 1 - gauge + "/0") + " AWG";
  }

  private static String kind(Quantity q) {
    return q.kind() == CurrentKind.UNSTATED ? "" : " " + q.kind();
  }

  private static String percent(double percent) {
    return rounded(percent, GIVEN_FIGURES) + " %";
  }

  private static boolean isHalfPercents(double percent) {
    return percent <= 100 && Math.abs(percent * 2 - Math.rint(percent * 2)) < 1e-6;
  }

  private static String printed(double value, Dimension dimension, int figures, boolean zeros) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException("no number to print: " + value);
    }
    if (dimension == Dimension.COUNT && value == Math.rint(value)) {
      return new BigDecimal(value).toPlainString();
    }
    double magnitude = Math.abs(round(BigDecimal.valueOf(value), figures).doubleValue());
    Scale scale = Scale.of(magnitude, dimension);
    BigDecimal number = round(BigDecimal.valueOf(value / scale.factor()), figures);
    if (number.signum() == 0) {
      return withUnit("0", scale);
    }
    if (zeros) {
      int places = Math.max(0, figures - (number.precision() - number.scale()));
      return withUnit(number.setScale(places, RoundingMode.HALF_UP).toPlainString(), scale);
    }
    return withUnit(plain(number), scale);
  }

  private static String rounded(double value, int figures) {
    BigDecimal number = round(BigDecimal.valueOf(value), figures);
    return number.signum() == 0 ? "0" : plain(number);
  }

  private static String plain(BigDecimal number) {
    return number.stripTrailingZeros().toPlainString();
  }

  private static BigDecimal round(BigDecimal value, int figures) {
    return value.round(new MathContext(figures, RoundingMode.HALF_UP));
  }

  private static String withUnit(String number, Scale scale) {
    return scale.symbol().isEmpty() ? number : number + " " + scale.symbol();
  }
}
