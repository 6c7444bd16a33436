package org.coilwright.sizing;

import java.util.Locale;
import org.coilwright.table.Cited;

/**
 * Something a rating is multiplied by.
 *
 * @param cause what it comes from
 * @param value bare factor
 * @param why in brackets behind the factor: {@code air at 53 °C}
 */
public record Factor(Cause cause, Cited<Double> value, String why) {
  /** What a factor comes from. */
  public enum Cause {
    AIR,
    CLOSE_MOUNTED,
    PARALLEL_POLES,
    ALTITUDE,
    DUTY,
    CIRCUITS_TOGETHER,
    TERMINALS
  }

  /** {@code 0.87 (air at 53 °C)}, as many decimals as a person needs to redo it. */
  public String words() {
    return "%s (%s)".formatted(number(), why);
  }

  private String number() {
    String three = String.format(Locale.ROOT, "%.3f", value.value());
    return three.endsWith("0") ? three.substring(0, three.length() - 1) : three;
  }
}
