package org.coilwright.solve;

import java.util.Arrays;

/**
 * A linear network of branches, each an impedance in series with a voltage, between nodes of which
 * some have a known potential. Current counts from a branch's first node to its second; its voltage
 * raises the potential in that direction: {@code Va + E - Vb = Z I}.
 *
 * <p>Ends that lead nowhere and nodes that join just two branches are eliminated by hand, exactly;
 * what remains is solved by modified nodal analysis. Parts without a known potential get one: the
 * node with the lowest number is put at zero.
 */
final class Network {
  final int nodes;
  private int count;
  private int[] a;
  private int[] b;
  private int[] tag;
  private double[] zRe;
  private double[] zIm;
  private double[] eRe;
  private double[] eIm;
  private final boolean[] fixed;
  private final double[] vRe;
  private final double[] vIm;

  Network(int nodes, int capacity) {
    this.nodes = nodes;
    this.a = new int[capacity];
    this.b = new int[capacity];
    this.tag = new int[capacity];
    this.zRe = new double[capacity];
    this.zIm = new double[capacity];
    this.eRe = new double[capacity];
    this.eIm = new double[capacity];
    this.fixed = new boolean[nodes];
    this.vRe = new double[nodes];
    this.vIm = new double[nodes];
  }

  /** Gives a node a known potential. */
  void fix(int node, double re, double im) {
    fixed[node] = true;
    vRe[node] = re;
    vIm[node] = im;
  }

  /** Adds a branch; {@code mark} is handed back with its current. */
  void add(int mark, int from, int to, Impedance z, double re, double im) {
    if (count == a.length) {
      grow();
    }
    tag[count] = mark;
    a[count] = from;
    b[count] = to;
    zRe[count] = z.re();
    zIm[count] = z.im();
    eRe[count] = re;
    eIm[count] = im;
    count++;
  }

  private void grow() {
    int size = 2 * count + 4;
    a = Arrays.copyOf(a, size);
    b = Arrays.copyOf(b, size);
    tag = Arrays.copyOf(tag, size);
    zRe = Arrays.copyOf(zRe, size);
    zIm = Arrays.copyOf(zIm, size);
    eRe = Arrays.copyOf(eRe, size);
    eIm = Arrays.copyOf(eIm, size);
  }

  /** Potentials and currents. {@code marks} is one more than the largest mark. */
  Flow solve(int marks) {
    Flow flow = new Flow(nodes, marks);
    boolean[] known = fixed.clone();
    int[][] at = incidence();
    reference(known, at, flow.grounded);
    System.arraycopy(vRe, 0, flow.vRe, 0, nodes);
    System.arraycopy(vIm, 0, flow.vIm, 0, nodes);
    new Chains(this, known, at, flow).solve();
    return flow;
  }

  private int[][] incidence() {
    int[] degree = new int[nodes];
    for (int i = 0; i < count; i++) {
      if (a[i] != b[i]) {
        degree[a[i]]++;
        degree[b[i]]++;
      }
    }
    int[][] at = new int[nodes][];
    for (int n = 0; n < nodes; n++) {
      at[n] = new int[degree[n]];
    }
    Arrays.fill(degree, 0);
    for (int i = 0; i < count; i++) {
      if (a[i] != b[i]) {
        at[a[i]][degree[a[i]]++] = i;
        at[b[i]][degree[b[i]]++] = i;
      }
    }
    return at;
  }

  /** Marks what hangs on a known potential, and gives every other part a node at zero. */
  private void reference(boolean[] known, int[][] at, boolean[] grounded) {
    int[] open = new int[nodes];
    boolean[] seen = new boolean[nodes];
    int end = 0;
    for (int n = 0; n < nodes; n++) {
      if (known[n]) {
        open[end++] = n;
        seen[n] = true;
      }
    }
    spread(open, end, seen, at);
    System.arraycopy(seen, 0, grounded, 0, nodes);
    for (int n = 0; n < nodes; n++) {
      if (!seen[n]) {
        known[n] = true;
        seen[n] = true;
        open[0] = n;
        spread(open, 1, seen, at);
      }
    }
  }

  private void spread(int[] open, int end, boolean[] seen, int[][] at) {
    int last = end;
    for (int next = 0; next < last; next++) {
      for (int i : at[open[next]]) {
        int other = other(i, open[next]);
        if (!seen[other]) {
          seen[other] = true;
          open[last++] = other;
        }
      }
    }
  }

  int count() {
    return count;
  }

  int from(int branch) {
    return a[branch];
  }

  int to(int branch) {
    return b[branch];
  }

  int mark(int branch) {
    return tag[branch];
  }

  int other(int branch, int node) {
    return a[branch] == node ? b[branch] : a[branch];
  }

  double zRe(int branch) {
    return zRe[branch];
  }

  double zIm(int branch) {
    return zIm[branch];
  }

  double eRe(int branch) {
    return eRe[branch];
  }

  double eIm(int branch) {
    return eIm[branch];
  }

  /**
   * Potentials and currents of one kind, AC as phasors (r.m.s.).
   *
   * <p>{@code grounded} tells which nodes hang on a known potential; the others' potentials mean
   * something only against each other.
   */
  static final class Flow {
    final double[] vRe;
    final double[] vIm;
    final double[] iRe;
    final double[] iIm;
    final boolean[] grounded;

    Flow(int nodes, int marks) {
      vRe = new double[nodes];
      vIm = new double[nodes];
      iRe = new double[marks];
      iIm = new double[marks];
      grounded = new boolean[nodes];
    }

    private Flow(double[] vRe, double[] vIm, double[] iRe, double[] iIm, boolean[] grounded) {
      this.vRe = vRe;
      this.vIm = vIm;
      this.iRe = iRe;
      this.iIm = iIm;
      this.grounded = grounded;
    }

    /**
     * The same for keeping: whatever is nothing but zero, as the direct part on the mains and all
     * that is imaginary without a coil, is taken from an array of zeros that others share.
     *
     * @param zeros at least as long as there are nodes, and marks that are asked for
     */
    Flow lean(double[] zeros) {
      return new Flow(
          shared(vRe, zeros), shared(vIm, zeros), shared(iRe, zeros), shared(iIm, zeros), grounded);
    }

    private static double[] shared(double[] own, double[] zeros) {
      for (double value : own) {
        if (Double.doubleToRawLongBits(value) != 0) {
          return own;
        }
      }
      return zeros;
    }

    double amps(int mark) {
      return Math.hypot(iRe[mark], iIm[mark]);
    }
  }
}
