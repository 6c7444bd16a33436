package org.coilwright.quantity;

import java.math.BigDecimal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.coilwright.quantity.Cursor.Misread;

/** One value with its unit, its tolerance or its range. */
final class ValueReader {
  private static final List<String> CONDITION_WORDS = List.of("at", "for", "per");

  /** In °C. */
  private static final double ABSOLUTE_ZERO = -273.15;

  private final Cursor cursor;
  private final Wanted wanted;
  private CurrentKind kind = CurrentKind.UNSTATED;

  private ValueReader(Cursor cursor, Wanted wanted) {
    this.cursor = cursor;
    this.wanted = wanted;
  }

  static Quantity value(Cursor cursor, Wanted wanted) {
    return new ValueReader(cursor, wanted).read();
  }

  private Quantity read() {
    int start = cursor.at();
    BigDecimal first = cursor.number();
    if (isRangeSign()) {
      return range(start, first, Optional.empty());
    }
    if (cursor.take("/")) {
      throw new Misread(
          start, cursor.at() - start, "one value is needed here", "write one of the two");
    }
    refuseOtherRangeForms(start, first, true);
    Unit unit = unit(start, first);
    if (isRangeSign()) {
      return range(start, first, Optional.of(unit));
    }
    refuseOtherRangeForms(start, first, false);
    Quantity quantity = new ToleranceReader(cursor).read(first, unit);
    kind();
    return checked(start, withKind(quantity));
  }

  private boolean isRangeSign() {
    int here = cursor.at();
    boolean sign = cursor.take("..");
    cursor.back(here);
    return sign;
  }

  private Quantity range(int start, BigDecimal low, Optional<Unit> lowUnit) {
    cursor.take("..");
    if (cursor.take(".")) {
      throw new Misread(start, cursor.at() - start, "a range has two points", "write 22..28 V");
    }
    int second = cursor.at();
    BigDecimal high = cursor.number();
    Unit unit = unit(second, high);
    BigDecimal from = low.multiply(lowUnit.orElse(unit).factor());
    BigDecimal to = high.multiply(unit.factor());
    if (lowUnit.isPresent() && lowUnit.get().dimension() != unit.dimension()) {
      throw new Misread(
          start,
          cursor.at() - start,
          "the range runs from "
              + lowUnit.get().dimension().noun()
              + " to "
              + unit.dimension().noun(),
          "use one unit for both ends");
    }
    if (from.compareTo(to) > 0) {
      throw new Misread(
          start,
          cursor.at() - start,
          "the range runs backwards",
          "write the smaller value first: " + (high + ".." + low + " " + unit.symbol()).strip());
    }
    BigDecimal middle = from.add(to).divide(BigDecimal.valueOf(2));
    kind();
    return checked(start, withKind(bounds(unit, from, middle, to)));
  }

  /** A hyphen after a unit begins a tolerance; before a unit it can only be meant as a range. */
  private void refuseOtherRangeForms(int start, BigDecimal first, boolean hyphen) {
    int here = cursor.at();
    if (cursor.take("\u2026")
        || cursor.take("\u2013")
        || cursor.takeWord("to")
        || (hyphen && !wanted.bare() && cursor.take("-"))) {
      boolean complete = cursor.isDigit();
      String to = complete ? cursor.number() + " " + cursor.rest().strip() : "28 V";
      throw new Misread(
          start,
          Math.max(1, cursor.at() - start),
          "a range is written with two points",
          "write " + first + ".." + Words.shortened(to.strip()));
    }
    cursor.back(here);
  }

  private Unit unit(int start, BigDecimal number) {
    int here = cursor.at();
    String symbol = cursor.run(ValueReader::isUnitCharacter);
    if (CONDITION_WORDS.contains(symbol) || symbol.equals("to")) {
      cursor.back(here);
      symbol = "";
    }
    if (symbol.isEmpty()) {
      return bare(start, number);
    }
    Unit unit = Unit.of(symbol).or(() -> withKindSuffix(cursor.from(here))).orElse(null);
    if (unit == null) {
      throw UnitTrouble.unknown(symbol, here, cursor.at() - here, number, wanted);
    }
    if (!wanted.dimensions().contains(unit.dimension())) {
      throw UnitTrouble.wrongDimension(unit, start, cursor.at() - start, number, wanted);
    }
    kind();
    if (kind != CurrentKind.UNSTATED && !hasKind(unit.dimension())) {
      throw new Misread(
          here,
          cursor.at() - here,
          unit.dimension().noun() + " is neither AC nor DC",
          "take " + kind + " out");
    }
    return unit;
  }

  private Unit bare(int start, BigDecimal number) {
    Dimension first = wanted.dimensions().get(0);
    if (!wanted.bare()) {
      throw UnitTrouble.missing(start, Math.max(1, cursor.at() - start), number, wanted);
    }
    if (first == Dimension.RATIO && number.compareTo(BigDecimal.ONE) > 0) {
      throw new Misread(
          start,
          Math.max(1, cursor.at() - start),
          "a share without a unit lies between 0 and 1",
          "write " + number.toPlainString() + " % if that is meant");
    }
    return new Unit("", first, BigDecimal.ONE, false);
  }

  private Optional<Unit> withKindSuffix(String symbol) {
    String upper = symbol.toUpperCase(Locale.ROOT);
    for (CurrentKind suffix : List.of(CurrentKind.AC, CurrentKind.DC)) {
      if (upper.endsWith(suffix.name())) {
        Optional<Unit> unit = Unit.of(symbol.substring(0, symbol.length() - 2));
        if (unit.isPresent()) {
          kind = suffix;
          return unit;
        }
      }
    }
    return Optional.empty();
  }

  private void kind() {
    if (kind == CurrentKind.UNSTATED) {
      kind =
          cursor.takeWord("DC")
              ? CurrentKind.DC
              : cursor.takeWord("AC") ? CurrentKind.AC : CurrentKind.UNSTATED;
    }
  }

  private static boolean hasKind(Dimension dimension) {
    return dimension == Dimension.VOLTAGE || dimension == Dimension.CURRENT;
  }

  static boolean isUnitCharacter(int c) {
    return Character.isLetter(c) || "°\u2103%²^2×\u2126".indexOf(c) >= 0;
  }

  private Quantity withKind(Quantity q) {
    return new Quantity(q.dimension(), q.low(), q.nominal(), q.high(), kind);
  }

  static Quantity bounds(Unit unit, BigDecimal low, BigDecimal nominal, BigDecimal high) {
    return new Quantity(
        unit.dimension(),
        low.doubleValue(),
        nominal.doubleValue(),
        high.doubleValue(),
        CurrentKind.UNSTATED);
  }

  private Quantity checked(int start, Quantity quantity) {
    if (quantity.dimension() == Dimension.TEMPERATURE && quantity.low() < ABSOLUTE_ZERO) {
      throw new Misread(
          start,
          cursor.at() - start,
          "nothing can be colder than -273.15 °C",
          "check the number, its sign and its tolerance");
    }
    boolean refused =
        switch (wanted.least()) {
          case ANY -> false;
          case ZERO -> quantity.low() < 0;
          case ABOVE_ZERO -> quantity.low() <= 0;
        };
    if (refused) {
      throw new Misread(
          start,
          cursor.at() - start,
          wanted.least() == Wanted.Least.ZERO
              ? "the value may not fall below zero"
              : "the value must stay above zero",
          "check the number, its sign and its tolerance");
    }
    return quantity;
  }
}
