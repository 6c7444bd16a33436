package org.coilwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** At, inside or outside a limit. */
class ComparisonTest {
  @ParameterizedTest
  @CsvSource({
    "10, 10, false",
    "10.000000005, 10, false",
    "10.00000002, 10, true",
    "9.9, 10, false",
    "-9.9, -10, true",
    "-10, -9.9, false",
    "-10, -10.000000005, false",
    "1e-12, 0, true",
    "0, 0, false",
    "0, 1e-12, false",
    "Infinity, 10, true",
    "Infinity, Infinity, false",
    "10, Infinity, false",
    "10, -Infinity, true",
    "-Infinity, 10, false"
  })
  void above_a_limit_is_only_what_rounding_does_not_explain(
      double value, double limit, boolean above) {
    assertEquals(above, Comparison.exceeds(value, limit));
    assertEquals(above, Comparison.fallsShort(limit, value));
    if (above) {
      assertFalse(Comparison.same(value, limit));
      assertFalse(Comparison.same(limit, value));
      assertFalse(Comparison.exceeds(limit, value));
    }
  }

  @ParameterizedTest
  @CsvSource({"10, 10", "10.000000005, 10", "0, 0", "-3, -3.000000001", "Infinity, Infinity"})
  void the_same_is_what_lies_within_rounding(double one, double other) {
    assertTrue(Comparison.same(one, other));
    assertTrue(Comparison.same(other, one));
  }
}
