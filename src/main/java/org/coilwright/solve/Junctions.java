package org.coilwright.solve;

import java.util.Arrays;
import java.util.List;

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
      Equations equations = Equations.of(unknowns + low, direct);
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
}
