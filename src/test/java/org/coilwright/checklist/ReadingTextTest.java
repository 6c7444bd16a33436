package org.coilwright.checklist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertInstanceOf;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.coilwright.checklist.Compared.Place;
import org.coilwright.checklist.Expected.Band;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Readings as people write them. */
class ReadingTextTest {
  private static final Texts ENGLISH = Texts.english();

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "650 | Ω | 650",
        "650 Ω | Ω | 650",
        "650ohm | Ω | 650",
        "0,8 ohm | Ω | 0.8",
        "0.8 Ω | Ω | 0.8",
        "0,800 Ohm | Ω | 0.8",
        ",8 OHM | Ω | 0.8",
        "1 kΩ | Ω | 1000",
        "1 KOhm | Ω | 1000",
        "1,2 kohm | Ω | 1200",
        "800 mΩ | Ω | 0.8",
        "2 MΩ | MΩ | 2",
        "2000 kΩ | MΩ | 2",
        "2 MOhm | MΩ | 2",
        "1’234,5 Ω | Ω | 1234.5",
        "1'234 Ω | Ω | 1234",
        "1,234.5 | Ω | 1234.5",
        "1.234,5 | Ω | 1234.5",
        "1.234.567 | Ω | 1234567",
        "12,34 | V AC | 12.34",
        "231 V | V AC | 231",
        "231 VAC | V AC | 231",
        "231 v ac | V AC | 231",
        "231 V~ | V AC | 231",
        "23.9 V DC | V DC | 23.9",
        "-23.9 V | V DC | -23.9",
        "\u221223,9 V | V DC | -23.9",
        "+23,9 V | V DC | 23.9",
        "23900 mV | V DC | 23.9",
        "13 A | A | 13",
        "85 mA | A | 0.085",
        "28 ms | ms | 28",
        "0.028 s | ms | 28",
        "45 °C | °C | 45",
      })
  void a_number_with_or_without_its_unit(String text, String unit, double value) {
    Reading read = ReadingText.read(text, unit, ENGLISH);
    assertInstanceOf(Reading.Exact.class, read, () -> text + ": " + read);
    assertEquals(value, ((Reading.Exact) read).value(), 1e-9 * Math.abs(value));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "1,234",
        "1.234",
        "12,345 Ω",
        "650/651",
        "650 651",
        "1 234 Ω",
        "1 234,5 Ω",
        "12,34,5",
        "1,2.3,4",
        "about 650",
        "650 V",
        "650 F",
        "2 MOHM",
        "ok",
        "-",
        "650 Ω at 20 °C",
        "> ",
        "1e3",
        "99999999999999999999",
        "> -5",
        "x",
      })
  void what_can_be_read_in_two_ways_or_none_is_asked_about(String text) {
    Reading read = ReadingText.read(text, "Ω", ENGLISH);
    assertInstanceOf(Reading.Unclear.class, read, () -> text + ": " + read);
    String why = ((Reading.Unclear) read).why();
    assertTrue(why.length() > 10, why);
  }

  @Test
  void an_ambiguous_number_names_both_ways_to_read_it() {
    Reading.Unclear unclear = (Reading.Unclear) ReadingText.read("1,234", "Ω", ENGLISH);
    assertTrue(unclear.why().contains("1.234") && unclear.why().contains("1234"), unclear.why());
  }

  @Test
  void dc_in_a_row_of_ac_is_asked_about() {
    assertInstanceOf(Reading.Unclear.class, ReadingText.read("231 V DC", "V AC", ENGLISH));
    assertInstanceOf(Reading.Unclear.class, ReadingText.read("24 V~", "V DC", ENGLISH));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "> 500 MΩ | atLeast1 | WITHIN",
        "≥ 1 MΩ | atLeast1 | WITHIN",
        "> 0.5 MΩ | atLeast1 | UNCLEAR",
        "OL | atLeast1 | UNCLEAR",
        "1 | atLeast1 | WITHIN",
        "0.99 | atLeast1 | OUTSIDE",
        "< 0.1 | atMost0.5 | WITHIN",
        "<0,5 | atMost0.5 | WITHIN",
        "< 1 | atMost0.5 | UNCLEAR",
        "0.5 | atMost0.5 | WITHIN",
        "0.51 | atMost0.5 | OUTSIDE",
        "-0.2 | atMost0.5 | OUTSIDE",
        "O.L. | atMost0.5 | OUTSIDE",
        "∞ | atMost0.5 | OUTSIDE",
        "> 20 | atMost0.5 | OUTSIDE",
        "> 0.1 | atMost0.5 | UNCLEAR",
        "594 | coil | WITHIN",
        "726 | coil | WITHIN",
        "726.1 | coil | OUTSIDE",
        "593.9 | coil | OUTSIDE",
        "> 2000 | coil | OUTSIDE",
        "> 600 | coil | UNCLEAR",
        "< 10 | coil | OUTSIDE",
        "< 600 | coil | UNCLEAR",
      })
  void a_reading_lies_within_or_outside_or_cannot_be_told(
      String text, String band, Place expected) {
    Band of =
        switch (band) {
          case "atLeast1" -> Band.atLeast(1, "MΩ");
          case "atMost0.5" -> Band.atMost(0.5, "Ω");
          default -> Band.between(594, 726, "Ω");
        };
    assertEquals(expected, Compared.of(text, of, ENGLISH).place());
  }

  /** What is printed is rounded inwards; nobody on site sees the rest. */
  @Test
  void a_reading_is_judged_by_the_limits_as_printed() {
    Band band = Band.between(594.4, 726.4, "Ω");
    assertEquals("595 … 726 Ω", band.text(ENGLISH));
    assertEquals(Place.OUTSIDE, Compared.of("726.3", band, ENGLISH).place());
    assertEquals(Place.WITHIN, Compared.of("726", band, ENGLISH).place());
    assertEquals(Place.OUTSIDE, Compared.of("594.5", band, ENGLISH).place());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "3.4 kW | 3.4 kW | WITHIN",
        "3,4kW | 3.4 kW | WITHIN",
        "3.4 | 3.4 kW | WITHIN",
        "3400 W | 3.4 kW | WITHIN",
        "3.5 kW | 3.4 kW | OUTSIDE",
        "34 kW | 3.4 kW | OUTSIDE",
        "3.4 A | 3.4 kW | UNCLEAR",
        "> 3 kW | 3.4 kW | UNCLEAR",
        "600 s | 10 min | WITHIN",
        "10 | 10 min | WITHIN",
        "1,234 | 10 min | UNCLEAR",
        "Type A 40A 30mA | type A, 40 A, 30 mA | WITHIN",
        "30 mA, type a, 40 A | type A, 40 A, 30 mA | WITHIN",
        "40 A 30 mA | type A, 40 A, 30 mA | UNCLEAR",
        "type A 25 A 30 mA | type A, 40 A, 30 mA | UNCLEAR",
        "type AC, 40 A, 30 mA | type A, 40 A, 30 mA | UNCLEAR",
        "type A, 140 A, 30 mA | type A, 40 A, 30 mA | UNCLEAR",
        "type A, 40 A, 300 mA | type A, 40 A, 30 mA | UNCLEAR",
        "9kW 400V star | 9 kW, 400 V, star | WITHIN",
        "Manual | manual | WITHIN",
        "automatic | manual | UNCLEAR",
      })
  void a_setting_is_what_was_to_be_entered(String text, String wanted, Place expected) {
    assertEquals(expected, Compared.of(text, new Expected.Setting(wanted), ENGLISH).place());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "2026-11-25 14:30 | 2026-11-25 | 14:30",
        "2026-11-25T14:30 | 2026-11-25 | 14:30",
        "25.11.2026, 14:30 Uhr | 2026-11-25 | 14:30",
        "25. 11. 2026 14.30 | 2026-11-25 | 14:30",
        "25/11/2026 9:05 | 2026-11-25 | 09:05",
        "11/25/2026 9:05 | 2026-11-25 | 09:05",
        "2026-11-25 | 2026-11-25 | ''",
      })
  void a_date_as_people_write_it(String text, String date, String time) {
    Moment moment = Moment.of(text).orElseThrow();
    assertEquals(date, moment.date().toString());
    assertEquals(time, moment.time().map(String::valueOf).orElse(""));
  }

  @ParameterizedTest
  @ValueSource(strings = {"04/03/2026", "yesterday", "2026-13-01", "14:30", "2026-02-30", ""})
  void a_date_that_can_be_read_in_two_ways_has_no_meaning(String text) {
    assertTrue(Moment.of(text).isEmpty(), text);
  }
}
