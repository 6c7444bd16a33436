package org.coilwright.quantity;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The patterns of the schema let pass whatever the parser reads. */
class QuantityPatternTest {
  private static final List<String> PIECES =
      List.of(
          "24",
          "0.75",
          "-5",
          "+3",
          "100",
          ".5",
          "1/0",
          "120/240",
          " ",
          "  ",
          "V",
          "mA",
          "kΩ",
          "Ω",
          "ohm",
          "°C",
          "K",
          "%",
          "AWG",
          "mm²",
          "mm2",
          "m",
          "min",
          "x",
          "l",
          "W",
          "VA",
          " DC",
          "AC",
          "dc",
          "±",
          "+/-",
          "..",
          "+10 %",
          "-15 %",
          "/",
          " at ",
          " for ",
          " per pole",
          " Per POLE",
          " at-5 ",
          "5 s",
          "250 V",
          "\u00a0",
          "e3",
          ",",
          "kcmil",
          "h",
          "µF",
          "Hz");

  private static boolean matches(String pattern, String text) {
    return Pattern.compile(pattern).matcher(text).find();
  }

  @Test
  void every_text_the_parser_reads_fits_its_pattern() {
    Random random = new Random(7);
    List<Dimension> dimensions = List.of(Dimension.values());
    int read = 0;
    for (int i = 0; i < 150_000; i++) {
      StringBuilder made = new StringBuilder();
      for (int n = 1 + random.nextInt(6); n > 0; n--) {
        made.append(PIECES.get(random.nextInt(PIECES.size())));
      }
      String text = made.toString();
      Wanted wanted = Wanted.of(dimensions.get(random.nextInt(dimensions.size())));
      wanted = random.nextBoolean() ? wanted : wanted.orBare();
      Optional<Wanted> at = Optional.of(Wanted.of(Dimension.VOLTAGE, Dimension.TIME));
      if (QuantityParser.quantity(text, wanted) instanceof Parsed.Good) {
        assertTrue(matches(QuantityPattern.quantity(wanted), text), text + " as " + wanted);
        read++;
      }
      if (QuantityParser.rating(text, wanted, at, true) instanceof Parsed.Good) {
        assertTrue(matches(QuantityPattern.rating(wanted, at, true), text), text + " as " + wanted);
      }
      if (QuantityParser.conductorSize(text) instanceof Parsed.Good) {
        assertTrue(matches(QuantityPattern.conductorSize(), text), text);
      }
      if (QuantityParser.splitVoltage(text) instanceof Parsed.Good) {
        assertTrue(matches(QuantityPattern.mainsVoltage(), text), text);
      }
    }
    assertTrue(read > 1_000, "too few texts were good: " + read);
  }

  @Test
  void what_has_no_unit_or_the_wrong_one_does_not_fit() {
    String volts = QuantityPattern.quantity(Wanted.of(Dimension.VOLTAGE));
    for (String text : List.of("24", "24 A", "24 volts", "24,5 V", "V", "22-28 V", "24 V x", "")) {
      assertFalse(matches(volts, text), text);
    }
    assertFalse(matches(QuantityPattern.quantityWithKind(Wanted.of(Dimension.VOLTAGE)), "24 V"));
    assertTrue(matches(QuantityPattern.quantityWithKind(Wanted.of(Dimension.VOLTAGE)), "24 V DC"));
  }
}
