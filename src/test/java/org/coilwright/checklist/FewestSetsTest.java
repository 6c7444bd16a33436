package org.coilwright.checklist;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

class FewestSetsTest {
  /** Greedy takes the set of four first and then needs two more. */
  @Test
  void two_sets_are_found_where_taking_the_largest_first_needs_three() {
    List<BitSet> sets = List.of(set(0, 1, 2, 3), set(0, 1, 4), set(2, 3, 5));
    assertEquals(new FewestSets.Choice(List.of(1, 2), true), FewestSets.of(sets));
  }

  @Test
  void nothing_is_chosen_from_nothing() {
    assertEquals(new FewestSets.Choice(List.of(), true), FewestSets.of(List.of()));
  }

  @Test
  void as_few_as_trying_every_choice_finds() {
    Random random = new Random(5);
    for (int round = 0; round < 300; round++) {
      List<BitSet> sets = new ArrayList<>();
      int members = 1 + random.nextInt(9);
      int count = 1 + random.nextInt(10);
      for (int i = 0; i < count; i++) {
        BitSet set = new BitSet();
        set.set(random.nextInt(members));
        for (int m = 0; m < members; m++) {
          set.set(m, set.get(m) || random.nextInt(3) == 0);
        }
        sets.add(set);
      }
      FewestSets.Choice choice = FewestSets.of(sets);
      assertTrue(choice.fewest());
      assertEquals(union(sets, -1), union(sets, mask(choice.sets())));
      assertEquals(fewest(sets), choice.sets().size());
    }
  }

  private static int fewest(List<BitSet> sets) {
    BitSet all = union(sets, -1);
    int fewest = sets.size();
    for (int mask = 0; mask < 1 << sets.size(); mask++) {
      if (Integer.bitCount(mask) < fewest && union(sets, mask).equals(all)) {
        fewest = Integer.bitCount(mask);
      }
    }
    return fewest;
  }

  private static int mask(List<Integer> chosen) {
    return chosen.stream().mapToInt(i -> 1 << i).sum();
  }

  private static BitSet union(List<BitSet> sets, int mask) {
    BitSet union = new BitSet();
    for (int i = 0; i < sets.size(); i++) {
      if ((mask >> i & 1) == 1) {
        union.or(sets.get(i));
      }
    }
    return union;
  }

  private static BitSet set(int... members) {
    BitSet set = new BitSet();
    for (int member : members) {
      set.set(member);
    }
    return set;
  }
}
