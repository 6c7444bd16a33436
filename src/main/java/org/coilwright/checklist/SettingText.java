package org.coilwright.checklist;

import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.coilwright.checklist.Compared.Place;
import org.coilwright.quantity.Unit;

/**
 * Compares a setting or a marking that was read back with the one wanted: {@code 11,5kW} with
 * {@code 11.5 kW}, {@code 600 s} with {@code 10 min}, {@code Type A 40A 30mA} with {@code type A,
 * 40 A, 30 mA}. Words that differ are left to a person.
 */
final class SettingText {
  private static final Pattern QUANTITY = Pattern.compile("(?<number>[0-9.,]+) ?(?<unit>\\S+)");

  private static final Pattern TOKEN = Pattern.compile("[0-9]+(?:\\.[0-9]+)?|\\p{L}+|[^\\s,;]");
  private static final String DECIMAL_COMMA = "(?<=[0-9]),(?=[0-9])";

  /** Decimals that were printed or typed, not computed. */
  private static final double LIKE = 1e-9;

  private SettingText() {}

  static Compared compare(String written, String wanted, Texts texts) {
    if (plain(written).equals(plain(wanted))) {
      return new Compared(Place.WITHIN, OptionalDouble.empty(), "");
    }
    Matcher quantity = QUANTITY.matcher(wanted.strip());
    Optional<Unit> unit = quantity.matches() ? Unit.of(quantity.group("unit")) : Optional.empty();
    if (unit.isPresent()) {
      Reading reading = ReadingText.read(written, unit.get().symbol(), texts);
      double value = Double.parseDouble(quantity.group("number").replace(',', '.'));
      return compare(reading, value, texts);
    }
    List<String> read = tokens(written);
    boolean all =
        Arrays.stream(wanted.split(", ", -1))
            .allMatch(part -> Collections.indexOfSubList(read, tokens(part)) >= 0);
    return all ? new Compared(Place.WITHIN, OptionalDouble.empty(), "") : byEye(texts, wanted);
  }

  /** Numbers and words apart, so that 40 is not found in 140, nor type A in type AC. */
  private static List<String> tokens(String text) {
    String plain = text.replaceAll(DECIMAL_COMMA, ".").toLowerCase(Locale.ROOT);
    return TOKEN.matcher(plain).results().map(MatchResult::group).toList();
  }

  private static Compared compare(Reading reading, double wanted, Texts texts) {
    if (reading instanceof Reading.Exact exact) {
      boolean same = Math.abs(exact.value() - wanted) <= LIKE * Math.abs(wanted);
      return new Compared(
          same ? Place.WITHIN : Place.OUTSIDE, OptionalDouble.of(exact.value()), "");
    } else if (reading instanceof Reading.Unclear unclear) {
      return new Compared(Place.UNCLEAR, OptionalDouble.empty(), unclear.why());
    }
    return new Compared(Place.UNCLEAR, OptionalDouble.empty(), texts.of("reading.no-number"));
  }

  private static Compared byEye(Texts texts, String wanted) {
    return new Compared(Place.UNCLEAR, OptionalDouble.empty(), texts.of("reading.by-eye", wanted));
  }

  /** A blank, a capital or a decimal comma does not matter. */
  private static String plain(String text) {
    return text.replaceAll(DECIMAL_COMMA, ".").replaceAll("[\\s,]+", "").toLowerCase(Locale.ROOT);
  }
}
