package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.PriorityQueue;
import java.util.stream.IntStream;

/**
 * Set cover: the fewest of some sets that together hold everything that any of them holds. Exact as
 * long as the search stays within its steps, and the best that was found beyond that.
 */
final class FewestSets {
  private static final int MOST_STEPS = 20_000;

  private final List<BitSet> sets;
  private final Map<Integer, List<Integer>> holding = new HashMap<>();
  private final List<Integer> rarestFirst = new ArrayList<>();
  private List<Integer> best;
  private int steps;

  private FewestSets(List<BitSet> sets) {
    this.sets = sets;
    count();
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
      search.search(search.all(), new ArrayList<>());
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
      sets.get(i).stream()
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

  /** Always the set that holds most of what is left, of several the earliest. */
  private List<Integer> greedy() {
    record Ranked(int set, int holds) {}
    PriorityQueue<Ranked> order =
        new PriorityQueue<>(
            Comparator.comparingInt((Ranked r) -> -r.holds()).thenComparingInt(Ranked::set));
    BitSet open = all();
    for (int i = 0; i < sets.size(); i++) {
      order.add(new Ranked(i, sets.get(i).cardinality()));
    }
    List<Integer> chosen = new ArrayList<>();
    while (!open.isEmpty()) {
      Ranked first = order.remove();
      // what a set holds of the rest only falls: one that has not fallen is still the first
      int now = common(sets.get(first.set()), open);
      if (now < first.holds()) {
        order.add(new Ranked(first.set(), now));
      } else {
        chosen.add(first.set());
        open.andNot(sets.get(first.set()));
      }
    }
    return chosen;
  }

  private BitSet all() {
    BitSet all = new BitSet();
    sets.forEach(all::or);
    return all;
  }

  /** For each member the sets that hold it, and the members by their number, fewest first. */
  private void count() {
    for (int i = 0; i < sets.size(); i++) {
      int set = i;
      sets.get(i).stream()
          .forEach(m -> holding.computeIfAbsent(m, k -> new ArrayList<>()).add(set));
    }
    all().stream().forEach(rarestFirst::add);
    rarestFirst.sort(
        Comparator.comparingInt((Integer m) -> holding(m).size()).thenComparing(m -> m));
  }

  private List<Integer> holding(int member) {
    return holding.getOrDefault(member, List.of());
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
    int rarest = rarestFirst.stream().filter(open::get).findFirst().orElseThrow();
    List<Integer> choices = new ArrayList<>(holding(rarest));
    choices.sort(Comparator.comparingInt(i -> -common(sets.get(i), open)));
    for (int i : choices) {
      BitSet rest = (BitSet) open.clone();
      rest.andNot(sets.get(i));
      chosen.add(i);
      search(rest, chosen);
      chosen.remove(chosen.size() - 1);
    }
  }

  /** Members of which no two lie in one set need as many sets. */
  private int bound(BitSet open) {
    BitSet left = (BitSet) open.clone();
    int bound = 0;
    for (int member : rarestFirst) {
      if (left.get(member)) {
        holding(member).forEach(set -> left.andNot(sets.get(set)));
        bound++;
      }
    }
    return bound;
  }

  private static int common(BitSet one, BitSet other) {
    BitSet both = (BitSet) one.clone();
    both.and(other);
    return both.cardinality();
  }
}
