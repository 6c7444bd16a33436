package org.coilwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.OptionalInt;
import org.junit.jupiter.api.Test;

class PrintedTest {
  @Test
  void three_digits_and_a_fitting_unit() {
    assertEquals("9.28 V", Printed.volts(9.2794));
    assertEquals("24 V", Printed.volts(24));
    assertEquals("9.60 V", Printed.volts(9.6));
    assertEquals("230 V", Printed.volts(230.4));
    assertEquals("36.4 mA", Printed.amps(24 / 660.0));
    assertEquals("1.09 A", Printed.amps(1.0870));
    assertEquals("80 %", Printed.percent(0.8));
    assertEquals("0 V", Printed.volts(0));
    assertEquals("-23.4 V", Printed.volts(-23.4));
    assertEquals("42.5 nF", Printed.of(42.5e-9, Dimension.CAPACITANCE));
    assertEquals("4.50 kW", Printed.of(4500, Dimension.POWER));
  }

  @Test
  void figures_that_are_compared_share_unit_and_decimals() {
    assertEquals(new Printed.Pair("9.28 V", "9.60 V", "0.32 V"), pair(9.2794, 9.6));
    assertEquals(new Printed.Pair("28.8 V", "26.4 V", "2.4 V"), pair(28.8, 26.4));
    assertEquals(new Printed.Pair("0 V", "2.40 V", "2.40 V"), pair(0, 2.4));
  }

  @Test
  void figures_far_apart_keep_their_own_units() {
    assertEquals(
        new Printed.Pair("46.7 mA", "1 A", "953 mA"), Printed.pair(0.0467, 1, Dimension.CURRENT));
  }

  @Test
  void a_limit_that_has_one_more_decimal_keeps_it() {
    assertEquals(new Printed.Pair("191.8 V", "195.5 V", "3.7 V"), pair(191.76, 195.5));
  }

  @Test
  void figures_that_differ_never_look_the_same() {
    assertEquals(
        new Printed.Pair("20.398 V", "20.400 V", "0.002 V").value(), pair(20.398, 20.4).value());
    assertEquals("0.002 V", pair(20.398, 20.4).apart());
  }

  @Test
  void advice_is_rounded_to_the_sure_side() {
    assertEquals("20.5 V", Printed.atLeast(20.401, Dimension.VOLTAGE));
    assertEquals("20.4 V", Printed.atLeast(24 * 0.85, Dimension.VOLTAGE));
    assertEquals("26.4 V", Printed.atMost(26.49, Dimension.VOLTAGE));
    assertEquals("26.4 V", Printed.atMost(24 * 1.1, Dimension.VOLTAGE));
  }

  @Test
  void sizes_as_they_are_written() {
    assertEquals("0.75 mm²", Printed.of(new ConductorSize(0.75, OptionalInt.empty())));
    assertEquals("1 mm²", Printed.of(new ConductorSize(1, OptionalInt.empty())));
    assertEquals("16 AWG", Printed.of(new ConductorSize(1.309, OptionalInt.of(16))));
    assertEquals("2/0 AWG", Printed.of(new ConductorSize(67.43, OptionalInt.of(-1))));
  }

  private static Printed.Pair pair(double value, double limit) {
    return Printed.pair(value, limit, Dimension.VOLTAGE);
  }
}
