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
import java.util.Set;

/**
 * Every steady state of a group that can be reached: from each set of positions with all armatures
 * out (the power comes back), and from each steady state by moving one contact.
 */
final class Exploration {
  /** Independent contacts that a group may have; beyond it the group is named and left. */
  static final int MOST_CONTACTS = 12;

  /** Orders in which armatures may move that are followed before the search gives up. */
  private static final int MOST_ORDERS = 4096;

  final Group group;

  /** Positions, counted from rest, to the steady states there; none if the armatures never rest. */
  final Map<BitSet, List<BitSet>> steady = new HashMap<>();

  final boolean complete;
  private final BitSet rest;

  Exploration(Group group) {
    this.group = group;
    this.complete = group.independents() <= MOST_CONTACTS;
    this.rest = new BitSet();
    for (int slot = 0; slot < group.independents(); slot++) {
      rest.set(slot, group.all.atRest(group.variables.get(slot)));
    }
    if (complete) {
      explore();
    } else {
      record(new BitSet(), settle((BitSet) rest.clone()));
    }
  }

  /** Contacts at rest, armatures out, whether or not that is steady. */
  BitSet atRest() {
    return (BitSet) rest.clone();
  }

  private void explore() {
    Deque<BitSet> open = new ArrayDeque<>();
    for (long code = 0; code < 1L << group.independents(); code++) {
      BitSet moved = moved(code);
      open.addAll(record(moved, settle(at(moved, new BitSet()))));
    }
    while (!open.isEmpty()) {
      BitSet state = open.remove();
      for (int slot = 0; slot < group.independents(); slot++) {
        BitSet start = (BitSet) state.clone();
        start.flip(slot);
        BitSet moved = start.get(0, group.independents());
        moved.xor(rest);
        open.addAll(record(moved, settle(start)));
      }
    }
  }

  /** Positions by a number whose highest bit is the first contact, so that it counts last. */
  private BitSet moved(long code) {
    BitSet moved = new BitSet();
    int contacts = group.independents();
    for (int slot = 0; slot < contacts; slot++) {
      moved.set(slot, (code >> (contacts - 1 - slot) & 1) == 1);
    }
    return moved;
  }

  /** Absolute positions from those counted from rest, with the armatures of {@code before}. */
  private BitSet at(BitSet moved, BitSet before) {
    BitSet bits = (BitSet) before.clone();
    bits.clear(0, group.independents());
    BitSet positions = (BitSet) moved.clone();
    positions.xor(rest);
    bits.or(positions);
    return bits;
  }

  /** Keeps what is new, and hands it back. */
  private List<BitSet> record(BitSet moved, Set<BitSet> found) {
    List<BitSet> known = steady.computeIfAbsent(moved, m -> new ArrayList<>());
    List<BitSet> added = new ArrayList<>();
    for (BitSet state : found) {
      if (!known.contains(state)) {
        known.add(state);
        added.add(state);
      }
    }
    return added;
  }

  /**
   * Where the armatures come to rest; nowhere if they buzz, several if it depends on who is first.
   */
  private Set<BitSet> settle(BitSet start) {
    Set<BitSet> seen = new HashSet<>();
    BitSet bits = start.get(0, group.firstSource());
    while (seen.add(bits)) {
      BitSet next = armatures(bits);
      if (next.equals(bits)) {
        return Set.of(bits);
      }
      bits = next;
    }
    return oneByOne(bits);
  }

  private BitSet armatures(BitSet bits) {
    return group.next(group.situation(bits)).get(0, group.firstSource());
  }

  /** All armatures at once went round in a circle: let one move at a time, in every order. */
  private Set<BitSet> oneByOne(BitSet start) {
    Set<BitSet> rests = new LinkedHashSet<>();
    Set<BitSet> seen = new HashSet<>();
    Deque<BitSet> open = new ArrayDeque<>(List.of(start));
    seen.add(start);
    while (!open.isEmpty() && seen.size() < MOST_ORDERS) {
      BitSet bits = open.remove();
      BitSet wants = armatures(bits);
      wants.xor(bits);
      if (wants.isEmpty()) {
        rests.add(bits);
      }
      wants.stream()
          .forEach(
              slot -> {
                BitSet next = (BitSet) bits.clone();
                next.flip(slot);
                if (seen.add(next)) {
                  open.add(next);
                }
              });
    }
    return rests;
  }

  /** These positions with every armature out, and with every armature in. */
  List<BitSet> outAndIn(BitSet moved) {
    BitSet in = at(moved, new BitSet());
    in.set(group.independents(), group.firstSource());
    return List.of(at(moved, new BitSet()), in);
  }

  /** The armatures that move when nothing is at rest, for the message. */
  List<String> restless(BitSet moved) {
    Set<BitSet> seen = new HashSet<>();
    BitSet bits = at(moved, new BitSet());
    BitSet differ = new BitSet();
    while (seen.add(bits)) {
      BitSet next = armatures(bits);
      BitSet change = (BitSet) next.clone();
      change.xor(bits);
      if (seen.contains(next)) {
        differ.or(change);
      }
      bits = next;
    }
    seen.clear();
    while (seen.add(bits)) {
      BitSet next = armatures(bits);
      BitSet change = (BitSet) next.clone();
      change.xor(bits);
      differ.or(change);
      bits = next;
    }
    return relays(differ);
  }

  /** Names of the armatures whose bits are set. */
  List<String> relays(BitSet bits) {
    Variables variables = group.all;
    return bits.stream()
        .filter(slot -> slot >= group.independents() && slot < group.firstSource())
        .mapToObj(
            slot -> variables.relays().get(group.variables.get(slot) - variables.firstRelay()))
        .toList();
  }

  /** All sets of positions in the order of the table: at rest first, the last contact fastest. */
  List<BitSet> order() {
    List<BitSet> all = new ArrayList<>();
    if (!complete) {
      all.add(new BitSet());
      return all;
    }
    for (long code = 0; code < 1L << group.independents(); code++) {
      all.add(moved(code));
    }
    return all;
  }
}
