package org.coilwright.solve;

import java.util.Arrays;
import java.util.List;
import org.ejml.data.DMatrixRMaj;
import org.ejml.dense.row.factory.LinearSolverFactory_DDRM;
import org.ejml.interfaces.linsol.LinearSolverDense;

/**
 * Modified nodal analysis of chains. Unknown are the potentials of the junctions and the currents
 * of chains of low impedance: a small difference of large potentials over a small resistance would
 * cost the digits that Kirchhoff's law needs.
 */
final class Junctions {
  /** Chains below this many ohms carry their current as an unknown. */
  private static final double LOW = 10;

  private Junctions() {}

  static void solve(List<Chains.Chain> chains, boolean[] known, Network.Flow flow, int nodes) {
    int[] row = new int[nodes];
    Arrays.fill(row, -1);
    int unknowns = 0;
    boolean direct = true;
    int low = 0;
    for (Chains.Chain chain : chains) {
      direct &= chain.zIm == 0 && chain.eIm == 0;
      for (int end : new int[] {chain.from, chain.to}) {
        if (known[end]) {
          direct &= flow.vIm[end] == 0;
        } else if (row[end] < 0) {
          row[end] = unknowns++;
        }
      }
      if (isLow(chain, known)) {
        low++;
      }
    }
    if (unknowns > 0) {
      Equations equations = new Equations(unknowns + low, direct);
      int next = unknowns;
      for (Chains.Chain chain : chains) {
        if (isLow(chain, known)) {
          equations.addLow(chain, row, flow, next++);
        } else if (chain.from != chain.to) {
          equations.add(chain, row, flow);
        }
      }
      double[] x = equations.solve();
      for (int n = 0; n < nodes; n++) {
        if (row[n] >= 0) {
          flow.vRe[n] = x[2 * row[n]];
          flow.vIm[n] = x[2 * row[n] + 1];
        }
      }
      next = unknowns;
      for (Chains.Chain chain : chains) {
        if (isLow(chain, known)) {
          chain.iRe = x[2 * next];
          chain.iIm = x[2 * next + 1];
          next++;
        } else {
          ohm(chain, flow);
        }
      }
    } else {
      chains.forEach(chain -> ohm(chain, flow));
    }
  }

  private static boolean isLow(Chains.Chain chain, boolean[] known) {
    return chain.from != chain.to
        && !(known[chain.from] && known[chain.to])
        && Math.hypot(chain.zRe, chain.zIm) < LOW;
  }

  private static void ohm(Chains.Chain chain, Network.Flow flow) {
    double re = flow.vRe[chain.from] - flow.vRe[chain.to] + chain.eRe;
    double im = flow.vIm[chain.from] - flow.vIm[chain.to] + chain.eIm;
    double size = chain.zRe * chain.zRe + chain.zIm * chain.zIm;
    if (size > 0) {
      chain.iRe = (re * chain.zRe + im * chain.zIm) / size;
      chain.iIm = (im * chain.zRe - re * chain.zIm) / size;
    }
  }

  /**
   * A linear system, real if nothing in it has a phase. A complex unknown is two real ones. Numbers
   * are handed out as pairs.
   */
  private static final class Equations {
    private final int size;
    private final boolean direct;
    private final DMatrixRMaj matrix;
    private final DMatrixRMaj right;

    Equations(int unknowns, boolean direct) {
      this.direct = direct;
      this.size = direct ? unknowns : 2 * unknowns;
      this.matrix = new DMatrixRMaj(size, size);
      this.right = new DMatrixRMaj(size, 1);
    }

    private void add(int i, int j, double re, double im) {
      if (direct) {
        matrix.data[i * size + j] += re;
      } else {
        int corner = 2 * i * size + 2 * j;
        matrix.data[corner] += re;
        matrix.data[corner + 1] -= im;
        matrix.data[corner + size] += im;
        matrix.data[corner + size + 1] += re;
      }
    }

    private void addRight(int i, double re, double im) {
      if (direct) {
        right.data[i] += re;
      } else {
        right.data[2 * i] += re;
        right.data[2 * i + 1] += im;
      }
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

    double[] solve() {
      LinearSolverDense<DMatrixRMaj> lu = LinearSolverFactory_DDRM.lu(size);
      if (!lu.setA(matrix)) {
        throw new IllegalStateException(
            "a network without a unique solution: its model is at fault");
      }
      DMatrixRMaj x = new DMatrixRMaj(size, 1);
      lu.solve(right, x);
      if (!direct) {
        return x.data;
      }
      double[] pairs = new double[2 * size];
      for (int i = 0; i < size; i++) {
        pairs[2 * i] = x.data[i];
      }
      return pairs;
    }
  }
}
