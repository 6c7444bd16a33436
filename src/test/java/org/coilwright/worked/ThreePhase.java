package org.coilwright.worked;

/**
 * Currents of resistive loads on a balanced three-phase supply, whole, with an element or a line
 * open, or with an element shorted. An element is given by its conductance: 0 is open, {@link
 * Double#POSITIVE_INFINITY} shorted.
 */
final class ThreePhase {
  private static final double ROOT3 = Math.sqrt(3);

  /** Cosine and sine of the three phase positions. */
  private static final double[] COS = {1, -0.5, -0.5};

  private static final double[] SIN = {0, -ROOT3 / 2, ROOT3 / 2};

  private ThreePhase() {}

  /**
   * Three magnitudes by line, and what flows in the neutral.
   *
   * @param first on L1, r.m.s.
   * @param neutral zero where there is none
   */
  record Lines(double first, double second, double third, double neutral) {}

  /**
   * Line currents of three elements in delta.
   *
   * @param volts line to line, r.m.s.
   * @param g12 conductance between L1 and L2, S; finite, for a short between lines is not a load
   */
  static Lines delta(double volts, double g12, double g23, double g31) {
    double[] g = {g12, g23, g31};
    double phase = volts / ROOT3;
    double[] re = new double[3];
    double[] im = new double[3];
    for (int i = 0; i < 3; i++) {
      int next = (i + 1) % 3;
      double elementRe = g[i] * phase * (COS[i] - COS[next]);
      double elementIm = g[i] * phase * (SIN[i] - SIN[next]);
      re[i] += elementRe;
      im[i] += elementIm;
      re[next] -= elementRe;
      im[next] -= elementIm;
    }
    return new Lines(
        Math.hypot(re[0], im[0]), Math.hypot(re[1], im[1]), Math.hypot(re[2], im[2]), 0);
  }

  /**
   * Line currents of three elements in star; the neutral point floats.
   *
   * @param volts line to line, r.m.s.
   * @param g1 conductance of the element on L1, S; at most one infinite
   */
  static Lines star(double volts, double g1, double g2, double g3) {
    double[] g = {g1, g2, g3};
    double[] point = starPoint(volts, g);
    double phase = volts / ROOT3;
    double[] amps = new double[3];
    int shorted = -1;
    double sumRe = 0;
    double sumIm = 0;
    for (int i = 0; i < 3; i++) {
      if (Double.isInfinite(g[i])) {
        shorted = i;
        continue;
      }
      double re = g[i] * (phase * COS[i] - point[0]);
      double im = g[i] * (phase * SIN[i] - point[1]);
      amps[i] = Math.hypot(re, im);
      sumRe += re;
      sumIm += im;
    }
    if (shorted >= 0) {
      amps[shorted] = Math.hypot(sumRe, sumIm);
    }
    return new Lines(amps[0], amps[1], amps[2], 0);
  }

  /**
   * Voltages across three elements in star whose neutral is lost, V r.m.s.
   *
   * @param volts line to line, r.m.s.
   */
  static Lines starElementVolts(double volts, double g1, double g2, double g3) {
    double[] point = starPoint(volts, new double[] {g1, g2, g3});
    double phase = volts / ROOT3;
    double[] across = new double[3];
    for (int i = 0; i < 3; i++) {
      across[i] = Math.hypot(phase * COS[i] - point[0], phase * SIN[i] - point[1]);
    }
    return new Lines(across[0], across[1], across[2], 0);
  }

  /** Line and neutral currents of three elements in star with the neutral connected. */
  static Lines starWithNeutral(double volts, double g1, double g2, double g3) {
    double phase = volts / ROOT3;
    double a = phase * g1;
    double b = phase * g2;
    double c = phase * g3;
    return new Lines(a, b, c, neutral(a, b, c));
  }

  /**
   * Current in the neutral of three line currents at unity power factor: {@code √(A² + B² + C² - AB
   * - BC - CA)}.
   */
  static double neutral(double a, double b, double c) {
    return Math.sqrt(Math.max(0, a * a + b * b + c * c - a * b - b * c - c * a));
  }

  private static double[] starPoint(double volts, double[] g) {
    double phase = volts / ROOT3;
    double re = 0;
    double im = 0;
    double sum = 0;
    for (int i = 0; i < 3; i++) {
      if (Double.isInfinite(g[i])) {
        return new double[] {phase * COS[i], phase * SIN[i]};
      }
      re += g[i] * phase * COS[i];
      im += g[i] * phase * SIN[i];
      sum += g[i];
    }
    return sum == 0 ? new double[] {0, 0} : new double[] {re / sum, im / sum};
  }
}
