package org.coilwright.solve;

import java.util.BitSet;
import java.util.List;
import java.util.OptionalDouble;
import org.hipparchus.ode.ODEState;
import org.hipparchus.ode.OrdinaryDifferentialEquation;
import org.hipparchus.ode.nonstiff.DormandPrince853Integrator;

/** Follows a coil's current from the opening of its contact down to the release current. */
final class Fall {
  private static final double RELATIVE = 1e-9;
  private static final double ABSOLUTE = 1e-12;

  /** A current that has not fallen after so many time constants will not. */
  private static final int MOST_TIME_CONSTANTS = 200;

  /** Steps into which a fall is cut when looking for where a diode starts or stops. */
  private static final int PIECES = 64;

  private final Decay decay;
  private final int coil;
  private final List<Element> opened;
  private double coilPeak;
  private double contactPeak;
  private boolean contactTold = true;

  Fall(Decay decay, int coil, List<Element> opened) {
    this.decay = decay;
    this.coil = coil;
    this.opened = opened;
  }

  double coilPeak() {
    return coilPeak;
  }

  /** The most across one contact that opened; empty if both its sides parted from the supply. */
  OptionalDouble contactPeak() {
    return contactTold ? OptionalDouble.of(contactPeak) : OptionalDouble.empty();
  }

  private void look(double[] state) {
    Network.Flow flow = decay.flow(state);
    coilPeak = Math.max(coilPeak, Math.abs(Decay.volts(flow, decay.coils.get(coil))));
    for (Element contact : opened) {
      if (flow.grounded[contact.from()] && flow.grounded[contact.to()]) {
        contactPeak = Math.max(contactPeak, Math.abs(Decay.volts(flow, contact)));
      } else {
        // What opens on both sides leaves a part that floats: how the gaps share the voltage
        // between them is not told by the circuit, and one may have to bear it all.
        contactTold = false;
      }
    }
  }

  /**
   * One inductance and no capacitor: between two changes of the diodes the slope is a straight line
   * over the current, so the time is a logarithm.
   */
  double byExponentials(double from, double release) {
    look(new double[] {from});
    double sign = Math.signum(from);
    double to = sign * release;
    double seconds = 0;
    double high = from;
    for (int piece = 1; piece <= PIECES; piece++) {
      double low = from + (to - from) * piece / PIECES;
      seconds += between(high, low, 0);
      high = low;
    }
    return seconds;
  }

  private double between(double high, double low, int depth) {
    double before = slope(high);
    BitSet gates = decay.gatesOpen();
    double after = slope(low);
    if (!gates.equals(decay.gatesOpen()) && depth < 40) {
      double middle = (high + low) / 2;
      return between(high, middle, depth + 1) + between(middle, low, depth + 1);
    }
    double rate = (after - before) / (low - high);
    return Math.abs(rate * (low - high)) < RELATIVE * Math.abs(before)
        ? (low - high) / before
        : Math.log(after / before) / rate;
  }

  private double slope(double amps) {
    return decay.slope(new double[] {amps})[0];
  }

  /** Any number of inductances and capacitors. */
  double byIntegration(double[] start, double release) {
    look(start);
    double tau = 0;
    for (int c = 0; c < decay.coils.size(); c++) {
      tau = Math.max(tau, decay.henries.get(c) / decay.ohms.get(c));
    }
    double[] state = start.clone();
    double sign = Math.signum(start[coil]);
    double time = 0;
    double step = tau / PIECES;
    while (time < MOST_TIME_CONSTANTS * tau) {
      double[] next = advance(state, step);
      look(next);
      if (sign * next[coil] <= release) {
        return time + crossing(state, step, sign, release);
      }
      state = next;
      time += step;
    }
    return time;
  }

  private double crossing(double[] from, double step, double sign, double release) {
    double low = 0;
    double high = step;
    for (int i = 0; i < 40; i++) {
      double middle = (low + high) / 2;
      if (sign * advance(from, middle)[coil] > release) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }

  private double[] advance(double[] from, double seconds) {
    DormandPrince853Integrator integrator =
        new DormandPrince853Integrator(seconds * 1e-9, seconds, ABSOLUTE, RELATIVE);
    OrdinaryDifferentialEquation equation =
        new OrdinaryDifferentialEquation() {
          @Override
          public int getDimension() {
            return from.length;
          }

          @Override
          public double[] computeDerivatives(double t, double[] y) {
            return decay.slope(y);
          }
        };
    return integrator.integrate(equation, new ODEState(0, from), seconds).getPrimaryState();
  }
}
