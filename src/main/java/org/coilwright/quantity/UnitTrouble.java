package org.coilwright.quantity;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.coilwright.quantity.Cursor.Misread;

/** What to say when a unit is missing, unknown or of the wrong kind. */
final class UnitTrouble {
  /** What people write in full, and what stands for it. */
  private static final Map<String, String> IN_FULL =
      Map.ofEntries(
          Map.entry("volt", "V"),
          Map.entry("amp", "A"),
          Map.entry("ampere", "A"),
          Map.entry("milliamp", "mA"),
          Map.entry("watt", "W"),
          Map.entry("kilowatt", "kW"),
          Map.entry("metre", "m"),
          Map.entry("meter", "m"),
          Map.entry("second", "s"),
          Map.entry("sec", "s"),
          Map.entry("minute", "min"),
          Map.entry("hour", "h"),
          Map.entry("hr", "h"),
          Map.entry("celsius", "°C"),
          Map.entry("c", "°C"),
          Map.entry("deg", "°C"),
          Map.entry("°", "°C"),
          Map.entry("percent", "%"),
          Map.entry("hertz", "Hz"),
          Map.entry("time", "x"),
          Map.entry("sqmm", "mm²"),
          Map.entry("qmm", "mm²"),
          Map.entry("r", "Ω"),
          Map.entry("k", "kΩ"));

  private UnitTrouble() {}

  static Misread missing(int at, int length, BigDecimal number, Wanted wanted) {
    List<Unit> fitting = fitting(wanted);
    return new Misread(
        at,
        length,
        number.toPlainString() + " has no unit",
        "write "
            + Words.either(fitting.stream().map(Unit::symbol).toList())
            + " after it, such as "
            + wanted.dimensions().get(0).example());
  }

  static Misread unknown(String symbol, int at, int length, BigDecimal number, Wanted wanted) {
    Optional<Unit> meant = meant(symbol);
    String what = "\"" + Words.shortened(symbol) + "\" is not a unit";
    if (meant.isPresent() && wanted.dimensions().contains(meant.get().dimension())) {
      return new Misread(
          at, length, what, "write " + number.toPlainString() + " " + meant.get().symbol());
    }
    String units = Words.either(fitting(wanted).stream().map(Unit::symbol).toList());
    return new Misread(
        at,
        length,
        what,
        units.isEmpty()
            ? "write the number alone, such as " + wanted.dimensions().get(0).example()
            : "use " + units);
  }

  static Misread wrongDimension(Unit unit, int at, int length, BigDecimal number, Wanted wanted) {
    String value = number.toPlainString() + " " + unit.symbol();
    return new Misread(
        at,
        length,
        wanted.inWords() + " is needed here; " + value + " is " + unit.dimension().noun(),
        "write it like "
            + Words.either(wanted.dimensions().stream().map(Dimension::example).toList()));
  }

  private static List<Unit> fitting(Wanted wanted) {
    return wanted.dimensions().stream()
        .flatMap(dimension -> Unit.of(dimension).stream().filter(Unit::listed))
        .toList();
  }

  private static Optional<Unit> meant(String symbol) {
    String word = symbol.toLowerCase(Locale.ROOT);
    String singular = word.endsWith("s") ? word.substring(0, word.length() - 1) : word;
    String full = IN_FULL.getOrDefault(word, IN_FULL.get(singular));
    return full == null ? Unit.ofAnyCase(symbol) : Unit.of(full);
  }
}
