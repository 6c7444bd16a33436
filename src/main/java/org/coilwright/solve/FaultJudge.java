// Over 250 lines: one fault judged before, while and after it is stopped.
package org.coilwright.solve;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.DoubleSummaryStatistics;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.solve.LoadEffect.Effect;
import org.coilwright.solve.WorkTable.Work;

/** Lays what loads do with a fault beside what they do without it. */
final class FaultJudge {
  /** A load that takes less than this share of its rated power is off. */
  private static final double ON = 0.01;

  /** A change of power below this share is none. */
  private static final double SAME = 0.05;

  /**
   * Relays that act on one another in one group: beyond it no fault in it is looked at, for each
   * takes as many steps as there are relays, and each step asks all of them.
   */
  static final int MOST_ARMATURES = 48;

  private final Circuit circuit;
  private final Model whole;

  FaultJudge(Circuit circuit, Model whole) {
    this.circuit = circuit;
    this.whole = whole;
  }

  /**
   * What a fault does.
   *
   * @param broken the circuit with the fault in it, as far as it was looked at
   */
  record Judged(FaultCase fault, Optional<Model> broken) {}

  Judged judge(Fault fault, FaultReach.Affected affected) {
    if (affected.base().isEmpty() && affected.alteration().joints().isEmpty()) {
      return new Judged(
          new FaultCase(fault, List.of(), List.of(), Optional.empty(), true), Optional.empty());
    }
    if (affected.base().stream().anyMatch(g -> g.armatures() > MOST_ARMATURES)) {
      return new Judged(
          new FaultCase(fault, List.of(), List.of(), Optional.empty(), false), Optional.empty());
    }
    List<Exploration> base = whole.explorationsOf(affected.base());
    Model broken = whole.altered(affected.islands(), affected.alteration());
    List<Exploration> now = List.copyOf(broken.explorations.values());
    WorkTable before = WorkTable.of(base);
    WorkTable after = WorkTable.of(now);
    List<String> shorted = shorted(now);
    if (!before.complete || !after.complete || isUnsettled(base) || isUnsettled(now)) {
      return new Judged(
          new FaultCase(fault, List.of(), shorted, Optional.empty(), false), Optional.of(broken));
    }
    Map<String, Double> rated = WorkTable.rated(base);
    List<LoadEffect> effects = new ArrayList<>();
    Map<Actuator, WorkTable> opened = new HashMap<>();
    rated.forEach(
        (load, watts) ->
            compare(load, watts, before, after)
                .forEach(
                    (effect, rows) ->
                        effects.add(
                            new LoadEffect(
                                load,
                                effect,
                                rows.stream().map(r -> positions(r, before)).toList(),
                                effect == Effect.STAYS_ON || effect == Effect.STARTS_BY_ITSELF
                                    ? stops(load, ON * watts, affected, broken, after, opened)
                                    : List.of(),
                                effect == Effect.STAYS_ON
                                    && rows.stream()
                                        .noneMatch(
                                            r -> isOn(least(after.at(r), load), ON * watts))))));
    effects.sort(Comparator.comparing(LoadEffect::effect));
    return new Judged(
        new FaultCase(fault, List.copyOf(effects), shorted, Optional.empty(), true),
        Optional.of(broken));
  }

  private static boolean isUnsettled(List<Exploration> explorations) {
    return explorations.stream().flatMap(e -> e.group.zones.stream()).anyMatch(Zone::isUnsettled);
  }

  /** In which positions a load does otherwise, and how. */
  static Map<Effect, List<BitSet>> compare(
      String load, double rated, WorkTable before, WorkTable after) {
    Map<Effect, List<BitSet>> found = new EnumMap<>(Effect.class);
    // Where the protection of the mains opens, that it does so is all there is to tell.
    before.rows.forEach(
        (operated, was) -> {
          if (!was.isEmpty() && !before.isTripped(operated) && !after.isTripped(operated)) {
            effect(load, ON * rated, was, after.at(operated))
                .ifPresent(e -> found.computeIfAbsent(e, k -> new ArrayList<>()).add(operated));
          }
        });
    return found;
  }

  private static Optional<Effect> effect(String load, double on, List<Work> was, List<Work> is) {
    if (is.isEmpty()) {
      return Optional.of(Effect.UNSETTLED);
    }
    DoubleSummaryStatistics before =
        was.stream().mapToDouble(w -> w.watts(load)).summaryStatistics();
    DoubleSummaryStatistics now = is.stream().mapToDouble(w -> w.watts(load)).summaryStatistics();
    if (isOn(now.getMax(), on)) {
      if (!isOn(before.getMax(), on)) {
        return Optional.of(Effect.STAYS_ON);
      }
      // Both rests of a circuit that holds itself, and the fault leaves only the one that is on.
      if (!isOn(before.getMin(), on) && isOn(now.getMin(), on)) {
        return Optional.of(Effect.STARTS_BY_ITSELF);
      }
      if (now.getMax() > before.getMax() * (1 + SAME)) {
        return Optional.of(Effect.STRONGER);
      }
    }
    if (isOn(before.getMin(), on)) {
      if (!isOn(now.getMin(), on)) {
        return Optional.of(Effect.STAYS_OFF);
      }
      if (now.getMin() < before.getMin() * (1 - SAME)) {
        return Optional.of(Effect.WEAKER);
      }
    }
    if (isOn(before.getMax(), on) && !isOn(now.getMax(), on)) {
      return Optional.of(Effect.LETS_GO);
    }
    boolean live =
        is.stream().anyMatch(w -> !w.lines(load).isEmpty())
            && was.stream().allMatch(w -> w.lines(load).isEmpty());
    return live && !isOn(now.getMax(), on) ? Optional.of(Effect.STAYS_LIVE) : Optional.empty();
  }

  private static boolean isOn(double watts, double threshold) {
    return watts > 0 && watts >= threshold;
  }

  private static double most(List<Work> states, String load) {
    return states.stream().mapToDouble(w -> w.watts(load)).max().orElse(0);
  }

  private static double least(List<Work> states, String load) {
    return states.stream().mapToDouble(w -> w.watts(load)).min().orElse(0);
  }

  private Map<String, Boolean> positions(BitSet operated, WorkTable table) {
    Map<String, Boolean> positions = new LinkedHashMap<>();
    table.columns.forEach(
        c -> positions.put(whole.setup.variables.columns().get(c), operated.get(c)));
    return positions;
  }

  /**
   * Contacts with a position in which the load is off whatever the others do, then devices.
   *
   * @param opened what was found with each device open, for all loads
   */
  private List<Actuator> stops(
      String load,
      double on,
      FaultReach.Affected affected,
      Model broken,
      WorkTable after,
      Map<Actuator, WorkTable> opened) {
    List<Actuator> stops = new ArrayList<>();
    for (int column : after.columns) {
      for (boolean value : new boolean[] {false, true}) {
        boolean off =
            after.rows.entrySet().stream()
                .filter(r -> r.getKey().get(column) == value)
                .allMatch(r -> !isOn(most(r.getValue(), load), on));
        if (off) {
          stops.add(whole.setup.variables.actuator(column));
          break;
        }
      }
    }
    for (Actuator device : devices(affected)) {
      WorkTable table =
          opened.computeIfAbsent(
              device,
              d -> {
                Alteration open = affected.alteration().without(circuit.contactsOf(d));
                Model model = broken.altered(affected.islands(), open);
                return WorkTable.of(model.explorations.values());
              });
      if (table.rows.values().stream().allMatch(r -> !isOn(most(r, load), on))) {
        stops.add(device);
      }
    }
    return List.copyOf(stops);
  }

  /**
   * Protective devices that have no column of their own, in the order of the netlist: each is
   * opened by itself.
   */
  private Set<Actuator> devices(FaultReach.Affected affected) {
    Set<Contact> there = new HashSet<>();
    for (Circuit.Island island : affected.islands()) {
      for (Branch branch : island.branches()) {
        if (branch instanceof Contact contact) {
          there.add(contact);
        }
      }
    }
    Set<Actuator> devices = new LinkedHashSet<>();
    there.stream()
        .sorted(Comparator.comparingInt(circuit::place))
        .map(Contact::actuator)
        .filter(a -> a.kind() == Actuator.Kind.PROTECTIVE && whole.setup.variables.of(a) < 0)
        .forEach(devices::add);
    return devices;
  }

  private static List<String> shorted(List<Exploration> explorations) {
    Set<String> shorted = new LinkedHashSet<>();
    for (Exploration exploration : explorations) {
      for (BitSet moved : exploration.order()) {
        for (BitSet bits : exploration.steady.getOrDefault(moved, List.of())) {
          Situation situation = exploration.group.situation(bits);
          for (Zone zone : exploration.group.zones) {
            Ways.bare(situation.flow(zone, Corner.NOMINAL))
                .shorts()
                .forEach(s -> shorted.add(s.source().part()));
          }
        }
      }
    }
    return List.copyOf(shorted);
  }

  /** What a fault does in two pieces that do not act on one another. */
  static FaultCase both(FaultCase one, FaultCase other) {
    Set<LoadEffect> all = new LinkedHashSet<>(one.effects());
    all.addAll(other.effects());
    List<LoadEffect> effects = new ArrayList<>(all);
    effects.sort(Comparator.comparing(LoadEffect::effect));
    Set<String> shorted = new LinkedHashSet<>(one.shorted());
    shorted.addAll(other.shorted());
    return new FaultCase(
        one.fault(),
        List.copyOf(effects),
        List.copyOf(shorted),
        one.crossing().or(other::crossing),
        one.explored() && other.explored());
  }

  /** The worse of two, with the other's crossing and short-circuits. */
  static FaultCase worse(FaultCase one, FaultCase other) {
    FaultCase worst = other.harm().compareTo(one.harm()) < 0 ? other : one;
    Set<String> shorted = new LinkedHashSet<>(one.shorted());
    shorted.addAll(other.shorted());
    Optional<Crossing> crossing =
        one.crossing()
            .filter(c -> other.crossing().filter(d -> d.volts() > c.volts()).isEmpty())
            .or(other::crossing);
    return new FaultCase(
        worst.fault(),
        worst.effects(),
        List.copyOf(shorted),
        crossing,
        one.explored() && other.explored());
  }
}
