package org.coilwright.table;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The letters of pilot duty against the amperes that IEC 60947-5-1, Annex A, Table A.1 prints
 * beside them (from memory): volt-amperes over volts, but for their rounding.
 */
class PilotDutyTest {
  private final Tables tables = Tables.load();

  @ParameterizedTest
  @CsvSource({
    "A, 120, 6, 10",
    "A, 240, 3, 10",
    "B, 120, 3, 5",
    "B, 240, 1.5, 5",
    "C, 120, 1.5, 2.5",
    "C, 240, 0.75, 2.5",
    "D, 120, 0.6, 1",
    "D, 240, 0.3, 1",
    "E, 120, 0.3, 0.5",
    "N, 125, 2.2, 10",
    "N, 250, 1.1, 10",
    "P, 125, 1.1, 5",
    "P, 250, 0.55, 5",
    "Q, 125, 0.55, 2.5",
    "Q, 250, 0.27, 2.5",
    "R, 125, 0.22, 1",
    "R, 250, 0.11, 1"
  })
  void what_a_letter_breaks_at_a_voltage_is_what_is_printed(
      String letter, double volts, double breaks, double thermal) {
    assertEquals(breaks, figure(letter, "break") / volts, 0.025 * breaks);
    assertEquals(thermal, figure(letter, "thermal"));
  }

  private double figure(String letter, String column) {
    return tables.lookup("pilot-duty", Map.of("letter", letter), column).orElseThrow().value();
  }
}
