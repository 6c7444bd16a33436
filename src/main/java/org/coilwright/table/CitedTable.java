package org.coilwright.table;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * A table of one source and edition. Every cell knows its source, place and standing; a cell that
 * the source leaves empty is absent, and a number the rows do not cover has no answer.
 *
 * @param name file name without ending
 * @param title what it holds
 * @param edition edition of the source, as printed; may be empty
 * @param between what holds between rows
 * @param columns in printed order
 * @param rows in printed order
 */
public record CitedTable(
    String name,
    String title,
    String edition,
    Between between,
    List<Column> columns,
    List<Row> rows) {
  /** Two keys this close, relative, are the same key. */
  private static final double SAME = 1e-9;

  /**
   * A row.
   *
   * @param numbers column to figure, keys included
   * @param words column to word, keys included
   */
  public record Row(Map<String, Cited<Double>> numbers, Map<String, Cited<String>> words) {
    /** The figure in a column, if the source gives one. */
    public Optional<Cited<Double>> number(String column) {
      return Optional.ofNullable(numbers.get(column));
    }

    /** The word in a column, if the source gives one. */
    public Optional<Cited<String>> word(String column) {
      return Optional.ofNullable(words.get(column));
    }

    boolean matches(Map<String, String> where) {
      return where.entrySet().stream()
          .allMatch(
              e -> {
                Cited<String> word = words.get(e.getKey());
                return word != null && word.value().equals(e.getValue());
              });
    }
  }

  /**
   * The figure in the one row whose words match.
   *
   * @param where word column to word
   * @throws IllegalArgumentException if there is no such column: a fault of the program
   */
  public Optional<Cited<Double>> lookup(Map<String, String> where, String column) {
    column(column);
    return rows.stream()
        .filter(r -> r.matches(where))
        .map(r -> r.numbers.get(column))
        .filter(Objects::nonNull)
        .findFirst();
  }

  /**
   * The word in the one row whose words match.
   *
   * @throws IllegalArgumentException if there is no such column: a fault of the program
   */
  public Optional<Cited<String>> word(Map<String, String> where, String column) {
    column(column);
    return rows.stream()
        .filter(r -> r.matches(where))
        .map(r -> r.words.get(column))
        .filter(Objects::nonNull)
        .findFirst();
  }

  /**
   * The figure at a value of the numeric key; between rows as {@link #between} says, outside none.
   *
   * @param where word column to word; may be empty
   * @param at value of the numeric key, in that column's unit
   * @throws IllegalArgumentException if there is no such column, or no numeric key: a fault of the
   *     program
   */
  public Optional<Cited<Double>> lookup(Map<String, String> where, double at, String column) {
    column(column);
    String key = key();
    Optional<Row> lower = Optional.empty();
    for (Row row : rows) {
      Cited<Double> edge = row.numbers.get(key);
      if (edge == null || !row.matches(where)) {
        continue;
      }
      if (Math.abs(edge.value() - at) <= SAME * Math.max(Math.abs(at), Math.abs(edge.value()))) {
        return Optional.ofNullable(row.numbers.get(column));
      }
      if (edge.value() > at) {
        return inside(lower, row, at, column);
      }
      lower = Optional.of(row);
    }
    return Optional.empty();
  }

  /**
   * The rows whose words match, in printed order: the steps of a staircase that ends nowhere.
   *
   * @param where word column to word; may be empty
   */
  public List<Row> rows(Map<String, String> where) {
    return rows.stream().filter(r -> r.matches(where)).toList();
  }

  private Optional<Cited<Double>> inside(Optional<Row> lower, Row upper, double at, String column) {
    return switch (between) {
      case NONE -> Optional.empty();
      case UP_TO -> Optional.ofNullable(upper.numbers.get(column));
      case LOWER_ROW -> lower.map(r -> r.numbers.get(column));
      case INTERPOLATE -> lower.flatMap(r -> line(r, upper, at, column));
    };
  }

  private Optional<Cited<Double>> line(Row lower, Row upper, double at, String column) {
    String key = key();
    Cited<Double> x0 = lower.numbers.get(key);
    Cited<Double> x1 = upper.numbers.get(key);
    Cited<Double> y0 = lower.numbers.get(column);
    Cited<Double> y1 = upper.numbers.get(column);
    if (x0 == null || x1 == null || y0 == null || y1 == null) {
      return Optional.empty();
    }
    double share = (at - x0.value()) / (x1.value() - x0.value());
    return Optional.of(
        new Cited<>(
            y0.value() + share * (y1.value() - y0.value()),
            y0.source(),
            y0.place(),
            y0.standing().weaker(y1.standing())));
  }

  private Column column(String wanted) {
    return columns.stream()
        .filter(c -> c.name().equals(wanted))
        .findFirst()
        .orElseThrow(
            () -> new IllegalArgumentException("table " + name + " has no column " + wanted));
  }

  private String key() {
    return columns.stream()
        .filter(c -> c.role() == Column.Role.KEY)
        .map(Column::name)
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("table " + name + " has no numeric key"));
  }
}
