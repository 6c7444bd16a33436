package org.coilwright.solve;

import java.util.Optional;

/**
 * What one branch is worth to the solver. Empty means that it does not conduct.
 *
 * @param direct for direct current
 * @param alternating at mains frequency
 * @param directPulling for direct current while an armature pulls in; the same for all but coils
 * @param alternatingPulling likewise at mains frequency
 */
record Values(
    Optional<Spread> direct,
    Optional<Spread> alternating,
    Optional<Spread> directPulling,
    Optional<Spread> alternatingPulling) {
  /** What a device that only measures is taken as: a teraohm. */
  static final double METER = 1e12;

  private static final Values OPEN = of(Optional.empty(), Optional.empty());

  /** What does not change while an armature pulls in. */
  static Values of(Optional<Spread> direct, Optional<Spread> alternating) {
    return new Values(direct, alternating, direct, alternating);
  }

  /** The same for both kinds of current. */
  static Values resistor(double nominal, double low, double high) {
    Optional<Spread> spread = Optional.of(Spread.ohms(nominal, low, high));
    return of(spread, spread);
  }

  static Values resistor(double ohms) {
    return resistor(ohms, ohms, ohms);
  }

  static Values open() {
    return OPEN;
  }

  Optional<Impedance> at(Level level, boolean isDirect, boolean isPulling) {
    Optional<Spread> spread =
        isPulling ? isDirect ? directPulling : alternatingPulling : isDirect ? direct : alternating;
    return spread.map(s -> s.at(level));
  }
}
