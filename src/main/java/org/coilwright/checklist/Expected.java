package org.coilwright.checklist;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Optional;
import java.util.OptionalDouble;

/** What must come of a test row: a band with its unit, a state from a closed list, or a setting. */
public sealed interface Expected {
  /** As printed in a language. */
  String text(Texts texts);

  /** The unit that the reading is written down in; empty if there is nothing to measure. */
  default String unit() {
    return "";
  }

  /**
   * A reading between limits, printed as {@code min … max unit} so that nobody computes on site.
   *
   * @param min least value, if there is one; never negative
   * @param max greatest value, if there is one
   * @param unit unit of both
   * @param winding of what is measured, where its temperature narrows the band
   */
  record Band(OptionalDouble min, OptionalDouble max, String unit, Optional<Winding> winding)
      implements Expected {
    private static final int FIGURES = 3;

    /** Below this a reading needs a third decimal. */
    private static final double FINE = 0.1;

    /**
     * Refuses a band that says nothing.
     *
     * @throws IllegalArgumentException if both limits are missing, not finite or out of order, or
     *     the unit is missing
     */
    public Band {
      if (unit.isBlank() || (min.isEmpty() && max.isEmpty())) {
        throw new IllegalArgumentException("a band needs a limit and a unit");
      }
      double low = min.orElse(0);
      double high = max.orElse(Double.MAX_VALUE);
      if (!Double.isFinite(low) || !Double.isFinite(high) || low > high) {
        throw new IllegalArgumentException("limits out of order: " + low + ", " + high);
      }
    }

    /** A band that no temperature narrows. */
    public Band(OptionalDouble min, OptionalDouble max, String unit) {
      this(min, max, unit, Optional.empty());
    }

    /** The band of a winding: this one as long as nobody says how warm it is. */
    Band of(Winding of) {
      return new Band(min, max, unit, Optional.of(of));
    }

    /**
     * The band at a temperature; this one if the temperature does not narrow it.
     *
     * @param celsius of the winding, in °C
     */
    public Band at(double celsius) {
      return winding
          .map(w -> between(w.low() * w.factor(celsius), w.high() * w.factor(celsius), unit))
          .orElse(this);
    }

    /** From {@code min} to {@code max}. */
    public static Band between(double min, double max, String unit) {
      return new Band(OptionalDouble.of(min), OptionalDouble.of(max), unit);
    }

    /** From zero to {@code max}. */
    public static Band atMost(double max, String unit) {
      return between(0, max, unit);
    }

    /** {@code min} or more. */
    public static Band atLeast(double min, String unit) {
      return new Band(OptionalDouble.of(min), OptionalDouble.empty(), unit);
    }

    /** Both limits carry the same decimals and are rounded inwards, never outwards. */
    @Override
    public String text(Texts texts) {
      return texts.figure(text());
    }

    private String text() {
      Shown shown = shown();
      if (shown.max().isEmpty()) {
        return "≥ " + shown.min() + " " + unit;
      }
      return shown.min() + " … " + shown.max() + " " + unit;
    }

    /** The least value as printed, by which a reading is judged: that is what was seen on site. */
    public double shownMin() {
      return Double.parseDouble(shown().min());
    }

    /** The greatest value as printed, if there is one. */
    public OptionalDouble shownMax() {
      String shown = shown().max();
      return shown.isEmpty()
          ? OptionalDouble.empty()
          : OptionalDouble.of(Double.parseDouble(shown));
    }

    /** Limits as printed; {@code max} may be empty. */
    private record Shown(String min, String max) {}

    private Shown shown() {
      int decimals = decimals();
      if (max.isEmpty()) {
        return new Shown(print(min.orElse(0), decimals, RoundingMode.CEILING), "");
      }
      if (min.orElse(0) == 0) {
        return new Shown("0", print(max.orElse(0), decimals, RoundingMode.FLOOR));
      }
      String low = print(min.orElse(0), decimals, RoundingMode.CEILING);
      String high = print(max.orElse(0), decimals, RoundingMode.FLOOR);
      // A narrow band may vanish between two printed steps; finer steps then.
      while (new BigDecimal(low).compareTo(new BigDecimal(high)) > 0) {
        decimals++;
        low = print(min.orElse(0), decimals, RoundingMode.CEILING);
        high = print(max.orElse(0), decimals, RoundingMode.FLOOR);
      }
      return new Shown(low, high);
    }

    /** As many as give the larger limit three figures, fewer if neither limit needs them. */
    private int decimals() {
      double scale = Math.abs(max.orElseGet(() -> min.orElse(0)));
      if (scale == 0) {
        return 0;
      }
      int wanted = Math.max(0, FIGURES - 1 - (int) Math.floor(Math.log10(scale)));
      if (scale >= FINE / 10) {
        // No instrument on site shows more.
        wanted = Math.min(wanted, scale >= FINE ? 2 : 3);
      }
      return Math.min(wanted, Math.max(places(min), places(max)));
    }

    private static int places(OptionalDouble limit) {
      return Math.max(0, tidy(limit.orElse(0)).stripTrailingZeros().scale());
    }

    private static String print(double value, int decimals, RoundingMode rounding) {
      return tidy(value).setScale(decimals, rounding).toPlainString();
    }

    /** Twelve figures: 0.1 + 0.2 must not be rounded up for its last binary digit. */
    private static BigDecimal tidy(double value) {
      return new BigDecimal(value).round(new MathContext(12, RoundingMode.HALF_EVEN));
    }
  }

  /**
   * A winding that has not been on: it is as warm as the air about it.
   *
   * @param low its least resistance at the reference temperature, in Ω
   * @param high its greatest
   * @param constant temperature below 0 °C, in K, at which its resistance would vanish
   * @param reference in °C
   */
  record Winding(double low, double high, double constant, double reference) {
    /** What the resistance is multiplied by at a temperature in °C. */
    double factor(double celsius) {
      return (constant + celsius) / (constant + reference);
    }
  }

  /**
   * Something seen, heard or felt.
   *
   * @param state from a closed list
   */
  record Seen(State state) implements Expected {
    @Override
    public String text(Texts texts) {
      return state.text(texts);
    }
  }

  /**
   * A setting read back.
   *
   * @param value with its unit, as the netlist has it
   */
  record Setting(String value) implements Expected {
    @Override
    public String text(Texts texts) {
      return texts.of("expected.setting", value);
    }
  }

  /** The states that can be expected. Each says what is so, never that somebody looked. */
  enum State {
    LOCKED_OFF,
    SHOWS_A_KNOWN_SOURCE,
    PULLS_IN,
    LETS_GO,
    STAYS_OUT,
    TRIPS,
    DOES_NOT_TRIP,
    STAYS_OPEN,
    FITTED,
    /** Hung where somebody could switch on. */
    HUNG,
    /** Covered, or none there. */
    COVERED,
    /** As good workmanship has it. */
    SOUND,
    /** Taken off and covered. */
    OFF,
    /** Back on its pin and tight. */
    BACK,
    /** As it is in service. */
    SET_BACK,
    /** In the position that the tests need. */
    READY,
    ON,
    HANDED_OVER;

    /** As printed in a language. */
    public String text(Texts texts) {
      return texts.of("state." + Texts.key(this));
    }
  }
}
