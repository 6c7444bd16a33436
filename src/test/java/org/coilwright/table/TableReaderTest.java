package org.coilwright.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TableReaderTest {
  private static final String WHOLE =
      """
      title: Amperes by size
      edition: "1"
      source: circuit-theory
      place: page 1
      standing: published
      between: none
      outside: undecided
      columns:
        - {name: kind, is: word-key}
        - {name: size, unit: mm², is: key, order: rising}
        - {name: amps, unit: A}
        - {name: doubtful, unit: A, standing: from-memory, place: page 2}
        - {name: colour, is: word}
      rows:
        - [a, 1, 10, 11, red]
        - [a, 2, 20, null, blue]
        - {cells: [b, 1, 7, {value: 8, standing: published}, red], standing: common-practice}
      """;

  private static CitedTable read(String text) {
    return new TableReader(Tables.load()::source).table("sample", TableReader.parse(text));
  }

  private static Optional<Cited<Double>> at(String text, double size, String column) {
    return read(text).lookup(Map.of("kind", "a"), size, column);
  }

  @ParameterizedTest
  @ValueSource(strings = {"title: ", "source: ", "place: ", "standing: ", "between: ", "outside: "})
  void a_table_without_one_of_its_particulars_is_refused(String key) {
    String without =
        WHOLE.lines().filter(l -> !l.startsWith(key)).reduce("", (a, b) -> a + b + "\n");
    assertThrows(IllegalArgumentException.class, () -> read(without));
  }

  @Test
  void an_unknown_source_or_standing_is_refused() {
    assertThrows(
        IllegalArgumentException.class, () -> read(WHOLE.replace("circuit-theory", "hearsay")));
    assertThrows(
        IllegalArgumentException.class,
        () -> read(WHOLE.replace("standing: published\nbetween", "standing: certain\nbetween")));
  }

  @Test
  void a_row_of_the_wrong_length_or_with_a_word_for_a_number_is_refused() {
    assertThrows(
        IllegalArgumentException.class, () -> read(WHOLE.replace("[a, 1, 10, 11, red]", "[a, 1]")));
    assertThrows(
        IllegalArgumentException.class, () -> read(WHOLE.replace("[a, 1, 10,", "[a, 1, ten,")));
  }

  @Test
  void a_figure_without_source_standing_or_value_is_refused() {
    TableReader reader = new TableReader(Tables.load()::source);
    for (String row :
        new String[] {
          "{source: circuit-theory, standing: published}",
          "{value: 1, standing: published}",
          "{value: 1, source: circuit-theory}"
        }) {
      assertThrows(
          IllegalArgumentException.class, () -> reader.figure("x.y", TableReader.parse(row)));
    }
  }

  @Test
  void the_nearest_standing_counts_cell_before_row_before_column_before_table() {
    assertEquals(Standing.PUBLISHED, at(WHOLE, 1, "amps").orElseThrow().standing());
    assertEquals(Standing.FROM_MEMORY, at(WHOLE, 1, "doubtful").orElseThrow().standing());
    assertEquals("page 2", at(WHOLE, 1, "doubtful").orElseThrow().place());
    CitedTable table = read(WHOLE);
    assertEquals(
        Standing.COMMON_PRACTICE,
        table.lookup(Map.of("kind", "b"), 1, "amps").orElseThrow().standing());
    assertEquals(
        Standing.PUBLISHED,
        table.lookup(Map.of("kind", "b"), 1, "doubtful").orElseThrow().standing());
  }

  @Test
  void between_rows_the_table_says_what_holds_and_outside_nothing_does() {
    assertTrue(at(WHOLE, 1.5, "amps").isEmpty());
    assertEquals(
        10,
        at(WHOLE.replace("between: none", "between: lower-row"), 1.5, "amps")
            .orElseThrow()
            .value());
    assertEquals(
        20,
        at(WHOLE.replace("between: none", "between: up-to"), 1.5, "amps").orElseThrow().value());
    assertEquals(
        15,
        at(WHOLE.replace("between: none", "between: interpolate"), 1.5, "amps")
            .orElseThrow()
            .value());
    for (String between : new String[] {"none", "lower-row", "up-to", "interpolate"}) {
      assertTrue(at(WHOLE.replace("between: none", "between: " + between), 2.1, "amps").isEmpty());
    }
    assertEquals(
        10,
        at(WHOLE.replace("between: none", "between: up-to"), 0.5, "amps").orElseThrow().value());
    assertTrue(at(WHOLE.replace("between: none", "between: lower-row"), 0.5, "amps").isEmpty());
  }

  @Test
  void an_empty_cell_has_no_answer() {
    assertTrue(at(WHOLE, 2, "doubtful").isEmpty());
  }

  @Test
  void words_are_looked_up_too_and_an_unknown_column_is_a_fault() {
    CitedTable table = read(WHOLE);
    assertEquals("red", table.word(Map.of("kind", "b"), "colour").orElseThrow().value());
    assertTrue(table.lookup(Map.of("kind", "c"), 1, "amps").isEmpty());
    assertThrows(
        IllegalArgumentException.class, () -> table.lookup(Map.of("kind", "a"), 1, "volts"));
  }
}
