package org.coilwright.netlist;

/**
 * One key.
 *
 * @param must true if it cannot be left out
 * @param says what it holds, one line
 * @param example what may stand behind it, as YAML
 */
record Key(String name, boolean must, Shape shape, String says, String example) {
  static Key must(String name, Shape shape, String says, String example) {
    return new Key(name, true, shape, says, example);
  }

  static Key may(String name, Shape shape, String says, String example) {
    return new Key(name, false, shape, says, example);
  }
}
