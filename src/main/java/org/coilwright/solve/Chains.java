package org.coilwright.solve;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Solves a network by cutting off dead ends and taking branches in series as one. */
final class Chains {
  private final Network net;
  private final boolean[] known;
  private final int[][] at;
  private final Network.Flow flow;
  private final int[] degree;
  private final boolean[] gone;
  private final int[] prunedNode;
  private final int[] prunedBranch;
  private int pruned;

  Chains(Network net, boolean[] known, int[][] at, Network.Flow flow) {
    this.net = net;
    this.known = known;
    this.at = at;
    this.flow = flow;
    this.degree = new int[net.nodes];
    this.gone = new boolean[net.count()];
    this.prunedNode = new int[net.nodes];
    this.prunedBranch = new int[net.nodes];
  }

  /** Branches in series between two nodes that are known or join three and more. */
  static final class Chain {
    final int from;
    int to;
    double zRe;
    double zIm;
    double eRe;
    double eIm;
    double iRe;
    double iIm;
    int[] members = new int[4];
    int size;

    Chain(int from) {
      this.from = from;
    }

    void add(int branch) {
      if (size == members.length) {
        members = Arrays.copyOf(members, 2 * size);
      }
      members[size++] = branch;
    }
  }

  void solve() {
    for (int i = 0; i < net.count(); i++) {
      if (net.from(i) == net.to(i)) {
        gone[i] = true;
        loop(i);
      }
    }
    prune();
    List<Chain> chains = chains();
    Junctions.solve(chains, known, flow, net.nodes);
    chains.forEach(this::unfold);
    for (int i = pruned - 1; i >= 0; i--) {
      step(prunedBranch[i], net.other(prunedBranch[i], prunedNode[i]), 0, 0);
    }
  }

  /** A branch back to its own node: its voltage drives a current round itself. */
  private void loop(int branch) {
    double re = net.zRe(branch);
    double im = net.zIm(branch);
    double size = re * re + im * im;
    if (size > 0) {
      double eRe = net.eRe(branch);
      double eIm = net.eIm(branch);
      flow.iRe[net.mark(branch)] = (eRe * re + eIm * im) / size;
      flow.iIm[net.mark(branch)] = (eIm * re - eRe * im) / size;
    }
  }

  private void prune() {
    int[] open = new int[net.nodes];
    int end = 0;
    for (int n = 0; n < net.nodes; n++) {
      degree[n] = at[n].length;
      if (degree[n] == 1 && !known[n]) {
        open[end++] = n;
      }
    }
    for (int next = 0; next < end; next++) {
      int node = open[next];
      for (int i : at[node]) {
        if (!gone[i]) {
          gone[i] = true;
          prunedNode[pruned] = node;
          prunedBranch[pruned++] = i;
          int other = net.other(i, node);
          if (--degree[other] == 1 && !known[other]) {
            open[end++] = other;
          }
        }
      }
      degree[node] = 0;
    }
  }

  private boolean isEnd(int node) {
    return known[node] || degree[node] > 2;
  }

  private List<Chain> chains() {
    List<Chain> chains = new ArrayList<>();
    for (int n = 0; n < net.nodes; n++) {
      if (isEnd(n)) {
        for (int i : at[n]) {
          if (!gone[i]) {
            chains.add(follow(n, i));
          }
        }
      }
    }
    return chains;
  }

  private Chain follow(int start, int first) {
    Chain chain = new Chain(start);
    int node = start;
    int branch = first;
    while (true) {
      gone[branch] = true;
      chain.add(branch);
      double sign = net.from(branch) == node ? 1 : -1;
      chain.zRe += net.zRe(branch);
      chain.zIm += net.zIm(branch);
      chain.eRe += sign * net.eRe(branch);
      chain.eIm += sign * net.eIm(branch);
      node = net.other(branch, node);
      if (isEnd(node)) {
        chain.to = node;
        return chain;
      }
      for (int i : at[node]) {
        if (!gone[i]) {
          branch = i;
          break;
        }
      }
    }
  }

  /** Gives every branch of a chain its current and every node between its potential. */
  private void unfold(Chain chain) {
    int node = chain.from;
    for (int m = 0; m < chain.size; m++) {
      int branch = chain.members[m];
      boolean along = net.from(branch) == node;
      double iRe = along ? chain.iRe : -chain.iRe;
      double iIm = along ? chain.iIm : -chain.iIm;
      flow.iRe[net.mark(branch)] = iRe;
      flow.iIm[net.mark(branch)] = iIm;
      if (m < chain.size - 1) {
        node = step(branch, node, iRe, iIm);
      }
    }
  }

  /** Sets the potential at the far end of a branch from that at its near end. */
  private int step(int branch, int near, double iRe, double iIm) {
    int far = net.other(branch, near);
    double sign = net.from(branch) == near ? 1 : -1;
    double dropRe = net.zRe(branch) * iRe - net.zIm(branch) * iIm;
    double dropIm = net.zRe(branch) * iIm + net.zIm(branch) * iRe;
    flow.vRe[far] = flow.vRe[near] + sign * (net.eRe(branch) - dropRe);
    flow.vIm[far] = flow.vIm[near] + sign * (net.eIm(branch) - dropIm);
    return far;
  }
}
