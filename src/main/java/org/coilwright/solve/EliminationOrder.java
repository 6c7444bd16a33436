package org.coilwright.solve;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.Set;

/**
 * An order in which unknowns are eliminated so that few new entries appear: always the one with the
 * fewest neighbours left. Circuits are nearly trees, so leaves go first and the matrix stays empty.
 */
final class EliminationOrder {
  private EliminationOrder() {}

  private record Candidate(int degree, int unknown) implements Comparable<Candidate> {
    @Override
    public int compareTo(Candidate other) {
      int byDegree = Integer.compare(degree, other.degree);
      return byDegree != 0 ? byDegree : Integer.compare(unknown, other.unknown);
    }
  }

  /** The order for a matrix whose pattern is the same read by columns and by rows. */
  static int[] leastDegree(List<Map<Integer, double[]>> columns) {
    List<Set<Integer>> neighbours = new ArrayList<>();
    columns.forEach(c -> neighbours.add(new HashSet<>(c.keySet())));
    PriorityQueue<Candidate> open = new PriorityQueue<>();
    for (int i = 0; i < neighbours.size(); i++) {
      neighbours.get(i).remove(i);
      open.add(new Candidate(neighbours.get(i).size(), i));
    }
    boolean[] gone = new boolean[neighbours.size()];
    int[] order = new int[neighbours.size()];
    int next = 0;
    while (!open.isEmpty()) {
      Candidate candidate = open.remove();
      int unknown = candidate.unknown();
      if (gone[unknown] || neighbours.get(unknown).size() != candidate.degree()) {
        continue;
      }
      gone[unknown] = true;
      order[next++] = unknown;
      Set<Integer> around = neighbours.get(unknown);
      for (int one : around) {
        Set<Integer> of = neighbours.get(one);
        of.remove(unknown);
        for (int other : around) {
          if (other != one) {
            of.add(other);
          }
        }
        open.add(new Candidate(of.size(), one));
      }
      neighbours.set(unknown, Set.of());
    }
    return order;
  }
}
