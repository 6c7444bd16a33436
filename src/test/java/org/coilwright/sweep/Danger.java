package org.coilwright.sweep;

/**
 * A hazard that the oracle sees in a circuit.
 *
 * @param subject the part it is at, empty if the circuit as a whole
 */
record Danger(Hazard hazard, String subject) {
  @Override
  public String toString() {
    return subject.isEmpty() ? hazard.name() : hazard + " at " + subject;
  }
}
