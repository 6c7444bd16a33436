package org.coilwright.checklist;

/**
 * A place on the sheet that somebody fills in.
 *
 * @param name stable, with points between its parts: {@code K1.coil-resistance.reading}
 * @param kind what goes there
 * @param tip what goes there, in plain words; no two places of a sheet have the same
 */
public record Blank(String name, Kind kind, String tip) {
  /**
   * Refuses a name that cannot be found again.
   *
   * @throws IllegalArgumentException if a part of the name or the tip is empty
   */
  public Blank {
    if (name.isBlank() || name.startsWith(".") || name.endsWith(".") || name.contains("..")) {
      throw new IllegalArgumentException("not the name of a place to fill in: '" + name + "'");
    }
    if (tip.isBlank()) {
      throw new IllegalArgumentException(name + " does not say what goes there");
    }
  }

  /** What can be filled in. */
  public enum Kind {
    /** One line of text. */
    LINE,
    /** Text of several lines. */
    LINES,
    /** A box to tick; empty means not done. */
    TICK,
    /** A signature, by hand or by certificate. */
    SIGNATURE
  }
}
