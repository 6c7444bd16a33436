package org.coilwright.checklist;

/**
 * One thing to do and what must come of it.
 *
 * @param name of the row alone, and the same when other parts are added: {@code K1.coil-resistance}
 * @param number such as {@code 5.3}; in the wiring list that of the wire
 * @param condition the state of the circuit this row needs beyond the section's; may be empty
 * @param action one verb and one device
 * @param where the instrument or the hand goes to, a whole phrase: {@code between K1.A1 and K1.A2};
 *     may be empty
 * @param expected what must come of it
 * @param otherwise what to do if it does not
 * @param live true if parts that can be touched are at mains voltage meanwhile
 * @param grounds where the expected reading comes from
 * @param manner how it is answered
 * @param label what stands before its field where several share a line; may be empty
 * @param line name of the first row of its line; its own if it has a line to itself
 * @param wire name of the row of the wiring list that it stands in; empty if it stands in none
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
    Grounds grounds,
    Manner manner,
    String label,
    String line,
    String wire) {
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

  /** How it is told in a sentence: {@code 5.3}, or {@code wire 12} in the wiring list. */
  public String called(Texts texts) {
    return wire.isEmpty() ? number : texts.of("row.wire", number);
  }

  /** A row with a line to itself. */
  public TestRow(
      String name,
      String number,
      String condition,
      String action,
      String where,
      Expected expected,
      String otherwise,
      boolean live,
      Grounds grounds) {
    this(
        name,
        number,
        condition,
        action,
        where,
        expected,
        otherwise,
        live,
        grounds,
        Manner.of(expected),
        "",
        name,
        "");
  }
}
