package org.coilwright.checklist;

import java.util.List;

/**
 * A place on the sheet that somebody fills in.
 *
 * @param name stable, with points between its parts: {@code K1.coil-resistance.reading}
 * @param kind what goes there
 * @param text key of the text that says what goes there
 * @param arguments of that text
 */
public record Blank(String name, Kind kind, String text, List<Object> arguments) {
  /**
   * Refuses a name that cannot be found again.
   *
   * @throws IllegalArgumentException if a part of the name or the text is empty
   */
  public Blank {
    arguments = List.copyOf(arguments);
    if (name.isBlank() || name.startsWith(".") || name.endsWith(".") || name.contains("..")) {
      throw new IllegalArgumentException("not the name of a place to fill in: '" + name + "'");
    }
    if (text.isBlank()) {
      throw new IllegalArgumentException(name + " does not say what goes there");
    }
  }

  /** What goes there, in plain words; no two places of a sheet have the same. */
  public String tip(Texts texts) {
    return texts.of(
        text,
        arguments.stream()
            .map(a -> a instanceof Expected expected ? expected.text(texts) : a)
            .toArray());
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
