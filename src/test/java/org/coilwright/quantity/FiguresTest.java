package org.coilwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class FiguresTest {
  @ParameterizedTest
  @CsvSource({
    "9.2796, VOLTAGE, 9.28 V",
    "9.6, VOLTAGE, 9.60 V",
    "228.4, VOLTAGE, 228 V",
    "0.32, VOLTAGE, 0.320 V",
    "0, VOLTAGE, 0 V",
    "0.085, CURRENT, 85.0 mA",
    "13, CURRENT, 13.0 A",
    "0.9996, CURRENT, 1.00 A",
    "9000, POWER, 9.00 kW",
    "999.6, POWER, 1.00 kW",
    "0.8047, RATIO, 80.5 %",
    "44.96, TEMPERATURE, 45.0 °C",
    "0.0000001, CAPACITANCE, 100 nF",
    "7300, TIME, 2.03 h",
    "50000, COUNT, 50000",
  })
  void computed_values_have_three_figures(double value, Dimension dimension, String expected) {
    assertEquals(expected, Figures.computed(value, dimension));
  }

  @ParameterizedTest
  @CsvSource({
    "230, VOLTAGE, 230 V",
    "0.085, CURRENT, 85 mA",
    "2.5, AREA, 2.5 mm²",
    "0.75, AREA, 0.75 mm²",
    "4000, VOLTAGE, 4 kV",
    "600, TIME, 10 min",
    "0.2, LENGTH, 200 mm",
    "12345, LENGTH, 12350 m",
  })
  void given_values_have_no_idle_zeros(double value, Dimension dimension, String expected) {
    assertEquals(expected, Figures.given(value, dimension));
  }

  @Test
  void two_values_that_differ_never_print_alike() {
    assertEquals(List.of("9.596 V", "9.600 V"), Figures.apart(9.596, 9.6, Dimension.VOLTAGE));
    assertEquals(List.of("9.28 V", "9.60 V"), Figures.apart(9.28, 9.6, Dimension.VOLTAGE));
    assertEquals(List.of("9.60 V", "9.60 V"), Figures.apart(9.6, 9.6, Dimension.VOLTAGE));
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
    assertEquals(text, Figures.of(read(text, dimension)));
  }

  @Test
  void ratings_and_sizes_print_as_a_netlist_would_have_them() {
    Quantity volts = Quantity.of(250, Dimension.VOLTAGE);
    Quantity amps = Quantity.of(16, Dimension.CURRENT);
    assertEquals("16 A at 250 V", Figures.of(new Rating(amps, Optional.of(volts), false)));
    assertEquals(
        "8 x for 5 s",
        Figures.of(
            new Rating(
                Quantity.of(8, Dimension.COUNT),
                Optional.of(Quantity.of(5, Dimension.TIME)),
                false)));
    assertEquals(
        "1.6 W per pole",
        Figures.of(new Rating(Quantity.of(1.6, Dimension.POWER), Optional.empty(), true)));
    assertEquals("2/0 AWG", Figures.of(ConductorSize.ofAwg(-1)));
    assertEquals("18 AWG", Figures.of(ConductorSize.ofAwg(18)));
    assertEquals("2.5 mm²", Figures.of(ConductorSize.ofMm2(2.5)));
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
      Quantity read = read(Figures.given(value, dimension), dimension);
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
