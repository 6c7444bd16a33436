package org.coilwright.cli;

/** Names as they can be typed into a shell. */
final class Shell {
  private Shell() {}

  /** {@code name} as it stands if a shell takes it so, otherwise in single quotes. */
  static String quoted(String name) {
    boolean plain =
        !name.isEmpty()
            && name.chars()
                .allMatch(c -> Character.isLetterOrDigit(c) || "-_./+,:@%=".indexOf(c) >= 0);
    return plain ? name : "'" + name.replace("'", "'\\''") + "'";
  }
}
