package org.coilwright.solve;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Branch;

/**
 * Zones that act on one another through armatures, common actuators, sources that live on the
 * mains, or a source that together they may drive to its limit. Groups are explored apart.
 */
final class Group {
  final List<Zone> zones = new ArrayList<>();

  /** Numbers of the variables, ascending: independent contacts, then armatures, then sources. */
  final List<Integer> variables = new ArrayList<>();

  /** Limited sources that feed it. */
  final List<Branch.Source> limited = new ArrayList<>();

  /** Zones in which circuits on the same feed may move an armature or cut off a supply. */
  final Set<Zone> delicate = new LinkedHashSet<>();

  final Grid grid;
  final Variables all;
  private final Set<Zone> held = new HashSet<>();
  private final Map<String, Zone> coilZones = new HashMap<>();
  private final Map<BitSet, Situation> situations = new HashMap<>();
  private int independents;
  private int armatures;

  Group(Grid grid) {
    this.grid = grid;
    this.all = grid.setup.variables;
  }

  void add(int variable) {
    variables.add(variable);
    if (variable < all.firstRelay()) {
      independents++;
    } else if (variable < all.firstSource()) {
      armatures++;
    }
  }

  boolean holds(Zone zone) {
    return held.contains(zone);
  }

  void add(Zone zone) {
    zones.add(zone);
    held.add(zone);
    for (Element element : zone.elements) {
      element.coil().ifPresent(coil -> coilZones.put(coil.part(), zone));
    }
  }

  /** The zone that a relay's coil lies in; empty if the coil is broken. */
  Optional<Zone> zoneOfCoil(String relay) {
    return Optional.ofNullable(coilZones.get(relay));
  }

  /** Place of a variable in this group; negative if it is of another. */
  int slot(int variable) {
    return Collections.binarySearch(variables, variable);
  }

  /** How many independent contacts it has; they come first. */
  int independents() {
    return independents;
  }

  /** How many relays it has. */
  int armatures() {
    return armatures;
  }

  /** Number of the first source among {@link #variables}. */
  int firstSource() {
    return independents + armatures;
  }

  /** The positions of independent contacts and armatures with everything else settled. */
  Situation situation(BitSet positions) {
    BitSet key = positions.get(0, firstSource());
    return Optional.ofNullable(situations.get(key)).orElseGet(() -> resolve(key));
  }

  private Situation resolve(BitSet key) {
    BitSet bits = (BitSet) key.clone();
    Situation situation = new Situation(this, bits);
    for (int i = firstSource(); i <= variables.size(); i++) {
      BitSet live = situation.liveSources();
      if (live.equals(bits.get(firstSource(), variables.size()))) {
        break;
      }
      BitSet next = (BitSet) key.clone();
      live.stream().forEach(s -> next.set(firstSource() + s));
      bits = next;
      situation = new Situation(this, bits);
    }
    situations.put(key, situation);
    return situation;
  }

  /** Where each armature goes from here. */
  BitSet next(Situation situation) {
    BitSet next = (BitSet) situation.bits.clone();
    for (int slot = independents; slot < firstSource(); slot++) {
      String relay = all.relays().get(variables.get(slot) - all.firstRelay());
      next.set(slot, situation.armature(relay, situation.bits.get(slot)));
    }
    return next;
  }
}
