package org.coilwright.checklist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.coilwright.checklist.Expected.Band;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ExpectedTest {
  private static final Texts TEXTS = Texts.english();

  @ParameterizedTest
  @CsvSource({
    "594, 726, Ω, 594 … 726 Ω",
    "0, 12, V AC, 0 … 12 V AC",
    "0, 300, ms, 0 … 300 ms",
    "21.6, 26.4, V DC, 21.6 … 26.4 V DC",
    "207.8461, 254.0341, V AC, 208 … 254 V AC",
    "0.8801, 1.2855, Ω, 0.89 … 1.28 Ω",
    "0, 0.12964, A, 0 … 0.12 A",
    "0, 0.0567, Ω, 0 … 0.056 Ω",
    "10, 10, A, 10 … 10 A",
    "0.1041, 0.1098, A, 0.105 … 0.109 A",
  })
  void a_band_prints_both_limits_with_the_same_decimals(
      double min, double max, String unit, String printed) {
    assertEquals(printed, Band.between(min, max, unit).text(TEXTS));
  }

  @Test
  void a_least_value_alone_prints_as_such() {
    assertEquals("≥ 1 MΩ", Band.atLeast(1, "MΩ").text(TEXTS));
    assertEquals("≥ 0.5 MΩ", Band.atLeast(0.5, "MΩ").text(TEXTS));
  }

  @Test
  void the_last_binary_digit_does_not_round_a_limit_away() {
    assertEquals("0.3 … 0.6 V", Band.between(0.1 + 0.2, 0.6, "V").text(TEXTS));
  }

  /** A reading that the print allows must be one that the numbers allow. */
  @Test
  void rounding_never_widens_a_band() {
    Random random = new Random(20261125);
    Pattern print = Pattern.compile("([0-9.]+) … ([0-9.]+) V");
    for (int i = 0; i < 20_000; i++) {
      double min = Math.pow(10, random.nextDouble() * 6 - 3);
      double max = min * (1 + random.nextDouble() * random.nextDouble());
      Matcher read = print.matcher(Band.between(min, max, "V").text(TEXTS));
      assertTrue(read.matches(), () -> min + " " + max);
      assertTrue(new BigDecimal(read.group(1)).doubleValue() >= min * (1 - 1e-11));
      assertTrue(new BigDecimal(read.group(2)).doubleValue() <= max * (1 + 1e-11));
      int firstDecimals = read.group(1).length() - read.group(1).indexOf('.');
      int secondDecimals = read.group(2).length() - read.group(2).indexOf('.');
      assertEquals(
          read.group(1).contains(".") ? firstDecimals : 0,
          read.group(2).contains(".") ? secondDecimals : 0);
    }
  }

  @Test
  void a_band_without_unit_limit_or_order_is_refused() {
    assertThrows(IllegalArgumentException.class, () -> Band.between(1, 2, " "));
    assertThrows(IllegalArgumentException.class, () -> Band.between(2, 1, "V"));
    assertThrows(IllegalArgumentException.class, () -> Band.atLeast(Double.NaN, "V"));
    assertThrows(
        IllegalArgumentException.class,
        () -> new Band(OptionalDouble.empty(), OptionalDouble.empty(), "V"));
  }

  @Test
  void no_state_merely_says_that_somebody_looked() {
    Set<String> empty = Set.of("checked", "ok", "okay", "as required", "set", "good", "fine");
    for (Expected.State state : Expected.State.values()) {
      assertFalse(empty.contains(state.text(TEXTS).toLowerCase(Locale.ROOT)), state::name);
    }
  }
}
