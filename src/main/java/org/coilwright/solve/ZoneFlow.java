package org.coilwright.solve;

import java.util.BitSet;
import org.coilwright.circuit.Node;

/**
 * Voltages and currents of a zone.
 *
 * @param direct direct part
 * @param alternating phasors at mains frequency
 * @param conducts which elements conduct: closed contacts, forward diodes
 * @param consistent false if no assignment of the diodes agrees with itself
 */
record ZoneFlow(
    Zone zone, Network.Flow direct, Network.Flow alternating, BitSet conducts, boolean consistent) {

  /** Direct volts across an element, its first node positive. */
  double directVolts(Element element) {
    return direct.vRe[element.from()] - direct.vRe[element.to()];
  }

  /** Alternating volts across an element, r.m.s. */
  double alternatingVolts(Element element) {
    return Math.hypot(
        alternating.vRe[element.from()] - alternating.vRe[element.to()],
        alternating.vIm[element.from()] - alternating.vIm[element.to()]);
  }

  /** R.m.s. of whatever is across an element. */
  double volts(Element element) {
    return Math.hypot(directVolts(element), alternatingVolts(element));
  }

  /** R.m.s. of whatever flows through an element. */
  double amps(Element element) {
    return Math.hypot(direct.iRe[element.number()], alternating.amps(element.number()));
  }

  /** Watts an element takes. */
  double watts(Element element) {
    int e = element.number();
    double re = alternating.vRe[element.from()] - alternating.vRe[element.to()];
    double im = alternating.vIm[element.from()] - alternating.vIm[element.to()];
    return directVolts(element) * direct.iRe[e] + re * alternating.iRe[e] + im * alternating.iIm[e];
  }

  /**
   * Current that leaves a node into this zone: {direct, alternating real, alternating imaginary}.
   */
  double[] drawnFrom(Node node) {
    double[] sum = new double[3];
    int n = zone.indexOf(node);
    if (n >= 0) {
      for (Element element : zone.elements) {
        int sign = (element.from() == n ? 1 : 0) - (element.to() == n ? 1 : 0);
        if (sign != 0) {
          sum[0] += sign * direct.iRe[element.number()];
          sum[1] += sign * alternating.iRe[element.number()];
          sum[2] += sign * alternating.iIm[element.number()];
        }
      }
    }
    return sum;
  }

  @Override
  public boolean equals(Object other) {
    return this == other;
  }

  @Override
  public int hashCode() {
    return System.identityHashCode(this);
  }

  @Override
  public String toString() {
    return "zone " + zone.number + " " + conducts;
  }
}
