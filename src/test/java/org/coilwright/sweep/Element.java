package org.coilwright.sweep;

import org.coilwright.netlist.Part.ContactForm;

/** Something with two ends in a circuit: {@code a} and {@code b} are their nets. */
sealed interface Element {
  /** Designation of what it belongs to. */
  String part();

  int a();

  int b();

  /** What uses current; {@code ohms} at rated voltage, for direct current infinite if it blocks. */
  record Use(String part, Sort sort, int a, int b, double ohms, double directOhms)
      implements Element {}

  /** What a use is. */
  enum Sort {
    LOAD,
    COIL,
    INPUT,
    OTHER
  }

  /**
   * A contact or a pole of a protective device.
   *
   * @param actuator what moves it: a relay, {@code U1.heat}, a switch; empty if it stays closed
   * @param form what it does when the actuator operates
   * @param guard true for a pole of a fuse or breaker, which protects wires
   * @param neutral true for a neutral pole
   */
  record Link(
      String part,
      String name,
      int a,
      int b,
      String actuator,
      ContactForm form,
      boolean guard,
      boolean neutral)
      implements Element {}

  /** A diode, anode first. */
  record Valve(String part, int a, int b) implements Element {}

  /** A direct-voltage output, plus first; {@code device} is what must be fed for it to give. */
  record Output(String part, int a, int b, double volts, boolean fed) implements Element {}
}
