package org.coilwright.solve;

import java.util.OptionalDouble;

/**
 * A contact that is limited in current, voltage and their product at once, as reed contacts and
 * pilot-duty classes are: none of the three may be exceeded, even for a moment.
 *
 * @param amps highest current
 * @param volts highest voltage
 * @param voltAmperes highest product
 */
public record ContactCapacity(double amps, double volts, double voltAmperes) {
  /** Current it may switch at a voltage, A; empty if the voltage itself is too high. */
  public OptionalDouble ampsAt(double atVolts) {
    return atVolts > volts
        ? OptionalDouble.empty()
        : OptionalDouble.of(Math.min(amps, voltAmperes / atVolts));
  }
}
