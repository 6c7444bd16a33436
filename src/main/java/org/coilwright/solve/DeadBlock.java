package org.coilwright.solve;

import java.util.Arrays;
import java.util.BitSet;

/**
 * What a reading depends on: the joints that lie on some simple way from lead to lead (the block of
 * a joint between the leads, after Hopcroft and Tarjan), and for every other node the one node of
 * these ways that it hangs on. What merely hangs there carries no current.
 */
final class DeadBlock {
  private final DeadEdges edges;
  private final BitSet inside = new BitSet();

  /**
   * Node of the ways that a node hangs on; below zero, one number for each part that hangs on none.
   */
  private final int[] hangsOn;

  /**
   * The block between two nodes.
   *
   * @param first where the edges of a node begin in {@code at}
   * @param conducts edges that may carry current
   */
  DeadBlock(
      int nodes, DeadEdges edges, int[] first, int[] at, int[] plus, int[] minus, BitSet conducts) {
    this.edges = edges;
    this.hangsOn = new int[nodes];
    Search search = new Search(nodes, first, at, plus, minus, conducts);
    search.run();
    label(first, at, plus, minus, conducts);
  }

  /** Depth first from the one lead, as if it had been reached from the other one. */
  private final class Search {
    private final int[] first;
    private final int[] at;
    private final BitSet conducts;
    private final boolean[] isPlus;
    private final boolean[] isMinus;
    private final int[] seen;
    private final int[] low;
    private final int[] next;
    private final int[] cameBy;
    private final int[] stack;
    private final int[] open;
    private final int start;
    private final int[] plus;
    private final int[] minus;
    private int opened;
    private int clock = 1;

    Search(int nodes, int[] first, int[] at, int[] plus, int[] minus, BitSet conducts) {
      this.first = first;
      this.at = at;
      this.conducts = conducts;
      this.plus = plus;
      this.minus = minus;
      this.isPlus = new boolean[nodes];
      this.isMinus = new boolean[nodes];
      for (int p : plus) {
        isPlus[p] = true;
      }
      for (int m : minus) {
        isMinus[m] = true;
      }
      this.seen = new int[nodes];
      this.low = new int[nodes];
      this.next = new int[nodes];
      this.cameBy = new int[nodes];
      this.stack = new int[nodes + 1];
      this.open = new int[edges.count];
      this.start = minus[0];
    }

    /** Pins that are joined under one lead are one node. */
    private int node(int node) {
      return isPlus[node] ? plus[0] : isMinus[node] ? minus[0] : node;
    }

    private int degree(int node) {
      int degree = 0;
      for (int pin : pins(node)) {
        degree += first[pin + 1] - first[pin];
      }
      return degree;
    }

    private int[] pins(int node) {
      return node == plus[0] ? plus : node == minus[0] ? minus : new int[] {node};
    }

    private int edge(int node, int number) {
      int left = number;
      for (int pin : pins(node)) {
        int own = first[pin + 1] - first[pin];
        if (left < own) {
          return at[first[pin] + left];
        }
        left -= own;
      }
      throw new IllegalStateException("no such edge");
    }

    void run() {
      if (isPlus[start]) {
        return;
      }
      seen[plus[0]] = clock++;
      seen[start] = clock++;
      low[start] = seen[plus[0]];
      cameBy[start] = -1;
      int depth = 0;
      stack[0] = start;
      while (depth >= 0) {
        int node = stack[depth];
        if (next[node] < degree(node)) {
          int edge = edge(node, next[node]++);
          if (conducts.get(edge) && edge != cameBy[node] && !inside.get(edge)) {
            int one = node(edges.from[edge]);
            int other = one == node ? node(edges.to[edge]) : one;
            if (other == node) {
              continue;
            }
            if (seen[other] == 0) {
              open[opened++] = edge;
              seen[other] = clock++;
              low[other] = seen[other];
              cameBy[other] = edge;
              stack[++depth] = other;
            } else if (seen[other] < seen[node]) {
              open[opened++] = edge;
              low[node] = Math.min(low[node], seen[other]);
            }
          }
        } else {
          depth--;
          if (depth >= 0) {
            int parent = stack[depth];
            low[parent] = Math.min(low[parent], low[node]);
            if (low[node] >= seen[parent]) {
              while (open[opened - 1] != cameBy[node]) {
                opened--;
              }
              opened--;
            }
          }
        }
      }
      for (int i = 0; i < opened; i++) {
        inside.set(open[i]);
      }
    }
  }

  /** From the nodes of the ways outwards; then whatever is left, part by part. */
  private void label(int[] first, int[] at, int[] plus, int[] minus, BitSet conducts) {
    int none = Integer.MIN_VALUE;
    Arrays.fill(hangsOn, none);
    int[] open = new int[hangsOn.length];
    int last = 0;
    for (int edge = inside.nextSetBit(0); edge >= 0; edge = inside.nextSetBit(edge + 1)) {
      for (int end : new int[] {edges.from[edge], edges.to[edge]}) {
        if (hangsOn[end] == none) {
          hangsOn[end] = end;
          open[last++] = end;
        }
      }
    }
    for (int[] lead : new int[][] {plus, minus}) {
      for (int pin : lead) {
        if (hangsOn[pin] == none || hangsOn[pin] == pin) {
          if (hangsOn[pin] == none) {
            open[last++] = pin;
          }
          hangsOn[pin] = lead[0];
        }
      }
    }
    spread(first, at, conducts, open, last);
    for (int node = 0; node < hangsOn.length; node++) {
      if (hangsOn[node] == none) {
        hangsOn[node] = -1 - node;
        open[0] = node;
        spread(first, at, conducts, open, 1);
      }
    }
  }

  private void spread(int[] first, int[] at, BitSet conducts, int[] open, int end) {
    int last = end;
    for (int next = 0; next < last; next++) {
      for (int k = first[open[next]]; k < first[open[next] + 1]; k++) {
        int other = edges.other(at[k], open[next]);
        if (conducts.get(at[k]) && hangsOn[other] == Integer.MIN_VALUE) {
          hangsOn[other] = hangsOn[open[next]];
          open[last++] = other;
        }
      }
    }
  }

  /** True if this joint lies on a way from lead to lead. */
  boolean isInside(int edge) {
    return inside.get(edge);
  }

  /**
   * True if new joints make a new way: they lead, one after another, from one node of the ways to
   * another.
   *
   * @param from where each begins
   * @param to where each ends
   */
  boolean isJoined(int[] from, int[] to) {
    int[] one = new int[from.length];
    int[] other = new int[from.length];
    for (int i = 0; i < from.length; i++) {
      one[i] = hangsOn[from[i]];
      other[i] = hangsOn[to[i]];
    }
    // Parts that hang on nothing take the name of what they are joined to, until nothing changes.
    for (boolean changed = true; changed; ) {
      changed = false;
      for (int i = 0; i < one.length; i++) {
        if (one[i] != other[i]) {
          if (one[i] >= 0 && other[i] >= 0) {
            return true;
          }
          int name = Math.max(one[i], other[i]);
          int old = Math.min(one[i], other[i]);
          for (int j = 0; j < one.length; j++) {
            one[j] = one[j] == old ? name : one[j];
            other[j] = other[j] == old ? name : other[j];
          }
          changed = true;
        }
      }
    }
    return false;
  }
}
