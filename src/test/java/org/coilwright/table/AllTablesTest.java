// Over 250 lines: everything that is asked of every table.
package org.coilwright.table;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Loads every table and figure there is; nothing may be left without a source. */
class AllTablesTest {
  private static final Path FILES = Path.of("src/main/resources/tables");
  private final Tables tables = Tables.load();

  static Stream<String> tableNames() {
    return names(FILES).filter(n -> !n.equals("bibliography") && !n.equals("references"));
  }

  static Stream<String> figureGroups() {
    return names(FILES.resolve("figures"));
  }

  private static Stream<String> names(Path folder) {
    try (Stream<Path> files = Files.list(folder)) {
      return files
          .map(f -> f.getFileName().toString())
          .filter(n -> n.endsWith(".yaml"))
          .map(n -> n.substring(0, n.length() - ".yaml".length()))
          .sorted()
          .toList()
          .stream();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static List<String> figureNames(String group) {
    return List.copyOf(
        TableReader.map(TableReader.document("figures/" + group).get("figures")).keySet());
  }

  @ParameterizedTest
  @MethodSource("figureGroups")
  void every_figure_has_a_source_a_place_and_a_standing(String group) {
    List<String> names = figureNames(group);
    assertFalse(names.isEmpty());
    for (String name : names) {
      Cited<Double> figure = tables.figure(group + "." + name);
      assertFalse(figure.place().isBlank(), name);
      assertTrue(Double.isFinite(figure.value()), name);
    }
  }

  @ParameterizedTest
  @MethodSource("tableNames")
  void every_table_loads_and_its_keys_find_their_own_row(String name) {
    CitedTable table = tables.table(name);
    for (CitedTable.Row row : table.rows()) {
      Map<String, String> where = new HashMap<>();
      double at = Double.NaN;
      boolean keyed = false;
      for (Column column : table.columns()) {
        if (column.role() == Column.Role.WORD_KEY) {
          where.put(column.name(), row.word(column.name()).orElseThrow().value());
        } else if (column.role() == Column.Role.KEY) {
          keyed = true;
          at = row.number(column.name()).orElseThrow().value();
        }
      }
      for (Column column : table.columns()) {
        if (column.role() == Column.Role.NUMBER) {
          assertEquals(
              row.number(column.name()),
              keyed ? table.lookup(where, at, column.name()) : table.lookup(where, column.name()),
              () -> name + " " + where + " " + column.name());
        }
      }
    }
  }

  @ParameterizedTest
  @MethodSource("tableNames")
  void columns_that_should_rise_or_fall_do(String name) {
    CitedTable table = tables.table(name);
    List<String> wordKeys =
        table.columns().stream()
            .filter(c -> c.role() == Column.Role.WORD_KEY)
            .map(Column::name)
            .toList();
    boolean numericKey = table.columns().stream().anyMatch(c -> c.role() == Column.Role.KEY);
    for (Column column : table.columns()) {
      Map<List<String>, Double> before = new HashMap<>();
      for (CitedTable.Row row : table.rows()) {
        Cited<Double> cell = row.numbers().get(column.name());
        if (cell == null || column.order() == Column.Order.FREE) {
          continue;
        }
        List<String> words =
            numericKey
                ? wordKeys.stream().map(k -> row.word(k).orElseThrow().value()).toList()
                : List.<String>of();
        Double last = before.put(words, cell.value());
        if (last != null) {
          boolean right =
              column.order() == Column.Order.RISING ? cell.value() >= last : cell.value() <= last;
          assertTrue(right, () -> name + " " + column.name() + " at " + cell.value());
        }
      }
    }
  }

  @ParameterizedTest
  @MethodSource("tableNames")
  void a_numeric_key_rises(String name) {
    for (Column column : tables.table(name).columns()) {
      if (column.role() == Column.Role.KEY) {
        assertEquals(Column.Order.RISING, column.order(), name);
      }
    }
  }

  /** Just before, between and just beyond the rows of each numeric key. */
  @ParameterizedTest
  @MethodSource("tableNames")
  void between_its_rows_and_outside_them_a_table_answers_as_it_says(String name) {
    CitedTable table = tables.table(name);
    Optional<Column> key =
        table.columns().stream().filter(c -> c.role() == Column.Role.KEY).findFirst();
    if (key.isEmpty()) {
      return;
    }
    Map<Map<String, String>, List<CitedTable.Row>> groups = new LinkedHashMap<>();
    for (CitedTable.Row row : table.rows()) {
      Map<String, String> where = new TreeMap<>();
      for (Column column : table.columns()) {
        if (column.role() == Column.Role.WORD_KEY) {
          where.put(column.name(), row.word(column.name()).orElseThrow().value());
        }
      }
      groups.computeIfAbsent(where, w -> new ArrayList<>()).add(row);
    }
    groups.forEach((where, rows) -> assertEdges(table, key.get().name(), where, rows));
  }

  private static void assertEdges(
      CitedTable table, String key, Map<String, String> where, List<CitedTable.Row> rows) {
    for (Column column : table.columns()) {
      if (column.role() != Column.Role.NUMBER) {
        continue;
      }
      String name = column.name();
      String about = table.name() + " " + where + " " + name;
      double first = rows.get(0).number(key).orElseThrow().value();
      double last = rows.get(rows.size() - 1).number(key).orElseThrow().value();
      assertEquals(
          Optional.empty(), table.lookup(where, last + Math.abs(last) * 1e-6 + 1e-6, name), about);
      Optional<Cited<Double>> below =
          table.lookup(where, first - Math.abs(first) * 1e-6 - 1e-6, name);
      assertEquals(
          table.between() == Between.UP_TO ? rows.get(0).number(name) : Optional.empty(),
          below,
          about);
      for (int i = 1; i < rows.size(); i++) {
        double a = rows.get(i - 1).number(key).orElseThrow().value();
        double b = rows.get(i).number(key).orElseThrow().value();
        Optional<Double> left = rows.get(i - 1).number(name).map(Cited::value);
        Optional<Double> right = rows.get(i).number(name).map(Cited::value);
        Optional<Double> middle = table.lookup(where, (a + b) / 2, name).map(Cited::value);
        switch (table.between()) {
          case NONE -> assertEquals(Optional.empty(), middle, about);
          case UP_TO -> assertEquals(right, middle, about);
          case LOWER_ROW -> assertEquals(left, middle, about);
          case INTERPOLATE ->
              assertEquals(
                  (left.orElseThrow() + right.orElseThrow()) / 2,
                  middle.orElseThrow(),
                  1e-9,
                  about);
        }
      }
    }
  }

  /** Loading and edges are tested above for all; each is also held by something of its own. */
  @ParameterizedTest
  @MethodSource("tableNames")
  void every_table_is_named_by_a_test_of_its_own(String name) throws IOException {
    List<Path> places = new ArrayList<>();
    for (String root : List.of("src/test/java", "src/test/resources/worked-examples")) {
      try (Stream<Path> files = Files.walk(Path.of(root))) {
        files
            .filter(Files::isRegularFile)
            .filter(f -> !f.endsWith("AllTablesTest.java"))
            .forEach(places::add);
      }
    }
    // families are put together in the tests: "ampacity-iec-" + "pvc-2" + "-loaded"
    String family = name.replaceFirst("-(pvc|xlpe)-[23]-loaded$", "-");
    Pattern named = Pattern.compile("[\" ](" + name + "|" + family + ")[\",]");
    boolean found = false;
    for (Path place : places) {
      found |= named.matcher(Files.readString(place)).find();
    }
    assertTrue(found, name);
  }

  @Test
  void every_entry_of_the_bibliography_is_used() throws IOException {
    Set<String> unused = new TreeSet<>(TableReader.document("bibliography").keySet());
    List<Path> places = new ArrayList<>();
    for (String root :
        List.of(
            "src/main/resources/tables",
            "src/main/java",
            "src/test/resources/worked-examples",
            "safety-notes")) {
      if (Files.exists(Path.of(root))) {
        try (Stream<Path> files = Files.walk(Path.of(root))) {
          files.filter(Files::isRegularFile).forEach(places::add);
        }
      }
    }
    for (Path place : places) {
      if (!place.endsWith("bibliography.yaml")) {
        String text = Files.readString(place);
        unused.removeIf(
            k ->
                Pattern.compile("source: " + k + "(?![a-z0-9-])").matcher(text).find()
                    || text.contains('"' + k + '"'));
      }
    }
    assertEquals(Set.of(), unused);
  }
}
