package org.coilwright.checklist;

import java.util.List;
import java.util.stream.Stream;

/**
 * Rows about one thing, before they are numbered and parted into sections of nine at most.
 *
 * @param keys what it is about, in words that cautions name
 */
record Topic(
    List<String> keys, Section.Stage stage, String title, String beginWith, List<Row> rows) {

  static Topic of(String key, Section.Stage stage, String title, String beginWith, List<Row> rows) {
    return new Topic(List.of(key), stage, title, beginWith, rows);
  }

  /** True if the other one can follow in the same section. */
  boolean joins(Topic other) {
    return stage == other.stage
        && beginWith.equals(other.beginWith)
        && Row.lines(rows) + Row.lines(other.rows) <= Section.MOST_LINES;
  }

  /** Both in one. */
  Topic with(Topic other) {
    return new Topic(
        Stream.concat(keys.stream(), other.keys.stream()).toList(),
        stage,
        title + "; " + other.title,
        beginWith,
        Stream.concat(rows.stream(), other.rows.stream()).toList());
  }
}
