package org.coilwright.quantity;

/** What a number measures. Each dimension is stored in one base unit, whatever unit was written. */
public enum Dimension {
  VOLTAGE("V"),
  CURRENT("A"),
  RESISTANCE("Ω"),
  POWER("W"),
  APPARENT_POWER("VA"),
  ENERGY("Wh"),
  LENGTH("m"),
  AREA("mm²"),
  TEMPERATURE("°C"),
  TIME("s"),
  FREQUENCY("Hz"),
  /** Stored as a fraction: 10 % is 0.10. */
  RATIO("%"),
  CAPACITANCE("F"),
  VOLUME("l"),
  /** A bare count, such as switching operations or a multiple. */
  COUNT("");

  private final String baseUnit;

  Dimension(String baseUnit) {
    this.baseUnit = baseUnit;
  }

  /** The symbol of the unit that {@link Quantity} stores, as printed. */
  public String baseUnit() {
    return baseUnit;
  }
}
