package org.coilwright.cli;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Temperatures as North America types them, in those of the netlist. */
final class Fahrenheit {
  private static final Pattern TYPED = Pattern.compile("(-?[0-9]+(?:[.][0-9]+)?)\\s*°?F");
  private static final BigDecimal FREEZING = new BigDecimal(32);
  private static final BigDecimal NINE = new BigDecimal(9);
  private static final BigDecimal FIVE = new BigDecimal(5);

  private Fahrenheit() {}

  /** {@code 95F} as {@code 35 °C}, rounded up to a tenth; any other text as it is. */
  static String asCelsius(String typed) {
    Matcher matcher = TYPED.matcher(typed.strip());
    if (!matcher.matches()) {
      return typed;
    }
    BigDecimal celsius =
        new BigDecimal(matcher.group(1))
            .subtract(FREEZING)
            .multiply(FIVE)
            .divide(NINE, 1, RoundingMode.CEILING);
    return celsius.stripTrailingZeros().toPlainString() + " °C";
  }
}
