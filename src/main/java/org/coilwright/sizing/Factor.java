package org.coilwright.sizing;

import java.util.Locale;
import org.coilwright.table.Cited;

/**
 * Something a rating is multiplied by.
 *
 * @param value bare factor
 * @param why in brackets behind the factor: {@code air at 53 °C}
 */
public record Factor(Cited<Double> value, String why) {
  /** {@code 0.87 (air at 53 °C)}, as many decimals as a person needs to redo it. */
  public String words() {
    return "%s (%s)".formatted(number(), why);
  }

  private String number() {
    String three = String.format(Locale.ROOT, "%.3f", value.value());
    return three.endsWith("0") ? three.substring(0, three.length() - 1) : three;
  }
}
