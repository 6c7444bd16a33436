package org.coilwright.quantity;

/** What a number measures. Each dimension is stored in one base unit, whatever unit was written. */
public enum Dimension {
  VOLTAGE("V", "a voltage", "24 V"),
  CURRENT("A", "a current", "85 mA"),
  RESISTANCE("Ω", "a resistance", "660 Ω"),
  POWER("W", "a power", "3 kW"),
  APPARENT_POWER("VA", "an apparent power", "14 VA"),
  ENERGY("Wh", "an energy", "10 kWh"),
  LENGTH("m", "a length", "12 m"),
  AREA("mm²", "a conductor size", "0.75 mm²"),
  TEMPERATURE("°C", "a temperature", "45 °C"),
  TIME("s", "a time", "10 min"),
  FREQUENCY("Hz", "a frequency", "50 Hz"),
  /** Stored as a fraction: 10 % is 0.10. */
  RATIO("%", "a share in per cent", "10 %"),
  CAPACITANCE("F", "a capacitance", "100 nF"),
  VOLUME("l", "a volume", "300 l"),
  /** A bare count, such as switching operations or a multiple. */
  COUNT("", "a plain number", "50000");

  private final String baseUnit;
  private final String noun;
  private final String example;

  Dimension(String baseUnit, String noun, String example) {
    this.baseUnit = baseUnit;
    this.noun = noun;
    this.example = example;
  }

  /** The symbol of the unit that {@link Quantity} stores, as printed. */
  public String baseUnit() {
    return baseUnit;
  }

  /** How a sentence calls it, with its article: {@code a voltage}. */
  public String noun() {
    return noun;
  }

  /** A value of it as a netlist would have it: {@code 24 V}. */
  public String example() {
    return example;
  }
}
