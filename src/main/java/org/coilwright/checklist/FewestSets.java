package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;

/**
 * Set cover: the fewest of some sets that together hold everything that any of them holds. Exact as
 * long as the search stays within its steps, and the best that was found beyond that.
 */
final class FewestSets {
  private static final int MOST_STEPS = 20_000;

  private final List<BitSet> sets;
  private List<Integer> best;
  private int steps;

  private FewestSets(List<BitSet> sets) {
    this.sets = sets;
    this.best = greedy();
  }

  /**
   * What was chosen.
   *
   * @param sets their places, ascending
   * @param fewest no fewer can do
   */
  record Choice(List<Integer> sets, boolean fewest) {}

  /**
   * Of sets of equal use the earlier one is taken. Sets that share no member with the others, nor
   * with any that these share one with, are chosen from by themselves.
   */
  static Choice of(List<BitSet> sets) {
    List<Integer> chosen = new ArrayList<>();
    boolean fewest = true;
    for (List<Integer> together : together(sets)) {
      FewestSets search = new FewestSets(together.stream().map(sets::get).toList());
      BitSet open = new BitSet();
      search.sets.forEach(open::or);
      search.search(open, new ArrayList<>());
      search.best.forEach(i -> chosen.add(together.get(i)));
      fewest &= search.steps <= MOST_STEPS;
    }
    chosen.sort(Comparator.naturalOrder());
    return new Choice(List.copyOf(chosen), fewest);
  }

  /** Places of the sets that hang together by what they hold, in their order. */
  private static Collection<List<Integer>> together(List<BitSet> sets) {
    int[] parent = IntStream.range(0, sets.size()).toArray();
    Map<Integer, Integer> holder = new HashMap<>();
    for (int i = 0; i < sets.size(); i++) {
      int set = i;
      sets.get(i)
          .stream()
          .forEach(
              member -> {
                Integer other = holder.putIfAbsent(member, set);
                if (other != null) {
                  parent[root(parent, set)] = root(parent, other);
                }
              });
    }
    Map<Integer, List<Integer>> together = new LinkedHashMap<>();
    for (int i = 0; i < sets.size(); i++) {
      together.computeIfAbsent(root(parent, i), r -> new ArrayList<>()).add(i);
    }
    return together.values();
  }

  private static int root(int[] parent, int start) {
    int root = start;
    while (parent[root] != root) {
      parent[root] = parent[parent[root]];
      root = parent[root];
    }
    return root;
  }

  private List<Integer> greedy() {
    BitSet open = new BitSet();
    sets.forEach(open::or);
    List<Integer> chosen = new ArrayList<>();
    while (!open.isEmpty()) {
      int most = 0;
      for (int i = 1; i < sets.size(); i++) {
        if (common(sets.get(i), open) > common(sets.get(most), open)) {
          most = i;
        }
      }
      chosen.add(most);
      open.andNot(sets.get(most));
    }
    return chosen;
  }

  /** Branches on the member that fewest sets hold. */
  private void search(BitSet open, List<Integer> chosen) {
    if (++steps > MOST_STEPS) {
      return;
    }
    if (open.isEmpty()) {
      if (chosen.size() < best.size()) {
        best = List.copyOf(chosen);
      }
      return;
    }
    if (chosen.size() + bound(open) >= best.size()) {
      return;
    }
    int rarest = rarest(open);
    List<Integer> holding = new ArrayList<>();
    for (int i = 0; i < sets.size(); i++) {
      if (sets.get(i).get(rarest)) {
        holding.add(i);
      }
    }
    holding.sort(Comparator.comparingInt(i -> -common(sets.get(i), open)));
    for (int i : holding) {
      BitSet rest = (BitSet) open.clone();
      rest.andNot(sets.get(i));
      chosen.add(i);
      search(rest, chosen);
      chosen.remove(chosen.size() - 1);
    }
  }

  private int rarest(BitSet open) {
    int rarest = -1;
    int least = Integer.MAX_VALUE;
    for (int member = open.nextSetBit(0); member >= 0; member = open.nextSetBit(member + 1)) {
      int holding = 0;
      for (BitSet set : sets) {
        holding += set.get(member) ? 1 : 0;
      }
      if (holding < least) {
        least = holding;
        rarest = member;
      }
    }
    return rarest;
  }

  /** Members of which no two lie in one set need as many sets. */
  private int bound(BitSet open) {
    BitSet left = (BitSet) open.clone();
    int bound = 0;
    while (!left.isEmpty()) {
      int member = rarest(left);
      for (BitSet set : sets) {
        if (set.get(member)) {
          left.andNot(set);
        }
      }
      left.clear(member);
      bound++;
    }
    return bound;
  }

  private static int common(BitSet one, BitSet other) {
    BitSet both = (BitSet) one.clone();
    both.and(other);
    return both.cardinality();
  }
}
