package org.coilwright.table;

/**
 * A column of a table.
 *
 * @param name how lookups name it
 * @param unit printed unit; empty for words and bare factors
 * @param role what it is for
 * @param order how its figures must run down the rows
 */
public record Column(String name, String unit, Role role, Order order) {
  /** What a column is for. */
  public enum Role {
    /** A number that finds the row; what happens between rows is the table's to say. */
    KEY,
    /** A word that finds the row. */
    WORD_KEY,
    /** A number that is looked up. */
    NUMBER,
    /** A word that is looked up. */
    WORD
  }

  /** How figures must run down the rows that share the same words. */
  public enum Order {
    RISING,
    FALLING,
    FREE
  }
}
