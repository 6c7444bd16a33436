package org.coilwright.sweep;

/** Node voltages of a small network of conductances and sources, by elimination. */
final class Nodal {
  /** Holds every node, so that one that hangs in the air has a voltage too: none. */
  private static final double LEAK = 1e-9;

  private final int nodes;
  private final double[][] g;
  private final double[] re;
  private final double[] im;

  /**
   * A network.
   *
   * @param nodes besides earth, which is node -1
   */
  Nodal(int nodes) {
    this.nodes = nodes;
    g = new double[nodes][nodes];
    re = new double[nodes];
    im = new double[nodes];
    for (int i = 0; i < nodes; i++) {
      g[i][i] = LEAK;
    }
  }

  void resistor(int a, int b, double ohms) {
    conductance(a, b, 1 / ohms);
  }

  /** A source of so many volts (real and imaginary part), plus at {@code a}, behind a resistor. */
  void source(int a, int b, double ohms, double volts, double imaginary) {
    conductance(a, b, 1 / ohms);
    inject(a, volts / ohms, imaginary / ohms);
    inject(b, -volts / ohms, -imaginary / ohms);
  }

  private void conductance(int a, int b, double siemens) {
    if (a == b) {
      return;
    }
    if (a >= 0) {
      g[a][a] += siemens;
    }
    if (b >= 0) {
      g[b][b] += siemens;
    }
    if (a >= 0 && b >= 0) {
      g[a][b] -= siemens;
      g[b][a] -= siemens;
    }
  }

  private void inject(int node, double real, double imaginary) {
    if (node >= 0) {
      re[node] += real;
      im[node] += imaginary;
    }
  }

  /** Real and imaginary part of each node's voltage against earth. Ends the use of this network. */
  double[][] voltages() {
    for (int k = 0; k < nodes; k++) {
      // symmetric and dominated by its diagonal: no pivoting is needed
      for (int i = k + 1; i < nodes; i++) {
        double factor = g[i][k] / g[k][k];
        if (factor != 0) {
          for (int j = k; j < nodes; j++) {
            g[i][j] -= factor * g[k][j];
          }
          re[i] -= factor * re[k];
          im[i] -= factor * im[k];
        }
      }
    }
    for (int i = nodes - 1; i >= 0; i--) {
      for (int j = i + 1; j < nodes; j++) {
        re[i] -= g[i][j] * re[j];
        im[i] -= g[i][j] * im[j];
      }
      re[i] /= g[i][i];
      im[i] /= g[i][i];
    }
    return new double[][] {re, im};
  }
}
