// Over 250 lines: one matrix, made up and solved over the same arrays.
package org.coilwright.solve;

import java.util.Arrays;
import java.util.BitSet;

/** Resistances and diodes between two leads, and the least and greatest reading they can give. */
final class DeadNetwork {
  /** A joint without resistance, so that a current stays finite. */
  private static final double LEAST_OHMS = 1e-6;

  /** Steps after which a search for ways through diodes is given up, and each may conduct. */
  private static final int MOST_STEPS = 20_000;

  private static final BitSet NONE = new BitSet();

  private final int nodes;
  private final DeadEdges edges;
  private final Probing.Method method;
  private final int[] plus;
  private final int[] minus;

  /** Edges at a node: those from {@code at[first[n]]} up to {@code at[first[n + 1]]}. */
  private final int[] first;

  private final int[] at;
  private int steps;

  DeadNetwork(int nodes, DeadEdges edges, Probing.Method method, int[] plus, int[] minus) {
    this.nodes = nodes;
    this.edges = edges;
    this.method = method;
    this.plus = plus;
    this.minus = minus;
    this.first = new int[nodes + 1];
    this.at = new int[2 * edges.count];
    for (int i = 0; i < edges.count; i++) {
      first[edges.from[i] + 1]++;
      first[edges.to[i] + 1]++;
    }
    for (int n = 0; n < nodes; n++) {
      first[n + 1] += first[n];
    }
    int[] next = Arrays.copyOf(first, nodes);
    for (int i = 0; i < edges.count; i++) {
      at[next[edges.from[i]]++] = i;
      at[next[edges.to[i]]++] = i;
    }
  }

  /** What the reading depends on. */
  DeadBlock block() {
    return new DeadBlock(nodes, edges, first, at, plus, minus, edges.conducting());
  }

  /** The same with nothing but the ways from lead to lead: elsewhere no current flows. */
  DeadNetwork within(DeadBlock block) {
    DeadEdges inside = new DeadEdges(edges.count);
    int[] number = new int[nodes];
    Arrays.fill(number, -1);
    int count = 0;
    for (int[] lead : new int[][] {plus, minus}) {
      for (int pin : lead) {
        if (number[pin] < 0) {
          number[pin] = count++;
        }
      }
    }
    for (int i = 0; i < edges.count; i++) {
      if (block.isInside(i)) {
        for (int end : new int[] {edges.from[i], edges.to[i]}) {
          if (number[end] < 0) {
            number[end] = count++;
          }
        }
        inside.add(
            number[edges.from[i]],
            number[edges.to[i]],
            new Span(edges.low[i], edges.high[i]),
            edges.diode[i],
            edges.suppressor[i]);
      }
    }
    return new DeadNetwork(
        count,
        inside,
        method,
        Arrays.stream(plus).map(pin -> number[pin]).toArray(),
        Arrays.stream(minus).map(pin -> number[pin]).toArray());
  }

  Span read(DeadCircuit.Meter meter) {
    BitSet conducting = method == Probing.Method.INSULATION ? suppressors() : forward();
    double least = ohms(false, conducting);
    if (Double.isInfinite(least)) {
      return Span.OPEN;
    }
    if (method != Probing.Method.DIODE) {
      double most = ohms(true, method == Probing.Method.INSULATION ? conducting : NONE);
      return new Span(least, Math.max(least, most));
    }
    double around = ohms(false, NONE);
    double past = ohms(true, NONE);
    double through = ohms(true, conducting);
    // Where no current gets past the diodes, one of them has its forward voltage.
    double low = meter.leastAmps() * least + (Double.isInfinite(around) ? meter.leastVolts() : 0);
    double high =
        Math.min(
            meter.mostAmps() * past,
            conducting.cardinality() * meter.mostVolts() + meter.mostAmps() * through);
    return new Span(low, Math.max(low, high));
  }

  private BitSet suppressors() {
    BitSet suppressors = new BitSet();
    for (int i = 0; i < edges.count; i++) {
      suppressors.set(i, edges.suppressor[i]);
    }
    return suppressors;
  }

  /**
   * Diodes that may carry current. Current runs from higher to lower potential, so all of it can be
   * split into simple ways from lead to lead, each through every diode on it from anode to cathode;
   * a diode on no such way carries none.
   */
  private BitSet forward() {
    boolean any = false;
    for (int i = 0; i < edges.count && !any; i++) {
      any = edges.diode[i];
    }
    BitSet forward = new BitSet();
    if (any) {
      boolean[] end = new boolean[nodes];
      for (int m : minus) {
        end[m] = true;
      }
      steps = 0;
      boolean[] visited = new boolean[nodes];
      for (int p : plus) {
        visited[p] = true;
      }
      for (int p : plus) {
        ways(p, end, visited, new BitSet(), forward);
      }
    }
    return forward;
  }

  private void ways(int node, boolean[] end, boolean[] visited, BitSet through, BitSet forward) {
    if (end[node]) {
      forward.or(through);
      return;
    }
    if (++steps > MOST_STEPS) {
      for (int i = 0; i < edges.count; i++) {
        forward.set(i, forward.get(i) || edges.diode[i]);
      }
      return;
    }
    for (int k = first[node]; k < first[node + 1]; k++) {
      int i = at[k];
      boolean isDiode = edges.diode[i];
      int next = edges.other(i, node);
      if (visited[next]
          || (isDiode && edges.from[i] != node)
          || (!isDiode && Double.isInfinite(edges.low[i]))) {
        continue;
      }
      visited[next] = true;
      through.set(i, isDiode);
      ways(next, end, visited, through, forward);
      through.clear(i);
      visited[next] = false;
    }
  }

  private double worth(int i, boolean high, BitSet conducting) {
    if (conducting.get(i)) {
      return LEAST_OHMS;
    }
    if (edges.diode[i]) {
      return Double.POSITIVE_INFINITY;
    }
    return Math.max(LEAST_OHMS, high ? edges.high[i] : edges.low[i]);
  }

  private boolean reach(int[] start, boolean high, BitSet conducting, boolean[] seen) {
    int[] open = new int[nodes];
    int last = 0;
    for (int node : start) {
      if (!seen[node]) {
        seen[node] = true;
        open[last++] = node;
      }
    }
    for (int next = 0; next < last; next++) {
      for (int k = first[open[next]]; k < first[open[next] + 1]; k++) {
        int other = edges.other(at[k], open[next]);
        if (!seen[other] && !Double.isInfinite(worth(at[k], high, conducting))) {
          seen[other] = true;
          open[last++] = other;
        }
      }
    }
    for (int m : minus) {
      if (seen[m]) {
        return true;
      }
    }
    return false;
  }

  /** Ohms between the leads with every resistance at one of its limits. */
  private double ohms(boolean high, BitSet conducting) {
    boolean[] seen = new boolean[nodes];
    if (!reach(plus, high, conducting, seen)) {
      return Double.POSITIVE_INFINITY;
    }
    int[] number = new int[nodes];
    int count = 0;
    for (int n = 0; n < nodes; n++) {
      number[n] = seen[n] ? count++ : -1;
    }
    Network network = new Network(count, edges.count);
    for (int p : plus) {
      network.fix(number[p], 1, 0);
    }
    for (int m : minus) {
      for (int p : plus) {
        if (p == m) {
          return 0;
        }
      }
      if (seen[m]) {
        network.fix(number[m], 0, 0);
      }
    }
    for (int i = 0; i < edges.count; i++) {
      double ohms = worth(i, high, conducting);
      if (seen[edges.from[i]] && edges.from[i] != edges.to[i] && !Double.isInfinite(ohms)) {
        network.add(i, number[edges.from[i]], number[edges.to[i]], Impedance.ohms(ohms), 0, 0);
      }
    }
    Network.Flow flow = network.solve(edges.count);
    double amps = 0;
    for (int p : plus) {
      for (int k = first[p]; k < first[p + 1]; k++) {
        amps += edges.from[at[k]] == p ? flow.iRe[at[k]] : -flow.iRe[at[k]];
      }
    }
    return amps > 0 ? 1 / amps : Double.POSITIVE_INFINITY;
  }
}
