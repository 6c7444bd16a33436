package org.coilwright.checklist;

import java.util.List;
import java.util.Set;

/** What a reading outside its band probably means. */
public interface Diagnosis {
  /**
   * The mistakes in the wiring that would give such a reading, likeliest first, each a whole
   * sentence; none if none is known.
   *
   * @param rowName such as {@code K1.coil-resistance}
   * @param value in the unit of the row; infinite for a reading beyond the instrument's range
   * @param met names of the rows that came out as expected; a mistake that would have shown at one
   *     of them is left out
   */
  List<String> of(String rowName, double value, Set<String> met);

  /** The same where nothing else was measured. */
  default List<String> of(String rowName, double value) {
    return of(rowName, value, Set.of());
  }

  /** Knows of none. */
  static Diagnosis none() {
    return (rowName, value, met) -> List.of();
  }
}
