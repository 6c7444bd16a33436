package org.coilwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;

import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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

  @ParameterizedTest
  @CsvSource({
    "9.2796, VOLTAGE, 9.28 V",
    "9.6, VOLTAGE, 9.60 V",
    "228.4, VOLTAGE, 228 V",
    "0.32, VOLTAGE, 0.320 V",
    "0, VOLTAGE, 0 V",
    "0.085, CURRENT, 85 mA",
    "13, CURRENT, 13 A",
    "0.9996, CURRENT, 1 A",
    "9000, POWER, 9 kW",
    "999.6, POWER, 1 kW",
    "0.8047, RATIO, 80.5 %",
    "44.96, TEMPERATURE, 45 °C",
    "0.0000001, CAPACITANCE, 100 nF",
    "7300, TIME, 2.03 h",
    "50000, COUNT, 50000",
  })
  void computed_values_have_three_figures(double value, Dimension dimension, String expected) {
    assertEquals(expected, Printed.of(value, dimension));
  }

  @ParameterizedTest
  @CsvSource({
    "230, VOLTAGE, 230 V",
    "0.085, CURRENT, 85 mA",
    "2.5, AREA, 2.5 mm²",
    "0.75, AREA, 0.75 mm²",
    "4000, VOLTAGE, 4000 V",
    "600, TIME, 10 min",
    "0.2, LENGTH, 0.2 m",
    "12345, LENGTH, 12.35 km",
  })
  void given_values_have_no_idle_zeros(double value, Dimension dimension, String expected) {
    assertEquals(expected, Printed.given(value, dimension));
  }

  @ParameterizedTest
  @CsvSource({
    "24 V ± 10 %, VOLTAGE",
    "24 V DC ± 10 %, VOLTAGE",
    "24 V DC +20 % -15 %, VOLTAGE",
    "20.5..28 V, VOLTAGE",
    "0..45 °C, TEMPERATURE",
    "80..110 %, RATIO",
    "230 V AC, VOLTAGE",
  })
  void a_quantity_prints_as_a_netlist_would_have_it(String text, Dimension dimension) {
    assertEquals(text, Printed.of(read(text, dimension)));
  }

  @Test
  void ratings_and_sizes_print_as_a_netlist_would_have_them() {
    Quantity volts = Quantity.of(250, Dimension.VOLTAGE);
    Quantity amps = Quantity.of(16, Dimension.CURRENT);
    assertEquals("16 A at 250 V", Printed.of(new Rating(amps, Optional.of(volts), false)));
    assertEquals(
        "8 x for 5 s",
        Printed.of(
            new Rating(
                Quantity.of(8, Dimension.COUNT),
                Optional.of(Quantity.of(5, Dimension.TIME)),
                false)));
    assertEquals(
        "1.6 W per pole",
        Printed.of(new Rating(Quantity.of(1.6, Dimension.POWER), Optional.empty(), true)));
    assertEquals("2/0 AWG", Printed.of(ConductorSize.ofAwg(-1)));
    assertEquals("18 AWG", Printed.of(ConductorSize.ofAwg(18)));
    assertEquals("2.5 mm²", Printed.of(ConductorSize.ofMm2(2.5)));
  }

  @Test
  void what_is_printed_reads_back_to_the_printed_figures() {
    Random random = new Random(20260101);
    List<Dimension> dimensions = List.of(Dimension.values());
    for (int i = 0; i < 20_000; i++) {
      Dimension dimension = dimensions.get(random.nextInt(dimensions.size()));
      double value =
          dimension == Dimension.COUNT
              ? random.nextInt(1, 1_000_000)
              : Math.pow(10, random.nextDouble() * 8 - 3);
      Quantity read = read(Printed.given(value, dimension), dimension);
      assertEquals(value, read.nominal(), Math.abs(value) * 1e-3 + 1e-14, dimension + " " + value);
    }
  }

  private static Quantity read(String text, Dimension dimension) {
    if (QuantityParser.quantity(text, Wanted.of(dimension)) instanceof Parsed.Good<Quantity> g) {
      return g.value();
    }
    return fail(text + ": " + QuantityParser.quantity(text, Wanted.of(dimension)));
  }
}
