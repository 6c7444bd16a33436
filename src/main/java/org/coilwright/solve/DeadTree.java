package org.coilwright.solve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The blocks of a circuit that is switched off, found once (Hopcroft and Tarjan 1973): what lies
 * between some nodes is then known without going through the rest of the circuit.
 */
final class DeadTree {
  private final int[][] edgesOf;
  private final int[] topOf;
  private final int[] depthOf;

  /** The block by which a node hangs on the root of its part; -1 for the root itself. */
  private final int[] above;

  private final int[] part;
  private final int[] blockOf;

  /**
   * Finds them.
   *
   * @param conducts edges that count
   */
  DeadTree(int nodes, DeadEdges edges, BitSet conducts) {
    Search search = new Search(nodes, edges, conducts);
    search.run();
    int blocks = search.tops.size();
    edgesOf = new int[blocks][];
    topOf = new int[blocks];
    depthOf = new int[blocks];
    above = new int[nodes];
    blockOf = new int[edges.count];
    Arrays.fill(above, -1);
    Arrays.fill(blockOf, -1);
    part = search.part;
    // a block is complete before the one it hangs on: from the last to the first, depths are known
    for (int block = blocks - 1; block >= 0; block--) {
      edgesOf[block] = search.blocks.get(block);
      topOf[block] = search.tops.get(block);
      depthOf[block] = depth(topOf[block]) + 1;
      for (int edge : edgesOf[block]) {
        blockOf[edge] = block;
        for (int end : new int[] {edges.from[edge], edges.to[edge]}) {
          if (end != topOf[block]) {
            above[end] = block;
          }
        }
      }
    }
  }

  private int depth(int node) {
    return above[node] < 0 ? 0 : depthOf[above[node]];
  }

  /** What hangs together has one number. */
  int part(int node) {
    return part[node];
  }

  /** The block of an edge; -1 for one that does not count. */
  int blockOf(int edge) {
    return blockOf[edge];
  }

  /** The edges of a block. */
  int[] edgesOf(int block) {
    return edgesOf[block];
  }

  /** Adds the blocks between each two of these nodes that hang together. */
  void span(int[] nodes, int count, BitSet blocks) {
    Map<Integer, Integer> firstOf = new HashMap<>();
    for (int i = 0; i < count; i++) {
      // all of one part by way of the first of it: blocks make a tree, so none is missed
      Integer first = firstOf.putIfAbsent(part[nodes[i]], nodes[i]);
      if (first != null) {
        between(first, nodes[i], blocks);
      }
    }
  }

  private void between(int from, int to, BitSet blocks) {
    int one = from;
    int other = to;
    while (one != other) {
      if (above[one] >= 0 && above[one] == above[other]) {
        blocks.set(above[one]);
        return;
      }
      if (depth(one) >= depth(other)) {
        blocks.set(above[one]);
        one = topOf[above[one]];
      } else {
        blocks.set(above[other]);
        other = topOf[above[other]];
      }
    }
  }

  /** Depth first, with its own stack. */
  private static final class Search {
    private final DeadEdges edges;
    private final int[] first;
    private final int[] at;
    private final int[] seen;
    private final int[] low;
    private final int[] next;
    private final int[] cameBy;
    private final int[] part;
    private final int[] open;
    private int opened;
    private final List<int[]> blocks = new ArrayList<>();
    private final List<Integer> tops = new ArrayList<>();

    Search(int nodes, DeadEdges edges, BitSet conducts) {
      this.edges = edges;
      this.first = new int[nodes + 1];
      for (int i = conducts.nextSetBit(0); i >= 0; i = conducts.nextSetBit(i + 1)) {
        first[edges.from[i] + 1]++;
        first[edges.to[i] + 1]++;
      }
      for (int n = 0; n < nodes; n++) {
        first[n + 1] += first[n];
      }
      this.at = new int[first[nodes]];
      int[] fill = Arrays.copyOf(first, nodes);
      for (int i = conducts.nextSetBit(0); i >= 0; i = conducts.nextSetBit(i + 1)) {
        at[fill[edges.from[i]]++] = i;
        at[fill[edges.to[i]]++] = i;
      }
      this.seen = new int[nodes];
      this.low = new int[nodes];
      this.next = Arrays.copyOf(first, nodes);
      this.cameBy = new int[nodes];
      this.part = new int[nodes];
      this.open = new int[edges.count];
    }

    void run() {
      int[] stack = new int[seen.length];
      int clock = 0;
      int parts = 0;
      for (int root = 0; root < seen.length; root++) {
        if (seen[root] != 0) {
          continue;
        }
        int depth = 0;
        stack[0] = root;
        seen[root] = ++clock;
        low[root] = clock;
        cameBy[root] = -1;
        part[root] = parts;
        while (depth >= 0) {
          int node = stack[depth];
          if (next[node] < first[node + 1]) {
            int edge = at[next[node]++];
            int other = edges.other(edge, node);
            if (edge == cameBy[node] || other == node) {
              continue;
            }
            if (seen[other] == 0) {
              open[opened++] = edge;
              seen[other] = ++clock;
              low[other] = clock;
              cameBy[other] = edge;
              part[other] = parts;
              stack[++depth] = other;
            } else if (seen[other] < seen[node]) {
              open[opened++] = edge;
              low[node] = Math.min(low[node], seen[other]);
            }
          } else if (--depth >= 0) {
            int parent = stack[depth];
            low[parent] = Math.min(low[parent], low[node]);
            if (low[node] >= seen[parent]) {
              int start = opened;
              do {
                start--;
              } while (open[start] != cameBy[node]);
              blocks.add(Arrays.copyOfRange(open, start, opened));
              tops.add(parent);
              opened = start;
            }
          }
        }
        parts++;
      }
    }
  }
}
