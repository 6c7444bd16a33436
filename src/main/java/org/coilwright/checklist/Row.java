package org.coilwright.checklist;

/**
 * A test row that does not know its number yet.
 *
 * @param where a whole phrase; may be empty
 */
record Row(
    String condition,
    String action,
    String where,
    Expected expected,
    String otherwise,
    boolean live,
    Grounds grounds) {

  /** A row on a dead circuit, without a condition of its own. */
  static Row dead(
      String action, String where, Expected expected, String otherwise, Grounds grounds) {
    return new Row("", action, where, expected, otherwise, false, grounds);
  }

  Row when(String needed) {
    return new Row(needed, action, where, expected, otherwise, live, grounds);
  }

  Row live(boolean isLive) {
    return new Row(condition, action, where, expected, otherwise, isLive, grounds);
  }

  TestRow numbered(String number) {
    return new TestRow(number, condition, action, where, expected, otherwise, live, grounds);
  }
}
