package org.coilwright.quantity;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assertions.fail;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantityParserTest {
  private static Quantity good(String text, Wanted wanted) {
    if (QuantityParser.quantity(text, wanted) instanceof Parsed.Good<Quantity> g) {
      return g.value();
    }
    return fail(text + ": " + QuantityParser.quantity(text, wanted));
  }

  private static Parsed.Bad<?> bad(String text, Wanted wanted) {
    return assertInstanceOf(Parsed.Bad.class, QuantityParser.quantity(text, wanted), text);
  }

  private static Rating rating(String text, Wanted amount, Wanted at) {
    if (QuantityParser.rating(text, amount, Optional.of(at), true)
        instanceof Parsed.Good<Rating> g) {
      return g.value();
    }
    return fail(text);
  }

  private static ConductorSize size(String text) {
    if (QuantityParser.conductorSize(text) instanceof Parsed.Good<ConductorSize> g) {
      return g.value();
    }
    return fail(text + ": " + QuantityParser.conductorSize(text));
  }

  @ParameterizedTest
  @CsvSource({
    "24 V, VOLTAGE, 24",
    "24V, VOLTAGE, 24",
    "4 kV, VOLTAGE, 4000",
    "250 mV, VOLTAGE, 0.25",
    "85 mA, CURRENT, 0.085",
    "2.5 kA, CURRENT, 2500",
    "20 µA, CURRENT, 0.00002",
    "20 uA, CURRENT, 0.00002",
    "650 Ω, RESISTANCE, 650",
    "650 ohm, RESISTANCE, 650",
    "2.2 kohm, RESISTANCE, 2200",
    "47 kΩ, RESISTANCE, 47000",
    "3 kW, POWER, 3000",
    "2.2 kVA, APPARENT_POWER, 2200",
    "10 kWh, ENERGY, 10000",
    "12 m, LENGTH, 12",
    "300 mm, LENGTH, 0.3",
    "100 ft, LENGTH, 30.48",
    "0.75 mm², AREA, 0.75",
    "0.75 mm2, AREA, 0.75",
    "45 °C, TEMPERATURE, 45",
    "45 degC, TEMPERATURE, 45",
    "-5 °C, TEMPERATURE, -5",
    "10 min, TIME, 600",
    "5 h, TIME, 18000",
    "12 ms, TIME, 0.012",
    "50 Hz, FREQUENCY, 50",
    "10 %, RATIO, 0.1",
    "100 nF, CAPACITANCE, 0.0000001",
    "1 µF, CAPACITANCE, 0.000001",
    "300 l, VOLUME, 300",
    "300 litres, VOLUME, 300",
    "50000, COUNT, 50000",
    "8 x, COUNT, 8",
  })
  void a_value_is_stored_in_the_base_unit(String text, Dimension dimension, double expected) {
    Quantity q = good(text, Wanted.of(dimension));
    assertEquals(dimension, q.dimension());
    assertEquals(expected, q.nominal());
    assertTrue(q.isExact());
  }

  @ParameterizedTest
  @CsvSource({
    "24 V ± 10 %, 21.6, 24, 26.4",
    "24 V +/- 10 %, 21.6, 24, 26.4",
    "24 V ± 2 V, 22, 24, 26",
    "24 V DC ± 500 mV, 23.5, 24, 24.5",
    "24 V +20 % -15 %, 20.4, 24, 28.8",
    "24 V -15 % +20 %, 20.4, 24, 28.8",
    "24 V +20/-15 %, 20.4, 24, 28.8",
    "24 V +2 V -0 V, 24, 24, 26",
    "22..28 V, 22, 25, 28",
    "22 V..28 V DC, 22, 25, 28",
    "500 mV .. 1 V, 0.5, 0.75, 1",
  })
  void tolerances_and_ranges_give_bounds(String text, double low, double nominal, double high) {
    Quantity q = good(text, Wanted.of(Dimension.VOLTAGE));
    assertEquals(low, q.low());
    assertEquals(nominal, q.nominal());
    assertEquals(high, q.high());
  }

  @Test
  void temperatures_take_kelvin_as_tolerance_and_may_be_below_zero() {
    assertEquals(85, good("80 °C ± 5 K", Wanted.of(Dimension.TEMPERATURE)).high());
    assertEquals(-20, good("-20..45 °C", Wanted.of(Dimension.TEMPERATURE)).low());
    assertEquals(-20, good("\u221220..45 °C", Wanted.of(Dimension.TEMPERATURE)).low());
  }

  @ParameterizedTest
  @CsvSource({
    "24 V DC, DC",
    "230 V AC, AC",
    "24 VDC, DC",
    "24 Vdc, DC",
    "230 VAC, AC",
    "24 V DC ± 10 %, DC",
    "24 V ± 10 % DC, DC",
    "22..28 V DC, DC",
    "24 V, UNSTATED",
  })
  void the_kind_of_current_follows_the_unit(String text, CurrentKind kind) {
    assertEquals(kind, good(text, Wanted.of(Dimension.VOLTAGE)).kind());
  }

  @Test
  void a_bare_ratio_is_a_fraction_and_a_bare_volume_is_litres() {
    assertEquals(0.85, good("0.85", Wanted.of(Dimension.RATIO).orBare()).nominal());
    assertEquals(
        "write 85 % if that is meant", bad("85", Wanted.of(Dimension.RATIO).orBare()).remedy());
    assertEquals(300, good("300", Wanted.of(Dimension.VOLUME).orBare()).nominal());
  }

  @Test
  void split_mains_are_read_line_to_line() {
    Parsed<Quantity> parsed = QuantityParser.splitVoltage("120/240 V ± 5 %");
    Quantity q =
        assertInstanceOf(Parsed.Good.class, parsed).value() instanceof Quantity v ? v : null;
    assertEquals(
        Printed.of(new Quantity(Dimension.VOLTAGE, 228, 240, 252, CurrentKind.UNSTATED)),
        q == null ? "" : Printed.of(q));
    assertInstanceOf(Parsed.Bad.class, QuantityParser.splitVoltage("240 V"));
    assertInstanceOf(Parsed.Bad.class, QuantityParser.splitVoltage("120/208 V"));
  }

  @Test
  void ratings_have_a_condition() {
    Wanted amps = Wanted.of(Dimension.CURRENT);
    Wanted volts = Wanted.of(Dimension.VOLTAGE);
    assertEquals(250, rating("16 A at 250 V", amps, volts).at().orElseThrow().nominal());
    assertEquals(
        20,
        rating("70 % at 20 °C", Wanted.of(Dimension.RATIO), Wanted.of(Dimension.TEMPERATURE))
            .at()
            .orElseThrow()
            .nominal());
    assertEquals(
        50000, rating("50000 at 16 A", Wanted.of(Dimension.COUNT), amps).amount().nominal());
    assertEquals(
        5,
        rating("8 x for 5 s", Wanted.of(Dimension.COUNT), Wanted.of(Dimension.TIME))
            .at()
            .orElseThrow()
            .nominal());
    assertTrue(rating("1.6 W per pole", Wanted.of(Dimension.POWER), volts).perPole());
    assertTrue(rating("100 mA", amps, volts).at().isEmpty());
  }

  @ParameterizedTest
  // areas as printed in ASTM B258 tables, to their last printed digit
  @CsvSource({
    "18 AWG, 0.823, 18",
    "14 AWG, 2.08, 14",
    "12 AWG, 3.31, 12",
    "10 AWG, 5.26, 10",
    "AWG 8, 8.37, 8",
    "1 AWG, 42.4, 1",
    "1/0 AWG, 53.5, 0",
    "4/0 AWG, 107.2, -3",
  })
  void gauges_follow_the_standard_progression(String text, double mm2, int gauge) {
    assertEquals(gauge, size(text).awg().orElseThrow());
    assertEquals(mm2, size(text).mm2(), mm2 * 0.002);
  }

  @Test
  void metric_and_kcmil_sizes_have_no_gauge() {
    assertEquals(2.5, size("2.5 mm²").mm2());
    assertEquals(126.7, size("250 kcmil").mm2(), 0.1);
    assertTrue(size("2.5 mm²").awg().isEmpty());
    assertInstanceOf(Parsed.Bad.class, QuantityParser.conductorSize("18.5 AWG"));
    assertInstanceOf(Parsed.Bad.class, QuantityParser.conductorSize("99 AWG"));
    assertInstanceOf(Parsed.Bad.class, QuantityParser.conductorSize("5/0 AWG"));
    assertInstanceOf(Parsed.Bad.class, QuantityParser.conductorSize("2.5"));
    assertInstanceOf(Parsed.Bad.class, QuantityParser.conductorSize("0 mm²"));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "24 | VOLTAGE | 24 has no unit | write V, mV or kV after it, such as 24 V",
        "12 V | LENGTH | a length is needed here; 12 V is a voltage | write it like 12 m",
        "24 volts | VOLTAGE | \"volts\" is not a unit | write 24 V",
        "3 KW | POWER | \"KW\" is not a unit | write 3 kW",
        "24 Q | VOLTAGE | \"Q\" is not a unit | use V, mV or kV",
        "24,5 V | VOLTAGE | a number here has no comma | write a point for decimals and nothing between thousands: 24.5",
        "10 000 | COUNT | the number is split in two | write it in one piece: 10000",
        "10_000 | COUNT | the number is split in two | write it in one piece: 10000",
        "1e5 | COUNT | the number has an exponent | write all its digits",
        "28..22 V | VOLTAGE | the range runs backwards | write the smaller value first: 22..28 V",
        "22-28 V | VOLTAGE | a range is written with two points | write 22..28 V",
        "22–28 V | VOLTAGE | a range is written with two points | write 22..28 V",
        "22 to 28 V | VOLTAGE | a range is written with two points | write 22..28 V",
        "22 V to 28 V | VOLTAGE | a range is written with two points | write 22..28 V",
        "24 V ± 10 | VOLTAGE | the tolerance has no unit | write ± 10 %, or a value with a unit",
        "24 V + 10 % | VOLTAGE | a tolerance with a sign needs both sides | write +20 % -15 %, or ± 10 %",
        "10 % ± 2 % | RATIO | a percentage of a share in per cent can be understood in two ways | write a range: 8..12 %",
        "-24 V | VOLTAGE | the value must stay above zero | check the number, its sign and its tolerance",
        "0 Ω | RESISTANCE | the value must stay above zero | check the number, its sign and its tolerance",
        "-1 m | LENGTH | the value must stay above zero | check the number, its sign and its tolerance",
        "-300..45 °C | TEMPERATURE | nothing can be colder than -273.15 °C | check the number, its sign and its tolerance",
        "10 m AC | LENGTH | a length is neither AC nor DC | take AC out",
        "24 V please | VOLTAGE | \"please\" does not belong here | write it like 24 V",
        "V 24 | VOLTAGE | a number is missing here | start with a number",
        "1234567890123456 V | VOLTAGE | the number is too long | write at most 15 digits",
        "120/240 V | VOLTAGE | one value is needed here | write one of the two",
      })
  void a_failure_says_what_is_wrong_and_what_to_write(
      String text, Dimension dimension, String what, String remedy) {
    Parsed.Bad<?> bad = bad(text, Wanted.of(dimension));
    assertEquals(what, bad.what());
    assertEquals(remedy, bad.remedy());
    assertTrue(bad.offset() >= 0 && bad.offset() + bad.length() <= text.length(), bad.toString());
  }

  @Test
  void the_offset_points_at_the_offending_word() {
    assertEquals(3, bad("24 volts", Wanted.of(Dimension.VOLTAGE)).offset());
    assertEquals(5, bad("24 volts", Wanted.of(Dimension.VOLTAGE)).length());
  }
}
