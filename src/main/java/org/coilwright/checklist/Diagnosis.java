package org.coilwright.checklist;

import java.util.List;

/** What a reading outside its band probably means. */
public interface Diagnosis {
  /**
   * The mistakes in the wiring that would give such a reading, likeliest first, each a whole
   * sentence; none if none is known.
   *
   * @param rowName such as {@code K1.coil-resistance}
   * @param value in the unit of the row; infinite for a reading beyond the instrument's range
   */
  List<String> of(String rowName, double value);

  /** Knows of none. */
  static Diagnosis none() {
    return (rowName, value) -> List.of();
  }
}
