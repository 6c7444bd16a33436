package org.coilwright.table;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Every cited figure and table of the class path. A file is parsed when first asked for, because a
 * check needs few of them and start-up counts.
 */
public final class Tables {
  private final Map<String, Source> bibliography = new HashMap<>();
  private final Map<String, Map<String, Object>> figureGroups = new HashMap<>();
  private final Map<String, Cited<Double>> figures = new HashMap<>();
  private final Map<String, CitedTable> tables = new HashMap<>();
  private final TableReader reader = new TableReader(this::source);

  private Tables() {}

  /** All tables; nothing is parsed yet. */
  public static Tables load() {
    return new Tables();
  }

  /**
   * An entry of the bibliography.
   *
   * @throws IllegalArgumentException if there is none: a fault of the program
   */
  public Source source(String key) {
    if (bibliography.isEmpty()) {
      TableReader.document("bibliography")
          .forEach((k, cite) -> bibliography.put(k, new Source(k, String.valueOf(cite))));
    }
    Source source = bibliography.get(key);
    if (source == null) {
      throw new IllegalArgumentException("the bibliography has no " + key);
    }
    return source;
  }

  /**
   * A single cited figure, in the base unit of its dimension.
   *
   * @param id group and name, such as {@code suppression.reverse-voltage-multiple}; the group is
   *     the file {@code tables/figures/<group>.yaml}
   * @throws IllegalArgumentException if there is no such figure, or it lacks a source or standing:
   *     a fault of the program
   */
  public Cited<Double> figure(String id) {
    Cited<Double> known = figures.get(id);
    if (known == null) {
      int dot = id.indexOf('.');
      Map<String, Object> group =
          figureGroups.computeIfAbsent(
              id.substring(0, dot),
              g -> TableReader.map(TableReader.document("figures/" + g).get("figures")));
      known = reader.figure(id, TableReader.map(group.get(id.substring(dot + 1))));
      figures.put(id, known);
    }
    return known;
  }

  /**
   * A table by its file name without ending.
   *
   * @throws IllegalArgumentException if there is none, or it does not say where its figures come
   *     from: a fault of the program
   */
  public CitedTable table(String name) {
    return tables.computeIfAbsent(name, n -> reader.table(n, TableReader.document(n)));
  }

  /**
   * The figure in the row whose words match; empty if no row does or the source leaves it empty.
   *
   * @param where word column to word
   */
  public Optional<Cited<Double>> lookup(String table, Map<String, String> where, String column) {
    return table(table).lookup(where, column);
  }

  /**
   * The figure at a value of the table's numeric key; empty outside the rows, and between them
   * where the table does not say what holds there.
   *
   * @param where word column to word; may be empty
   * @param at in the unit of the key column
   */
  public Optional<Cited<Double>> lookup(
      String table, Map<String, String> where, double at, String column) {
    return table(table).lookup(where, at, column);
  }
}
