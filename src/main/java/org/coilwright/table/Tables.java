package org.coilwright.table;

/** Every cited figure and table, read from the class path when first asked for. */
public final class Tables {
  private Tables() {}

  /** All tables; a table file is parsed when first asked for. */
  public static Tables load() {
    return new Tables();
  }

  /**
   * A single cited figure, in the base unit of its dimension.
   *
   * @param id group and name, such as {@code suppression.reverse-voltage-multiple}; the group is
   *     the file {@code tables/figures/<group>.yaml}
   * @throws IllegalArgumentException if there is no such figure: a fault of the program
   */
  public Cited<Double> figure(String id) {
    throw new IllegalArgumentException("no figure " + id);
  }
}
