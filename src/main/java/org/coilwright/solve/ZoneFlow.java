package org.coilwright.solve;

import java.util.BitSet;
import java.util.Optional;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.solve.Reference.Leg;

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

  /** The same for keeping; {@code zeros} as in {@link Network.Flow#lean}. */
  ZoneFlow lean(double[] zeros) {
    return new ZoneFlow(zone, direct.lean(zeros), alternating.lean(zeros), conducts, consistent);
  }

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

  /** Adds what a source delivers into this zone: direct, then the phasor. */
  void addDelivered(Source source, double[] sum) {
    Optional<Element> inside = zone.element(source);
    if (inside.isPresent()) {
      add(inside.get().number(), 1, sum);
      return;
    }
    int[] signs = new int[zone.nodes.size()];
    for (int n = 0; n < signs.length; n++) {
      for (Leg leg : zone.reference.way(zone.nodes.get(n))) {
        if (leg.source().equals(source)) {
          signs[n] += leg.sign();
        }
      }
    }
    for (Element element : zone.elements) {
      int sign = signs[element.from()] - signs[element.to()];
      if (sign != 0) {
        add(element.number(), sign, sum);
      }
    }
  }

  private void add(int number, int sign, double[] sum) {
    sum[0] += sign * direct.iRe[number];
    sum[1] += sign * alternating.iRe[number];
    sum[2] += sign * alternating.iIm[number];
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
