package org.coilwright.checklist;

/**
 * One thing to do and what must come of it.
 *
 * @param name of the row alone, and the same when other parts are added: {@code K1.coil-resistance}
 * @param number such as {@code 5.3}
 * @param condition the state of the circuit this row needs beyond the section's; may be empty
 * @param action one verb and one device
 * @param where the instrument or the hand goes to, a whole phrase: {@code between K1.A1 and K1.A2};
 *     may be empty
 * @param expected what must come of it
 * @param otherwise what to do if it does not
 * @param live true if parts that can be touched are at mains voltage meanwhile
 * @param grounds where the expected reading comes from
 */
public record TestRow(
    String name,
    String number,
    String condition,
    String action,
    String where,
    Expected expected,
    String otherwise,
    boolean live,
    Grounds grounds) {

  /**
   * Refuses a row that does not say what to do.
   *
   * @throws IllegalArgumentException if a part is missing
   */
  public TestRow {
    if (action.isBlank() || otherwise.isBlank()) {
      throw new IllegalArgumentException(
          "row " + number + " lacks what to do or what to do if it fails");
    }
  }
}
