package org.coilwright.checklist;

import java.math.BigDecimal;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.coilwright.checklist.Reading.Above;
import org.coilwright.checklist.Reading.Below;
import org.coilwright.checklist.Reading.Exact;
import org.coilwright.checklist.Reading.OverRange;
import org.coilwright.checklist.Reading.Unclear;
import org.coilwright.quantity.Unit;

/**
 * Understands a reading as people write it: {@code 0,8 ohm}, {@code 0.8 Ω}, {@code 650}, {@code >
 * 500 MΩ}, {@code 1 kΩ}. What can be read in two ways is not guessed at.
 */
final class ReadingText {
  private static final int MOST = 60;
  private static final int MOST_DIGITS = 15;

  private static final Pattern WHOLE =
      Pattern.compile(
          "(?<sign>>=|<=|[<>≥≤])? ?(?<minus>[-−–+])? ?(?<number>[.,]?[0-9](?:[0-9.,'’]*[0-9])?)"
              + " ?(?<unit>[^0-9 ~=⎓]*) ?(?<kind>AC|DC|ac|dc|~|=|⎓)?");
  private static final Pattern OVER =
      Pattern.compile(
          "(?i)\\+?(o\\.? ?l\\.?|o\\.?f\\.?|over ?load|over ?range|∞|inf(inity)?|open)");

  /** A blank between digits is none of these: it may part two readings. */
  private static final Pattern GROUPED = Pattern.compile("[0-9]{1,3}(['’][0-9]{3})+");

  /** How people write units that the netlist writes in one way only. */
  private static final Map<String, String> SPELLINGS =
      Map.ofEntries(
          Map.entry("v", "V"),
          Map.entry("volt", "V"),
          Map.entry("volts", "V"),
          Map.entry("mv", "mV"),
          Map.entry("kv", "kV"),
          Map.entry("a", "A"),
          Map.entry("amp", "A"),
          Map.entry("amps", "A"),
          Map.entry("ampere", "A"),
          Map.entry("amperes", "A"),
          Map.entry("ma", "mA"),
          Map.entry("sec", "s"),
          Map.entry("msec", "ms"),
          Map.entry("megohm", "MΩ"),
          Map.entry("megohms", "MΩ"),
          Map.entry("kilohm", "kΩ"),
          Map.entry("kilohms", "kΩ"),
          Map.entry("c", "°C"),
          Map.entry("°c", "°C"));

  /** What a row's unit consists of. */
  private record RowUnit(Unit unit, String kind) {}

  private ReadingText() {}

  /**
   * Understands a text.
   *
   * @param rowUnit as the row prints it: {@code Ω}, {@code V AC}
   */
  static Reading read(String text, String rowUnit, Texts texts) {
    String plain = text.replaceAll("[\\s\\u00a0\\u2007\\u2009\\u202f]+", " ").strip();
    if (OVER.matcher(plain).matches()) {
      return new OverRange();
    }
    Matcher matcher = WHOLE.matcher(plain);
    if (plain.length() > MOST || !matcher.matches()) {
      return new Unclear(texts.of("reading.no-number"));
    }
    Optional<String> unclear = unclearNumber(matcher.group("number"), texts);
    if (unclear.isPresent()) {
      return new Unclear(unclear.get());
    }
    RowUnit row = rowUnit(rowUnit);
    String written = matcher.group("unit");
    // V AC is often written as one word
    boolean joined = written.length() > 2 && written.toUpperCase(Locale.ROOT).matches(".*[AD]C");
    String symbol = joined ? written.substring(0, written.length() - 2) : written;
    Optional<Unit> unit = symbol.isEmpty() ? Optional.of(row.unit()) : unit(symbol);
    if (unit.isEmpty()) {
      return new Unclear(texts.of("reading.unit", symbol, rowUnit));
    }
    if (unit.get().dimension() != row.unit().dimension()) {
      return new Unclear(texts.of("reading.other-unit", symbol, rowUnit));
    }
    String kind =
        joined
            ? kind(written.substring(written.length() - 2))
            : Optional.ofNullable(matcher.group("kind")).map(ReadingText::kind).orElse("");
    if (!kind.isEmpty() && !row.kind().isEmpty() && !kind.equals(row.kind())) {
      return new Unclear(texts.of("reading.kind", kind, rowUnit));
    }
    return value(matcher, unit.get(), row.unit(), texts);
  }

  private static Reading value(Matcher matcher, Unit unit, Unit row, Texts texts) {
    BigDecimal written = new BigDecimal(plainNumber(matcher.group("number")));
    double value = written.multiply(unit.factor()).doubleValue() / row.factor().doubleValue();
    String minus = matcher.group("minus");
    boolean negative = minus != null && !minus.equals("+");
    String sign = matcher.group("sign");
    if (sign == null) {
      return new Exact(negative ? -value : value);
    }
    if (negative) {
      return new Unclear(texts.of("reading.negative"));
    }
    return sign.startsWith("<") || sign.equals("≤") ? new Below(value) : new Above(value);
  }

  private static RowUnit rowUnit(String printed) {
    int space = printed.indexOf(' ');
    String symbol = space < 0 ? printed : printed.substring(0, space);
    String kind = space < 0 ? "" : printed.substring(space + 1);
    return new RowUnit(
        Unit.of(symbol)
            .orElseThrow(() -> new IllegalArgumentException("a row in unknown " + printed)),
        kind);
  }

  private static String kind(String written) {
    return written.equalsIgnoreCase("AC") || written.equals("~") ? "AC" : "DC";
  }

  private static Optional<Unit> unit(String written) {
    Optional<Unit> exact = Unit.of(written);
    if (exact.isPresent()) {
      return exact;
    }
    Matcher ohm = Pattern.compile("([kKMm]?)(?i:ohms?)").matcher(written);
    if (ohm.matches()) {
      // all in capitals, nobody can tell milli from mega
      boolean capitals = written.equals(written.toUpperCase(Locale.ROOT));
      String prefix = ohm.group(1).equals("K") ? "k" : ohm.group(1);
      return capitals && prefix.equals("M") ? Optional.empty() : Unit.of(prefix + "Ω");
    }
    return Optional.ofNullable(SPELLINGS.get(written.toLowerCase(Locale.ROOT))).flatMap(Unit::of);
  }

  /** Why a number can be read in two ways, or in none. */
  private static Optional<String> unclearNumber(String number, Texts texts) {
    if (number.chars().filter(Character::isDigit).count() > MOST_DIGITS) {
      return Optional.of(texts.of("reading.digits"));
    }
    String bare = GROUPED.matcher(number).matches() ? "0" : number;
    if (bare.matches(".*['’].*")) {
      // a whole part in groups, then a fraction: 1'234,5
      String[] parts = bare.split("[.,]", -1);
      boolean grouped = parts.length == 2 && GROUPED.matcher(parts[0]).matches();
      return grouped && parts[1].matches("[0-9]+")
          ? Optional.empty()
          : Optional.of(texts.of("reading.several", number));
    }
    if (bare.matches("[1-9][0-9]{0,2}[.,][0-9]{3}")) {
      return Optional.of(
          texts.of(
              "reading.thousands",
              number,
              number.replace(',', '.'),
              number.replaceAll("[.,]", "")));
    }
    boolean known =
        bare.matches("[0-9]*([.,][0-9]+)?")
            || bare.matches("[0-9]{1,3}(,[0-9]{3})+(\\.[0-9]+)?")
            || bare.matches("[0-9]{1,3}(\\.[0-9]{3})+(,[0-9]+)?");
    return known ? Optional.empty() : Optional.of(texts.of("reading.several", number));
  }

  /** A number that is not unclear, as a machine writes it. */
  private static String plainNumber(String number) {
    String joined = number.replaceAll("['’]", "");
    int separators = (int) joined.chars().filter(c -> c == '.' || c == ',').count();
    int last = Math.max(joined.lastIndexOf('.'), joined.lastIndexOf(','));
    if (separators == 0) {
      return joined;
    }
    // several of one kind part thousands; otherwise the last is the decimal one
    boolean thousandsOnly =
        separators > 1 && joined.chars().filter(c -> c == joined.charAt(last)).count() > 1;
    if (thousandsOnly) {
      return joined.replaceAll("[.,]", "");
    }
    String whole = joined.substring(0, last).replaceAll("[.,]", "");
    return (whole.isEmpty() ? "0" : whole) + "." + joined.substring(last + 1);
  }
}
