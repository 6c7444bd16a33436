package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;

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

  /** Of sets of equal use the earlier one is taken. */
  static Choice of(List<BitSet> sets) {
    FewestSets search = new FewestSets(sets);
    BitSet open = new BitSet();
    sets.forEach(open::or);
    search.search(open, new ArrayList<>());
    return new Choice(
        search.best.stream().sorted(Comparator.naturalOrder()).toList(),
        search.steps <= MOST_STEPS);
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
