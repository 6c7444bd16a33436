package org.coilwright.solve;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
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

  final Group group;

  /** Positions, counted from rest, to the steady states there; none if the armatures never rest. */
  final Map<BitSet, List<BitSet>> steady = new HashMap<>();

  /** Positions in which one and the same start leads to several rests, whoever is faster. */
  final Set<BitSet> raced = new HashSet<>();

  final boolean complete;

  /** True if the order in which armatures move decides, and there are too many orders to follow. */
  final boolean cut;

  private final BitSet rest;
  private final Settling settling;

  Exploration(Group group) {
    this.group = group;
    this.settling = new Settling(group);
    boolean few = group.independents() <= MOST_CONTACTS;
    this.rest = new BitSet();
    for (int slot = 0; slot < group.independents(); slot++) {
      rest.set(slot, group.all.atRest(group.variables.get(slot)));
    }
    if (few) {
      explore();
    } else {
      record(new BitSet(), settling.from((BitSet) rest.clone()));
    }
    settling.done();
    this.cut = settling.wasCut();
    this.complete = few && !cut;
  }

  /** Contacts at rest, armatures out, whether or not that is steady. */
  BitSet atRest() {
    return (BitSet) rest.clone();
  }

  private void explore() {
    Deque<BitSet> open = new ArrayDeque<>();
    for (long code = 0; code < 1L << group.independents(); code++) {
      BitSet moved = moved(code);
      open.addAll(record(moved, settling.from(at(moved, new BitSet()))));
    }
    while (!open.isEmpty()) {
      BitSet state = open.remove();
      for (int slot = 0; slot < group.independents(); slot++) {
        BitSet start = (BitSet) state.clone();
        start.flip(slot);
        BitSet moved = start.get(0, group.independents());
        moved.xor(rest);
        open.addAll(record(moved, settling.from(start)));
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
    if (found.size() > 1) {
      raced.add(moved);
    }
    List<BitSet> added = new ArrayList<>();
    for (BitSet state : found) {
      if (!known.contains(state)) {
        known.add(state);
        added.add(state);
      }
    }
    return added;
  }

  /** These positions with every armature out, and with every armature in. */
  List<BitSet> outAndIn(BitSet moved) {
    BitSet in = at(moved, new BitSet());
    in.set(group.independents(), group.firstSource());
    return List.of(at(moved, new BitSet()), in);
  }

  /** What the armatures go through again and again where nothing is at rest. */
  List<BitSet> round(BitSet moved) {
    List<BitSet> way = new ArrayList<>();
    BitSet bits = at(moved, new BitSet());
    while (!way.contains(bits)) {
      way.add(bits);
      bits = settling.next(bits);
    }
    return way.subList(way.indexOf(bits), way.size());
  }

  /** The armatures that move on such a round, for the message. */
  List<String> restless(List<BitSet> round) {
    BitSet differ = new BitSet();
    for (BitSet bits : round) {
      BitSet change = (BitSet) round.get(0).clone();
      change.xor(bits);
      differ.or(change);
    }
    return relays(differ);
  }

  /** Names of all armatures of the group. */
  List<String> allRelays() {
    BitSet all = new BitSet();
    all.set(group.independents(), group.firstSource());
    return relays(all);
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
