package org.coilwright.solve;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Branch;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Quantity;
import org.jspecify.annotations.Nullable;

/**
 * Carries a group's armatures to rest in the order in which they move. Where that order can make no
 * difference all move at once. Where it can, each one that may be first is followed: those of known
 * operate and release times as these allow, those of unknown times in every order.
 */
final class Settling {
  /** Moments that are followed before the search gives up. */
  static final int MOST_MOMENTS = 4096;

  /** A time that nothing bounds, in nanoseconds. */
  private static final long NEVER = Long.MAX_VALUE / 4;

  private static final double NANO = 1e9;

  private final Group group;
  private final Map<Integer, BitSet> upstream = new HashMap<>();

  /** Where armatures go from where: many ways to rest pass the same positions. */
  private final Map<BitSet, BitSet> gone = new HashMap<>();

  private boolean cut;

  Settling(Group group) {
    this.group = group;
  }

  /**
   * Positions on the way to rest.
   *
   * @param pending armatures that have begun to move, with the least and most nanoseconds they
   *     still need: slot, least, most, one after another, by ascending slot
   */
  private record Moment(BitSet bits, List<Long> pending) {
    // written out: what the compiler makes of a record is put together at run time, at each start
    @Override
    public boolean equals(@Nullable Object other) {
      return other instanceof Moment that && bits.equals(that.bits) && pending.equals(that.pending);
    }

    @Override
    public int hashCode() {
      return 31 * bits.hashCode() + pending.hashCode();
    }
  }

  /** True if somewhere there were more orders than are followed. */
  boolean wasCut() {
    return cut;
  }

  /** Where the armatures go from here. */
  BitSet next(BitSet bits) {
    BitSet known = gone.get(bits);
    if (known == null) {
      known = group.next(group.situation(bits)).get(0, group.firstSource());
      gone.put((BitSet) bits.clone(), known);
    }
    return (BitSet) known.clone();
  }

  /** Lets go what is only needed while one way to rest is looked for after the other. */
  void done() {
    gone.clear();
  }

  /**
   * Where the armatures come to rest; nowhere if they buzz, several if it depends on who is first.
   */
  Set<BitSet> from(BitSet start) {
    Set<BitSet> rests = new LinkedHashSet<>();
    Set<Moment> seen = new HashSet<>();
    Deque<Moment> open = new ArrayDeque<>();
    add(new Moment(start.get(0, group.firstSource()), List.of()), seen, open);
    while (!open.isEmpty()) {
      if (seen.size() > MOST_MOMENTS) {
        cut = true;
        break;
      }
      Moment moment = open.remove();
      BitSet wants = next(moment.bits);
      wants.xor(moment.bits);
      if (wants.isEmpty()) {
        rests.add(moment.bits);
      } else if (isRace(wants)) {
        firsts(moment, wants).forEach(m -> add(m, seen, open));
      } else {
        wants.xor(moment.bits);
        add(new Moment(wants, List.of()), seen, open);
      }
    }
    return rests;
  }

  private static void add(Moment moment, Set<Moment> seen, Deque<Moment> open) {
    if (seen.add(moment)) {
      open.add(moment);
    }
  }

  /** What follows if one of those that may be first is. */
  private List<Moment> firsts(Moment moment, BitSet wants) {
    int[] slots = wants.stream().toArray();
    long[] least = new long[slots.length];
    long[] most = new long[slots.length];
    long latest = NEVER;
    for (int i = 0; i < slots.length; i++) {
      Optional<Quantity> time = time(slots[i], !moment.bits.get(slots[i]));
      least[i] = time.map(t -> Math.round(t.low() * NANO)).orElse(0L);
      most[i] = time.map(t -> Math.round(t.high() * NANO)).orElse(NEVER);
      for (int p = 0; p < moment.pending.size(); p += 3) {
        if (moment.pending.get(p) == slots[i]) {
          least[i] = moment.pending.get(p + 1);
          most[i] = moment.pending.get(p + 2);
        }
      }
      latest = Math.min(latest, most[i]);
    }
    List<Moment> moments = new ArrayList<>();
    for (int first = 0; first < slots.length; first++) {
      if (least[first] <= latest) {
        BitSet bits = (BitSet) moment.bits.clone();
        bits.flip(slots[first]);
        List<Long> pending = new ArrayList<>();
        for (int i = 0; i < slots.length; i++) {
          if (i != first && (least[i] > 0 || most[i] < NEVER)) {
            pending.add((long) slots[i]);
            pending.add(Math.max(0, least[i] - latest));
            pending.add(most[i] == NEVER ? NEVER : most[i] - least[first]);
          }
        }
        moments.add(new Moment(bits, List.copyOf(pending)));
      }
    }
    return moments;
  }

  private Optional<Quantity> time(int slot, boolean in) {
    CoilModel model = group.grid.setup.coils.get(relay(slot));
    if (model == null) {
      return Optional.empty();
    }
    return (in ? model.spec.operateTime() : model.spec.releaseTime()).map(Written::value);
  }

  private String relay(int slot) {
    return group.all.relays().get(group.variables.get(slot) - group.all.firstRelay());
  }

  /**
   * True if the order of these moves may matter: some armature, directly or through others, feels
   * two of them, or moves itself and feels another.
   */
  private boolean isRace(BitSet wants) {
    if (wants.cardinality() < 2) {
      return false;
    }
    for (int slot = group.independents(); slot < group.firstSource(); slot++) {
      BitSet felt = (BitSet) upstream(slot).clone();
      felt.and(wants);
      felt.set(slot, wants.get(slot));
      if (felt.cardinality() > 1) {
        return true;
      }
    }
    return false;
  }

  /** The armatures that one hangs on, directly or through others. */
  private BitSet upstream(int slot) {
    BitSet known = upstream.get(slot);
    if (known == null) {
      known = new BitSet();
      Deque<Integer> open = new ArrayDeque<>(List.of(slot));
      while (!open.isEmpty()) {
        BitSet found = felt(relay(open.remove()));
        for (int s = found.nextSetBit(0); s >= 0; s = found.nextSetBit(s + 1)) {
          if (!known.get(s)) {
            known.set(s);
            open.add(s);
          }
        }
      }
      upstream.put(slot, known);
    }
    return known;
  }

  /**
   * The armatures whose contacts lie in the zone of a coil, or before the supplies that feed it.
   */
  private BitSet felt(String relay) {
    BitSet slots = new BitSet();
    Set<Zone> seen = new HashSet<>();
    Deque<Zone> open = new ArrayDeque<>();
    group.zoneOfCoil(relay).ifPresent(open::add);
    while (!open.isEmpty()) {
      Zone zone = open.remove();
      if (!seen.add(zone)) {
        continue;
      }
      for (Element element : zone.elements) {
        int slot = element.kind() == Element.Kind.CONTACT ? group.slot(element.variable()) : -1;
        if (slot >= group.independents() && slot < group.firstSource()) {
          slots.set(slot);
        }
      }
      for (Branch.Source source : zone.sources()) {
        group.all.inputOf(source).flatMap(group.grid::zoneOf).ifPresent(open::add);
      }
    }
    return slots;
  }
}
