package org.coilwright.solve;

/**
 * All node potentials and branch currents as unknowns of one dense system, solved by elimination
 * with full pivoting: slow, and nothing in common with the solver it checks.
 */
final class PlainTableau {
  private PlainTableau() {}

  static double[] currents(RandomNetwork net) {
    int nodes = net.nodes;
    int arms = net.arms.size();
    int size = nodes + arms;
    double[][] m = new double[size][size + 1];
    int[] part = new int[nodes];
    for (int n = 0; n < nodes; n++) {
      part[n] = n;
    }
    for (int sweep = 0; sweep < nodes; sweep++) {
      for (RandomNetwork.Arm arm : net.arms) {
        int least = Math.min(part[arm.from()], part[arm.to()]);
        part[arm.from()] = least;
        part[arm.to()] = least;
      }
    }
    for (int n = 0; n < nodes; n++) {
      int node = n;
      var fixed = net.fixed.stream().filter(f -> f.node() == node).findFirst();
      boolean held = net.fixed.stream().anyMatch(f -> part[f.node()] == part[node]);
      if (fixed.isPresent()) {
        m[n][n] = 1;
        m[n][size] = fixed.get().re();
      } else if (!held && part[n] == n) {
        m[n][n] = 1;
      } else {
        for (int i = 0; i < arms; i++) {
          RandomNetwork.Arm arm = net.arms.get(i);
          m[n][nodes + i] = (arm.from() == n ? 1 : 0) - (arm.to() == n ? 1 : 0);
        }
      }
    }
    for (int i = 0; i < arms; i++) {
      RandomNetwork.Arm arm = net.arms.get(i);
      double scale = 1 / Math.max(1, arm.z().re());
      m[nodes + i][arm.from()] += scale;
      m[nodes + i][arm.to()] -= scale;
      m[nodes + i][nodes + i] -= arm.z().re() * scale;
      m[nodes + i][size] = -arm.eRe() * scale;
    }
    double[] x = eliminate(m, size);
    double[] currents = new double[arms];
    System.arraycopy(x, nodes, currents, 0, arms);
    return currents;
  }

  private static double[] eliminate(double[][] m, int size) {
    int[] column = new int[size];
    for (int i = 0; i < size; i++) {
      column[i] = i;
    }
    for (int k = 0; k < size; k++) {
      int row = k;
      int col = k;
      for (int i = k; i < size; i++) {
        for (int j = k; j < size; j++) {
          if (Math.abs(m[i][j]) > Math.abs(m[row][col])) {
            row = i;
            col = j;
          }
        }
      }
      double[] swap = m[k];
      m[k] = m[row];
      m[row] = swap;
      for (double[] r : m) {
        double value = r[k];
        r[k] = r[col];
        r[col] = value;
      }
      int name = column[k];
      column[k] = column[col];
      column[col] = name;
      for (int i = k + 1; i < size; i++) {
        double factor = m[i][k] / m[k][k];
        for (int j = k; j <= size; j++) {
          m[i][j] -= factor * m[k][j];
        }
      }
    }
    double[] x = new double[size];
    for (int k = size - 1; k >= 0; k--) {
      double sum = m[k][size];
      for (int j = k + 1; j < size; j++) {
        sum -= m[k][j] * x[column[j]];
      }
      x[column[k]] = sum / m[k][k];
    }
    return x;
  }
}
