package org.coilwright.quantity;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * A unit as a netlist may write it.
 *
 * @param symbol as written; upper and lower case matter
 * @param dimension what it measures
 * @param factor how many base units it is
 * @param listed true if messages offer it; false for a second spelling of the same unit
 */
public record Unit(String symbol, Dimension dimension, BigDecimal factor, boolean listed) {

  /** Every unit, the usual spelling of a unit before its other ones. */
  public static final List<Unit> ALL =
      List.of(
          listed("V", Dimension.VOLTAGE, "1"),
          listed("mV", Dimension.VOLTAGE, "0.001"),
          listed("kV", Dimension.VOLTAGE, "1000"),
          listed("A", Dimension.CURRENT, "1"),
          listed("mA", Dimension.CURRENT, "0.001"),
          listed("µA", Dimension.CURRENT, "0.000001"),
          listed("kA", Dimension.CURRENT, "1000"),
          other("μA", Dimension.CURRENT, "0.000001"),
          other("uA", Dimension.CURRENT, "0.000001"),
          listed("Ω", Dimension.RESISTANCE, "1"),
          listed("mΩ", Dimension.RESISTANCE, "0.001"),
          listed("kΩ", Dimension.RESISTANCE, "1000"),
          listed("MΩ", Dimension.RESISTANCE, "1000000"),
          listed("ohm", Dimension.RESISTANCE, "1"),
          other("ohms", Dimension.RESISTANCE, "1"),
          other("mohm", Dimension.RESISTANCE, "0.001"),
          other("kohm", Dimension.RESISTANCE, "1000"),
          other("Mohm", Dimension.RESISTANCE, "1000000"),
          // U+2126, the ohm sign, which some keyboards give in place of the Greek letter
          other("\u2126", Dimension.RESISTANCE, "1"),
          other("m\u2126", Dimension.RESISTANCE, "0.001"),
          other("k\u2126", Dimension.RESISTANCE, "1000"),
          other("M\u2126", Dimension.RESISTANCE, "1000000"),
          listed("W", Dimension.POWER, "1"),
          listed("mW", Dimension.POWER, "0.001"),
          listed("kW", Dimension.POWER, "1000"),
          listed("VA", Dimension.APPARENT_POWER, "1"),
          listed("kVA", Dimension.APPARENT_POWER, "1000"),
          listed("Wh", Dimension.ENERGY, "1"),
          listed("kWh", Dimension.ENERGY, "1000"),
          listed("m", Dimension.LENGTH, "1"),
          listed("mm", Dimension.LENGTH, "0.001"),
          listed("cm", Dimension.LENGTH, "0.01"),
          listed("km", Dimension.LENGTH, "1000"),
          listed("ft", Dimension.LENGTH, "0.3048"),
          listed("in", Dimension.LENGTH, "0.0254"),
          listed("mm²", Dimension.AREA, "1"),
          listed("mm2", Dimension.AREA, "1"),
          other("mm^2", Dimension.AREA, "1"),
          listed("°C", Dimension.TEMPERATURE, "1"),
          listed("degC", Dimension.TEMPERATURE, "1"),
          other("\u2103", Dimension.TEMPERATURE, "1"),
          listed("s", Dimension.TIME, "1"),
          listed("ms", Dimension.TIME, "0.001"),
          listed("min", Dimension.TIME, "60"),
          listed("h", Dimension.TIME, "3600"),
          other("µs", Dimension.TIME, "0.000001"),
          other("μs", Dimension.TIME, "0.000001"),
          other("us", Dimension.TIME, "0.000001"),
          listed("Hz", Dimension.FREQUENCY, "1"),
          other("kHz", Dimension.FREQUENCY, "1000"),
          listed("%", Dimension.RATIO, "0.01"),
          listed("µF", Dimension.CAPACITANCE, "0.000001"),
          listed("nF", Dimension.CAPACITANCE, "0.000000001"),
          listed("pF", Dimension.CAPACITANCE, "0.000000000001"),
          other("mF", Dimension.CAPACITANCE, "0.001"),
          other("F", Dimension.CAPACITANCE, "1"),
          other("μF", Dimension.CAPACITANCE, "0.000001"),
          other("uF", Dimension.CAPACITANCE, "0.000001"),
          listed("l", Dimension.VOLUME, "1"),
          other("L", Dimension.VOLUME, "1"),
          listed("litres", Dimension.VOLUME, "1"),
          other("litre", Dimension.VOLUME, "1"),
          other("liters", Dimension.VOLUME, "1"),
          other("liter", Dimension.VOLUME, "1"),
          listed("x", Dimension.COUNT, "1"),
          other("×", Dimension.COUNT, "1"));

  private static final Map<String, Unit> BY_SYMBOL =
      ALL.stream().collect(Collectors.toUnmodifiableMap(Unit::symbol, unit -> unit));

  /** The unit with exactly this symbol. */
  public static Optional<Unit> of(String symbol) {
    return Optional.ofNullable(BY_SYMBOL.get(symbol));
  }

  /** A unit whose symbol differs from this text in upper and lower case only. */
  static Optional<Unit> ofAnyCase(String symbol) {
    return ALL.stream().filter(unit -> unit.symbol.equalsIgnoreCase(symbol)).findFirst();
  }

  /** Every spelling of every unit of a dimension. */
  public static List<Unit> of(Dimension dimension) {
    return ALL.stream().filter(unit -> unit.dimension == dimension).toList();
  }

  private static Unit listed(String symbol, Dimension dimension, String factor) {
    return new Unit(symbol, dimension, new BigDecimal(factor), true);
  }

  private static Unit other(String symbol, Dimension dimension, String factor) {
    return new Unit(symbol, dimension, new BigDecimal(factor), false);
  }
}
