package org.coilwright.sizing;

import java.util.List;
import java.util.OptionalDouble;
import org.coilwright.table.Cited;
import org.coilwright.table.Standing;

/**
 * The answer to a {@link Question}.
 *
 * @param fits false if nothing in the series fits or something could not be worked out
 * @param lines what was found, in the order in which a person works it out
 * @param cited every figure it rests on
 */
public record Choice(Question question, boolean fits, List<Line> lines, List<Cited<?>> cited) {

  /**
   * One finding.
   *
   * @param key its name for programs
   * @param label its name for people
   * @param text the finding
   * @param value its figure, if it has one
   * @param unit of {@code value}
   */
  public record Line(String key, String label, String text, OptionalDouble value, String unit) {}

  /** The weakest standing of all it rests on. */
  public Standing standing() {
    return cited.stream().map(Cited::standing).reduce(Standing.PUBLISHED, Standing::weaker);
  }

  /** The figure of a line. */
  public OptionalDouble value(String key) {
    return lines.stream()
        .filter(l -> l.key().equals(key))
        .map(Line::value)
        .findFirst()
        .orElse(OptionalDouble.empty());
  }
}
