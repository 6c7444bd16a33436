package org.coilwright.solve;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Whole-circuit states put together from the groups' own. Groups do not act on one another, so any
 * state is one of each; all combinations are listed while they are few, and beyond that each
 * group's states with the others at rest, which shows every part in every state it can be in.
 */
final class States {
  /** Combinations of all groups beyond which they are listed one after another. */
  static final int MOST = 256;

  /** Combinations of some groups that are asked for together. */
  private static final int MOST_TOGETHER = 4096;

  private final Variables variables;
  private final List<Exploration> explorations;
  private final Map<String, Integer> columnIndex = new HashMap<>();
  private final Map<String, Integer> relayIndex = new HashMap<>();
  private final boolean all;
  private Optional<BitSet> base = Optional.empty();

  States(Variables variables, List<Exploration> explorations) {
    this.variables = variables;
    this.explorations = explorations;
    variables.columns().forEach(c -> columnIndex.put(c, columnIndex.size()));
    variables.relays().forEach(r -> relayIndex.put(r, relayIndex.size()));
    this.all = combinations(explorations) <= MOST;
  }

  private static double combinations(List<Exploration> some) {
    return some.stream().mapToDouble(e -> Math.max(1, count(e))).reduce(1, (a, b) -> a * b);
  }

  private static int count(Exploration exploration) {
    return exploration.steady.values().stream().mapToInt(List::size).sum();
  }

  /** True if every combination of the groups' states is listed. */
  boolean isEveryCombination() {
    return all;
  }

  List<State> list() {
    return all
        ? product(new BitSet(variables.size()), explorations)
        : oneGroupAtATime(explorations);
  }

  /** Every combination of some groups' states, the others at rest; empty if they are too many. */
  Optional<List<State>> together(List<Exploration> some) {
    return areFew(some) ? Optional.of(product(base(), some)) : Optional.empty();
  }

  /** The states of one group, the others at rest. */
  List<State> of(Exploration exploration) {
    List<State> states = new ArrayList<>();
    BitSet base = base();
    for (BitSet moved : exploration.order()) {
      for (BitSet steady : exploration.steady.getOrDefault(moved, List.of())) {
        states.add(state(with(base, exploration, steady)));
      }
    }
    return states;
  }

  /** The states of one group in one set of positions, the others at rest. */
  List<State> of(Exploration exploration, BitSet moved) {
    BitSet base = base();
    return exploration.steady.getOrDefault(moved, List.of()).stream()
        .map(steady -> state(with(base, exploration, steady)))
        .toList();
  }

  /** True if the combinations of some groups' states can be listed. */
  boolean areFew(List<Exploration> some) {
    return combinations(some) <= MOST_TOGETHER;
  }

  private List<State> oneGroupAtATime(List<Exploration> groups) {
    List<State> states = new ArrayList<>();
    BitSet base = base();
    states.add(state(base));
    for (Exploration exploration : groups) {
      for (BitSet moved : exploration.order()) {
        for (BitSet steady : exploration.steady.getOrDefault(moved, List.of())) {
          BitSet bits = with(base, exploration, steady);
          if (!bits.equals(base)) {
            states.add(state(bits));
          }
        }
      }
    }
    return states;
  }

  /** Every group in its first state at rest, or in any it has. */
  private BitSet base() {
    if (base.isEmpty()) {
      BitSet bits = new BitSet(variables.size());
      for (Exploration exploration : explorations) {
        first(exploration).ifPresent(steady -> put(bits, exploration, steady));
      }
      base = Optional.of(bits);
    }
    return (BitSet) base.get().clone();
  }

  private static Optional<BitSet> first(Exploration exploration) {
    return exploration.order().stream()
        .flatMap(moved -> exploration.steady.getOrDefault(moved, List.of()).stream())
        .findFirst();
  }

  private List<State> product(BitSet start, List<Exploration> some) {
    List<BitSet> whole = new ArrayList<>(List.of(start));
    for (Exploration exploration : some) {
      if (count(exploration) == 0) {
        whole.forEach(bits -> bits.or(with(new BitSet(), exploration, exploration.atRest())));
        continue;
      }
      List<BitSet> longer = new ArrayList<>();
      for (BitSet bits : whole) {
        for (BitSet moved : exploration.order()) {
          for (BitSet steady : exploration.steady.getOrDefault(moved, List.of())) {
            longer.add(with(bits, exploration, steady));
          }
        }
      }
      whole = longer;
    }
    whole.sort(this::inTableOrder);
    return whole.stream().map(this::state).toList();
  }

  private int inTableOrder(BitSet one, BitSet other) {
    BitSet differ = (BitSet) one.clone();
    differ.xor(other);
    int first = differ.nextSetBit(0);
    if (first < 0) {
      return 0;
    }
    boolean rest = first < variables.firstRelay() && variables.atRest(first);
    return one.get(first) == rest ? -1 : 1;
  }

  private BitSet with(BitSet base, Exploration exploration, BitSet steady) {
    BitSet bits = (BitSet) base.clone();
    put(bits, exploration, steady);
    return bits;
  }

  private static void put(BitSet bits, Exploration exploration, BitSet steady) {
    for (int slot = 0; slot < exploration.group.firstSource(); slot++) {
      bits.set(exploration.group.variables.get(slot), steady.get(slot));
    }
  }

  State state(BitSet bits) {
    return new State(
        new Bits(variables.columns(), columnIndex, bits, 0),
        new Bits(variables.relays(), relayIndex, bits, variables.firstRelay()));
  }
}
