package org.coilwright.quantity;

import java.util.List;

/**
 * A printed unit: from which magnitude on it is used, and what it is worth.
 *
 * @param symbol as printed
 * @param factor base units in one of it
 * @param from least magnitude, in base units, that is printed in it
 */
record Scale(String symbol, double factor, double from) {

  /** The unit in which a value of this magnitude reads best. */
  static Scale of(double magnitude, Dimension dimension) {
    List<Scale> scales = of(dimension);
    if (magnitude == 0) {
      return scales.stream().filter(s -> s.factor == 1).findFirst().orElse(scales.get(0));
    }
    return scales.stream()
        .filter(s -> magnitude >= s.from)
        .findFirst()
        .orElse(scales.get(scales.size() - 1));
  }

  private static List<Scale> of(Dimension dimension) {
    return switch (dimension) {
      // test voltages of a few kilovolts are read beside voltages of the mains
      case VOLTAGE -> List.of(kilo("V", 1e4), new Scale("V", 1, 0.1), milli("mV"));
      case CURRENT ->
          List.of(kilo("A", 1e4), new Scale("A", 1, 1), new Scale("mA", 1e-3, 1e-3), micro("µA"));
      case RESISTANCE ->
          List.of(new Scale("MΩ", 1e6, 1e6), kilo("Ω", 1e4), new Scale("Ω", 1, 0.1), milli("mΩ"));
      case POWER -> List.of(kilo("W", 1e3), new Scale("W", 1, 0.1), milli("mW"));
      case APPARENT_POWER -> List.of(kilo("VA", 1e3), new Scale("VA", 1, 0));
      case ENERGY -> List.of(kilo("Wh", 1e3), new Scale("Wh", 1, 0));
      case LENGTH -> List.of(kilo("m", 1e4), new Scale("m", 1, 0.1), milli("mm"));
      case AREA -> List.of(new Scale("mm²", 1, 0));
      case TEMPERATURE -> List.of(new Scale("°C", 1, 0));
      case TIME ->
          List.of(
              new Scale("h", 3600, 7200),
              new Scale("min", 60, 120),
              new Scale("s", 1, 1),
              milli("ms"));
      case FREQUENCY -> List.of(new Scale("Hz", 1, 0));
      case RATIO -> List.of(new Scale("%", 0.01, 0));
      case CAPACITANCE ->
          List.of(
              new Scale("µF", 1e-6, 1e-6), new Scale("nF", 1e-9, 1e-9), new Scale("pF", 1e-12, 0));
      case VOLUME -> List.of(new Scale("l", 1, 0));
      case COUNT -> List.of(new Scale("", 1, 0));
    };
  }

  private static Scale kilo(String base, double from) {
    return new Scale("k" + base, 1000, from);
  }

  private static Scale milli(String symbol) {
    return new Scale(symbol, 1e-3, 0);
  }

  private static Scale micro(String symbol) {
    return new Scale(symbol, 1e-6, 0);
  }

  /** A number with this unit behind it. */
  String with(String number) {
    return symbol.isEmpty() ? number : number + " " + symbol;
  }
}
