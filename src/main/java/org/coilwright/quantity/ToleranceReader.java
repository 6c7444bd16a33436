package org.coilwright.quantity;

import java.math.BigDecimal;
import java.util.Optional;
import org.coilwright.quantity.Cursor.Misread;

/** What may follow a value: {@code ± 10 %}, {@code ± 2 V}, {@code +20 % -15 %}, or nothing. */
final class ToleranceReader {
  private static final BigDecimal PERCENT = new BigDecimal("0.01");

  private final Cursor cursor;

  ToleranceReader(Cursor cursor) {
    this.cursor = cursor;
  }

  Quantity read(BigDecimal value, Unit unit) {
    BigDecimal nominal = value.multiply(unit.factor());
    if (cursor.take("±") || cursor.take("+/-") || cursor.take("+-")) {
      int at = cursor.at();
      BigDecimal size = cursor.number();
      BigDecimal band = scaled(size, toleranceUnit(at), nominal, unit, at);
      return ValueReader.bounds(unit, nominal.subtract(band), nominal, nominal.add(band));
    }
    int start = cursor.at();
    Optional<Boolean> up = sign();
    if (up.isEmpty()) {
      return ValueReader.bounds(unit, nominal, nominal, nominal);
    }
    int firstAt = cursor.at();
    BigDecimal first = cursor.number();
    Optional<Unit> firstUnit = toleranceUnit(firstAt);
    cursor.take("/");
    Optional<Boolean> secondUp = sign();
    if (secondUp.isEmpty() || secondUp.get().equals(up.get())) {
      throw new Misread(
          start,
          cursor.at() - start,
          "a tolerance with a sign needs both sides",
          "write +20 % -15 %, or ± 10 %");
    }
    int secondAt = cursor.at();
    BigDecimal second = cursor.number();
    Optional<Unit> secondUnit = toleranceUnit(secondAt);
    BigDecimal firstBand = scaled(first, firstUnit.or(() -> secondUnit), nominal, unit, firstAt);
    BigDecimal secondBand = scaled(second, secondUnit, nominal, unit, secondAt);
    return up.get()
        ? ValueReader.bounds(unit, nominal.subtract(secondBand), nominal, nominal.add(firstBand))
        : ValueReader.bounds(unit, nominal.subtract(firstBand), nominal, nominal.add(secondBand));
  }

  private Optional<Boolean> sign() {
    if (cursor.take("+")) {
      return Optional.of(true);
    }
    return cursor.take("-") || cursor.take("\u2212") ? Optional.of(false) : Optional.empty();
  }

  private Optional<Unit> toleranceUnit(int at) {
    String symbol = cursor.run(ValueReader::isUnitCharacter);
    if (symbol.isEmpty()) {
      return Optional.empty();
    }
    if (symbol.equals("K")) {
      return Unit.of("°C");
    }
    Optional<Unit> unit = Unit.of(symbol);
    if (unit.isEmpty()) {
      throw new Misread(
          at,
          cursor.at() - at,
          "\"" + Words.shortened(symbol) + "\" is not a unit",
          "write the tolerance in %, such as ± 10 %");
    }
    return unit;
  }

  private BigDecimal scaled(
      BigDecimal size, Optional<Unit> own, BigDecimal nominal, Unit unit, int at) {
    int length = cursor.at() - at;
    if (size.signum() < 0) {
      throw new Misread(at, length, "a tolerance has one sign", "write ± 10 %");
    }
    if (own.isEmpty()) {
      throw new Misread(
          at,
          length,
          "the tolerance has no unit",
          "write ± " + size + " %, or a value with a unit");
    }
    boolean points =
        unit.dimension() == Dimension.RATIO || unit.dimension() == Dimension.TEMPERATURE;
    if (own.get().dimension() == Dimension.RATIO && !points) {
      return nominal.abs().multiply(size).multiply(PERCENT);
    }
    if (own.get().dimension() == Dimension.RATIO) {
      throw new Misread(
          at,
          length,
          "a percentage of " + unit.dimension().noun() + " can be understood in two ways",
          unit.dimension() == Dimension.RATIO ? "write a range: 8..12 %" : "write ± 5 K");
    }
    if (own.get().dimension() != unit.dimension()) {
      throw new Misread(
          at,
          length,
          "the tolerance is "
              + own.get().dimension().noun()
              + ", the value "
              + unit.dimension().noun(),
          "write the tolerance in % or in " + unit.symbol());
    }
    return size.multiply(own.get().factor());
  }
}
