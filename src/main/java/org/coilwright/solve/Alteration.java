package org.coilwright.solve;

import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Source;

/**
 * What is otherwise than drawn.
 *
 * @param gone branches that conduct no more: a broken wire, an open coil, a contact that never
 *     closes, a source that is lost
 * @param bridged branches that are short-circuited: a welded contact, a shorted coil
 * @param joints connections that nobody drew
 * @param atTop sources at the top of their tolerance
 * @param stuck relays whose armature stays in
 * @param drawn amperes that what is not looked at takes from a source at most
 */
record Alteration(
    Set<Branch> gone,
    Set<Branch> bridged,
    List<Branch.Joint> joints,
    Set<Source> atTop,
    Set<String> stuck,
    Map<Source, Double> drawn) {
  static final Alteration NONE =
      new Alteration(Set.of(), Set.of(), List.of(), Set.of(), Set.of(), Map.of());

  static Alteration gone(Branch... branches) {
    return new Alteration(Set.of(branches), Set.of(), List.of(), Set.of(), Set.of(), Map.of());
  }

  static Alteration bridged(Branch... branches) {
    return new Alteration(Set.of(), Set.of(branches), List.of(), Set.of(), Set.of(), Map.of());
  }

  static Alteration joined(Branch.Joint... joints) {
    return new Alteration(Set.of(), Set.of(), List.of(joints), Set.of(), Set.of(), Map.of());
  }

  static Alteration atTop(Source... sources) {
    return new Alteration(Set.of(), Set.of(), List.of(), Set.of(sources), Set.of(), Map.of());
  }

  static Alteration stuck(String relay) {
    return new Alteration(Set.of(), Set.of(), List.of(), Set.of(), Set.of(relay), Map.of());
  }

  /** True if all is as drawn. */
  boolean isNone() {
    return gone.isEmpty()
        && bridged.isEmpty()
        && joints.isEmpty()
        && atTop.isEmpty()
        && stuck.isEmpty();
  }

  /** The same with more branches gone. */
  Alteration without(Collection<? extends Branch> more) {
    Set<Branch> all = new HashSet<>(gone);
    all.addAll(more);
    return new Alteration(all, bridged, joints, atTop, stuck, drawn);
  }

  /** The same with other joints. */
  Alteration with(List<Branch.Joint> others) {
    return new Alteration(gone, bridged, others, atTop, stuck, drawn);
  }

  /** The same with amperes taken from sources by what is not looked at. */
  Alteration drawing(Map<Source, Double> amps) {
    return new Alteration(gone, bridged, joints, atTop, stuck, amps);
  }

  /** Amperes that a source can still give; empty if it has no limit. */
  OptionalDouble limit(Source source) {
    OptionalDouble limit = source.limitAmps();
    return limit.isEmpty()
        ? limit
        : OptionalDouble.of(Math.max(0, limit.getAsDouble() - drawn.getOrDefault(source, 0.0)));
  }

  /** Where a source stands in its tolerance. */
  Level level(Source source, Corner corner) {
    return corner.supply() == Level.NOMINAL && atTop.contains(source)
        ? Level.HIGH
        : corner.supply();
  }
}
