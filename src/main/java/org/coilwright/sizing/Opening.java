package org.coilwright.sizing;

import java.util.List;
import org.coilwright.table.Cited;

/** What an overcurrent device does with a current that goes on. */
public sealed interface Opening {
  /** Where this comes from. */
  List<Cited<?>> cited();

  /** One clause for a message: {@code F1 opens within 45 s from 48.0 A on (3 × 16 A)}. */
  String words();

  /**
   * It has opened after some time at the latest.
   *
   * @param seconds the latest, in s
   */
  record Within(double seconds, List<Cited<?>> cited, String words) implements Opening {}

  /** It may open some time, or never. */
  record MayNot(List<Cited<?>> cited, String words) implements Opening {}

  /** It carries the current for ever. */
  record Never(List<Cited<?>> cited, String words) implements Opening {}

  /**
   * It cannot be said.
   *
   * @param missing what would decide it, such as {@code rating of F1}
   * @param settledBy one sentence on who or what settles it where no key can; else empty
   */
  record Unknown(String missing, String words, String settledBy) implements Opening {
    @Override
    public List<Cited<?>> cited() {
      return List.of();
    }
  }
}
