package org.coilwright.solve;

/**
 * A linear system, real if nothing in it has a phase. A complex unknown is two real ones. Numbers
 * are handed out as pairs.
 */
abstract class Equations {
  /** Beyond this many unknowns nearly all of the matrix is empty, and it pays not to store that. */
  private static final int LARGE = 80;

  static Equations of(int unknowns, boolean direct) {
    return unknowns > LARGE
        ? new SparseEquations(unknowns, direct)
        : new DenseEquations(unknowns, direct);
  }

  abstract void add(int i, int j, double re, double im);

  abstract void addRight(int i, double re, double im);

  /**
   * The unknowns, real and imaginary part by turns.
   *
   * @throws IllegalStateException if there is no one solution: a fault of the program
   */
  abstract double[] solve();

  static IllegalStateException singular() {
    return new IllegalStateException("a network without a unique solution: its model is at fault");
  }

  /** Current {@code Y (Va - Vb + E)} leaves the first node and enters the second. */
  void add(Chains.Chain c, int[] row, Network.Flow flow) {
    double z = c.zRe * c.zRe + c.zIm * c.zIm;
    double yRe = c.zRe / z;
    double yIm = -c.zIm / z;
    addEnd(row[c.from], row[c.to], c.to, yRe, yIm, c.eRe, c.eIm, flow);
    addEnd(row[c.to], row[c.from], c.from, yRe, yIm, -c.eRe, -c.eIm, flow);
  }

  private void addEnd(
      int here,
      int there,
      int thereNode,
      double yRe,
      double yIm,
      double eRe,
      double eIm,
      Network.Flow flow) {
    if (here < 0) {
      return;
    }
    add(here, here, yRe, yIm);
    double re = -eRe;
    double im = -eIm;
    if (there >= 0) {
      add(here, there, -yRe, -yIm);
    } else {
      re += flow.vRe[thereNode];
      im += flow.vIm[thereNode];
    }
    addRight(here, yRe * re - yIm * im, yRe * im + yIm * re);
  }

  /** {@code Va - Vb - Z I = -E}, with the current in both nodes' sums. */
  void addLow(Chains.Chain c, int[] row, Network.Flow flow, int current) {
    double re = -c.eRe;
    double im = -c.eIm;
    if (row[c.from] >= 0) {
      add(row[c.from], current, 1, 0);
      add(current, row[c.from], 1, 0);
    } else {
      re -= flow.vRe[c.from];
      im -= flow.vIm[c.from];
    }
    if (row[c.to] >= 0) {
      add(row[c.to], current, -1, 0);
      add(current, row[c.to], -1, 0);
    } else {
      re += flow.vRe[c.to];
      im += flow.vIm[c.to];
    }
    add(current, current, -c.zRe, -c.zIm);
    addRight(current, re, im);
  }
}
