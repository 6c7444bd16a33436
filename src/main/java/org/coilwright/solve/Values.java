package org.coilwright.solve;

import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/**
 * What one branch is worth to the solver, at each corner. Empty means that it does not conduct.
 *
 * @param direct impedance for direct current
 * @param alternating impedance at mains frequency
 */
record Values(
    Map<Corner, Optional<Impedance>> direct, Map<Corner, Optional<Impedance>> alternating) {
  /** What a device that only measures is taken as: a teraohm. */
  static final double METER = 1e12;

  /** The same for both kinds of current. */
  static Values resistor(double nominal, double lowest, double highest) {
    Map<Corner, Optional<Impedance>> map = corners(ohms(nominal), ohms(lowest), ohms(highest));
    return new Values(map, map);
  }

  static Values resistor(double ohms) {
    return resistor(ohms, ohms, ohms);
  }

  static Values open() {
    Map<Corner, Optional<Impedance>> none =
        corners(Optional.empty(), Optional.empty(), Optional.empty());
    return new Values(none, none);
  }

  static Map<Corner, Optional<Impedance>> corners(
      Optional<Impedance> nominal, Optional<Impedance> lowest, Optional<Impedance> highest) {
    Map<Corner, Optional<Impedance>> map = new EnumMap<>(Corner.class);
    map.put(Corner.NOMINAL, nominal);
    map.put(Corner.PICK_UP, nominal);
    map.put(Corner.LOWEST, lowest);
    map.put(Corner.HIGHEST, highest);
    return map;
  }

  static Optional<Impedance> ohms(double resistance) {
    return Optional.of(Impedance.ohms(resistance));
  }

  Optional<Impedance> at(Corner corner, boolean isDirect) {
    return (isDirect ? direct : alternating).getOrDefault(corner, Optional.empty());
  }
}
