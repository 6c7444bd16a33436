package org.coilwright.checklist;

/**
 * A test row that does not know its number yet.
 *
 * @param name see {@link Names}
 * @param where a whole phrase; may be empty
 */
record Row(
    String name,
    String condition,
    String action,
    String where,
    Expected expected,
    String otherwise,
    boolean live,
    Grounds grounds) {

  /** A row on a dead circuit, without a condition of its own. */
  static Row dead(
      String name,
      String action,
      String where,
      Expected expected,
      String otherwise,
      Grounds grounds) {
    return new Row(name, "", action, where, expected, otherwise, false, grounds);
  }

  /**
   * A row on a dead circuit whose texts are {@code kind.when}, {@code kind.do}, {@code kind.where}
   * and {@code kind.else}, all with the same arguments; the first and the third may be missing.
   */
  static Row of(
      Texts texts,
      String kind,
      String name,
      Expected expected,
      Grounds grounds,
      Object... arguments) {
    return new Row(
        name,
        texts.find(kind + ".when", arguments).orElse(""),
        texts.of(kind + ".do", arguments),
        texts.find(kind + ".where", arguments).orElse(""),
        expected,
        texts.of(kind + ".else", arguments),
        false,
        grounds);
  }

  Row when(String needed) {
    return new Row(name, needed, action, where, expected, otherwise, live, grounds);
  }

  Row live(boolean isLive) {
    return new Row(name, condition, action, where, expected, otherwise, isLive, grounds);
  }

  TestRow numbered(String number, String unique) {
    return new TestRow(
        unique, number, condition, action, where, expected, otherwise, live, grounds);
  }
}
