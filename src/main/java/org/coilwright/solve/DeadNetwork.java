package org.coilwright.solve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/** Resistances and diodes between two leads, and the least and greatest reading they can give. */
final class DeadNetwork {
  /** A joint without resistance, so that a current stays finite. */
  private static final double LEAST_OHMS = 1e-6;

  /** Steps after which a search for ways through diodes is given up, and each may conduct. */
  private static final int MOST_STEPS = 20_000;

  private final int nodes;
  private final List<DeadEdge> edges;
  private final Probing.Method method;
  private final int[] plus;
  private final int[] minus;
  private final int[][] at;
  private int steps;

  DeadNetwork(int nodes, List<DeadEdge> edges, Probing.Method method, int[] plus, int[] minus) {
    this.nodes = nodes;
    this.edges = edges;
    this.method = method;
    this.plus = plus;
    this.minus = minus;
    int[] degree = new int[nodes];
    for (DeadEdge edge : edges) {
      degree[edge.from()]++;
      degree[edge.to()]++;
    }
    this.at = new int[nodes][];
    for (int n = 0; n < nodes; n++) {
      at[n] = new int[degree[n]];
    }
    Arrays.fill(degree, 0);
    for (int i = 0; i < edges.size(); i++) {
      at[edges.get(i).from()][degree[edges.get(i).from()]++] = i;
      at[edges.get(i).to()][degree[edges.get(i).to()]++] = i;
    }
  }

  /** Nodes that something may join to one of the leads. */
  BitSet felt() {
    boolean[] seen = new boolean[nodes];
    Set<Integer> suppressors = suppressors();
    reach(plus, false, suppressors, seen);
    reach(minus, false, suppressors, seen);
    BitSet felt = new BitSet(nodes);
    for (int n = 0; n < nodes; n++) {
      felt.set(n, seen[n]);
    }
    return felt;
  }

  Span read(DeadCircuit.Meter meter) {
    Set<Integer> conducting = method == Probing.Method.INSULATION ? suppressors() : forward();
    double least = ohms(false, conducting);
    if (method != Probing.Method.DIODE) {
      double most = ohms(true, method == Probing.Method.INSULATION ? conducting : Set.of());
      return new Span(least, Math.max(least, most));
    }
    double around = ohms(false, Set.of());
    double past = ohms(true, Set.of());
    double through = ohms(true, conducting);
    // Where no current gets past the diodes, one of them has its forward voltage.
    double low =
        meter.leastAmps() * least
            + (Double.isInfinite(around) && !Double.isInfinite(least) ? meter.leastVolts() : 0);
    double high =
        Math.min(
            meter.mostAmps() * past,
            conducting.size() * meter.mostVolts() + meter.mostAmps() * through);
    return new Span(low, Math.max(low, high));
  }

  private Set<Integer> suppressors() {
    Set<Integer> suppressors = new HashSet<>();
    for (int i = 0; i < edges.size(); i++) {
      if (edges.get(i).isSuppressor()) {
        suppressors.add(i);
      }
    }
    return suppressors;
  }

  /**
   * Diodes that may carry current. Current runs from higher to lower potential, so all of it can be
   * split into simple ways from lead to lead, each through every diode on it from anode to cathode;
   * a diode on no such way carries none.
   */
  private Set<Integer> forward() {
    Set<Integer> forward = new HashSet<>();
    if (edges.stream().anyMatch(e -> e.kind() == DeadEdge.Kind.DIODE)) {
      boolean[] end = new boolean[nodes];
      for (int m : minus) {
        end[m] = true;
      }
      steps = 0;
      for (int p : plus) {
        boolean[] visited = new boolean[nodes];
        for (int other : plus) {
          visited[other] = true;
        }
        ways(p, end, visited, new ArrayList<>(), forward);
      }
    }
    return forward;
  }

  private void ways(
      int node, boolean[] end, boolean[] visited, List<Integer> through, Set<Integer> forward) {
    if (end[node]) {
      forward.addAll(through);
      return;
    }
    if (++steps > MOST_STEPS) {
      forward.addAll(suppressors());
      return;
    }
    for (int i : at[node]) {
      DeadEdge edge = edges.get(i);
      boolean diode = edge.kind() == DeadEdge.Kind.DIODE;
      int next = edge.other(node);
      if (visited[next]
          || (diode && edge.from() != node)
          || (!diode && Double.isInfinite(edge.ohms().low()))) {
        continue;
      }
      visited[next] = true;
      if (diode) {
        through.add(i);
      }
      ways(next, end, visited, through, forward);
      if (diode) {
        through.remove(through.size() - 1);
      }
      visited[next] = false;
    }
  }

  private double worth(int i, boolean high, Set<Integer> conducting) {
    DeadEdge edge = edges.get(i);
    if (conducting.contains(i)) {
      return LEAST_OHMS;
    }
    if (edge.kind() == DeadEdge.Kind.DIODE) {
      return Double.POSITIVE_INFINITY;
    }
    return Math.max(LEAST_OHMS, high ? edge.ohms().high() : edge.ohms().low());
  }

  private boolean reach(int[] start, boolean high, Set<Integer> conducting, boolean[] seen) {
    int[] open = new int[nodes];
    int last = 0;
    for (int node : start) {
      if (!seen[node]) {
        seen[node] = true;
        open[last++] = node;
      }
    }
    for (int next = 0; next < last; next++) {
      for (int i : at[open[next]]) {
        int other = edges.get(i).other(open[next]);
        if (!seen[other] && !Double.isInfinite(worth(i, high, conducting))) {
          seen[other] = true;
          open[last++] = other;
        }
      }
    }
    return Arrays.stream(minus).anyMatch(m -> seen[m]);
  }

  /** Ohms between the leads with every resistance at one of its limits. */
  private double ohms(boolean high, Set<Integer> conducting) {
    boolean[] seen = new boolean[nodes];
    if (!reach(plus, high, conducting, seen)) {
      return Double.POSITIVE_INFINITY;
    }
    int[] number = new int[nodes];
    int count = 0;
    for (int n = 0; n < nodes; n++) {
      number[n] = seen[n] ? count++ : -1;
    }
    Network network = new Network(count, edges.size());
    for (int p : plus) {
      network.fix(number[p], 1, 0);
    }
    for (int m : minus) {
      if (Arrays.stream(plus).anyMatch(p -> p == m)) {
        return 0;
      }
      if (seen[m]) {
        network.fix(number[m], 0, 0);
      }
    }
    for (int i = 0; i < edges.size(); i++) {
      DeadEdge edge = edges.get(i);
      double ohms = worth(i, high, conducting);
      if (seen[edge.from()] && edge.from() != edge.to() && !Double.isInfinite(ohms)) {
        network.add(i, number[edge.from()], number[edge.to()], Impedance.ohms(ohms), 0, 0);
      }
    }
    Network.Flow flow = network.solve(edges.size());
    double amps = 0;
    for (int p : plus) {
      for (int i : at[p]) {
        amps += edges.get(i).from() == p ? flow.iRe[i] : -flow.iRe[i];
      }
    }
    return amps > 0 ? 1 / amps : Double.POSITIVE_INFINITY;
  }
}
