package org.coilwright.netlist;

import org.jspecify.annotations.Nullable;

/**
 * A place in a file.
 *
 * @param file name as the user gave it
 * @param line 1 for the first line
 * @param column 1 for the first character
 * @param endColumn one past the last character on that line; at least {@code column + 1}
 */
public record Mark(String file, int line, int column, int endColumn) {
  // written out: what the compiler makes of a record is put together at run time, at each start
  @Override
  public boolean equals(@Nullable Object other) {
    return this == other
        || (other instanceof Mark that
            && line == that.line
            && column == that.column
            && endColumn == that.endColumn
            && file.equals(that.file));
  }

  @Override
  public int hashCode() {
    return (31 * line + column) * 31 + file.hashCode();
  }

  /** {@code boiler.yaml:12:5}. */
  @Override
  public String toString() {
    return file + ":" + line + ":" + column;
  }
}
