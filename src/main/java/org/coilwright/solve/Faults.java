// Over 250 lines: every kind of fault and how it is made.
package org.coilwright.solve;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Joint;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Circuit.Island;
import org.coilwright.circuit.Node;

/**
 * One thing broken at a time: what every load then does in every position, what still stops it, and
 * whether mains reaches an extra-low-voltage circuit. Only the groups that a fault touches are
 * solved again.
 */
public final class Faults {
  private final Circuit circuit;
  private final Model whole;
  private final Earth earth;
  private final Map<Node, List<Zone>> zonesAt = new HashMap<>();
  private final Map<Node, List<Zone>> zonesThatFeel = new HashMap<>();
  private final Starved starved;
  private final Crossings crossings;
  private final List<FaultCase> cases = new ArrayList<>();

  /**
   * A fault that brings mains to an extra-low-voltage circuit.
   *
   * @param crossing where it arrives, and how much of it
   */
  public record Crossed(Fault fault, Crossing crossing) {}

  private Faults(Study study) {
    this.circuit = study.circuit();
    this.whole = study.model();
    this.earth = Earth.of(circuit);
    for (Zone zone : whole.grid.zones) {
      for (Node node : zone.nodes) {
        zonesAt.computeIfAbsent(node, k -> new ArrayList<>()).add(zone);
        if (!zone.reference.isKnown(node)) {
          zonesThatFeel.computeIfAbsent(node, k -> new ArrayList<>()).add(zone);
        }
      }
    }
    this.starved = new Starved(whole);
    this.crossings = new Crossings(circuit, zonesAt, whole);
  }

  private Faults breaking(Set<Fault.Kind> kinds) {
    for (Breakage breakage : Breakages.of(circuit, earth)) {
      if (kinds.contains(breakage.fault().kind())) {
        cases.add(judge(breakage));
      }
    }
    return this;
  }

  /** Breaks everything in a circuit, one thing at a time. */
  public static Faults of(Study study) {
    return of(study, EnumSet.allOf(Fault.Kind.class));
  }

  /** Breaks what can break in these ways, one thing at a time. */
  public static Faults of(Study study, Set<Fault.Kind> kinds) {
    return new Faults(study).breaking(kinds);
  }

  /**
   * The faults that bring mains to an extra-low-voltage circuit, in the order of the netlist. What
   * the loads then do is not looked at, so that nothing is solved again.
   */
  public static List<Crossed> crossing(Study study) {
    Faults faults = new Faults(study);
    List<Crossed> found = new ArrayList<>();
    for (Breakage breakage : Breakages.of(faults.circuit, faults.earth)) {
      breakage.ways().stream()
          .flatMap(way -> faults.crossing(way).stream())
          .max(Comparator.comparingDouble(Crossing::volts))
          .ifPresent(crossing -> found.add(new Crossed(breakage.fault(), crossing)));
    }
    return List.copyOf(found);
  }

  /** Every fault, in the order of the netlist. */
  public List<FaultCase> cases() {
    return List.copyOf(cases);
  }

  /** Faults that behave alike taken together, the most harmful first. */
  public List<FaultClass> classes() {
    Map<Outcome, List<FaultCase>> alike = new LinkedHashMap<>();
    for (FaultCase one : cases) {
      Outcome outcome = new Outcome(one.effects(), one.shorted(), one.crossing(), one.explored());
      alike.computeIfAbsent(outcome, k -> new ArrayList<>()).add(one);
    }
    return alike.values().stream()
        .map(same -> new FaultClass(same.stream().map(FaultCase::fault).toList(), same.get(0)))
        .sorted(Comparator.comparing(c -> c.like().harm()))
        .toList();
  }

  /** What two faults share if they behave alike. */
  private record Outcome(
      List<LoadEffect> effects,
      List<String> shorted,
      Optional<Crossing> crossing,
      boolean explored) {}

  private FaultCase judge(Breakage breakage) {
    FaultCase worst = judge(breakage.fault(), breakage.ways().get(0));
    for (Alteration way : breakage.ways().subList(1, breakage.ways().size())) {
      worst = FaultJudge.worse(worst, judge(breakage.fault(), way));
    }
    return worst;
  }

  private FaultCase judge(Fault fault, Alteration way) {
    if (way.isNone()) {
      return new FaultCase(fault, List.of(), List.of(), Optional.empty(), true);
    }
    Affected affected = affected(way);
    FaultJudge judge = new FaultJudge(circuit, whole);
    FaultJudge.Judged own = judge.judge(fault, affected, crossing(way));
    FaultCase all = own.fault();
    for (Group other : own.broken().map(b -> starved.by(b, affected.base())).orElse(Set.of())) {
      Set<Group> both = new LinkedHashSet<>(affected.base());
      both.add(other);
      Alteration drawing = affected.alteration().drawing(starved.drawnBeside(both));
      Affected more = new Affected(both, islands(both, drawing.joints()), drawing);
      all = Starved.with(all, other, judge.judge(fault, more, Optional.empty()).fault());
    }
    return all;
  }

  private Optional<Crossing> crossing(Alteration way) {
    return way.joints().stream().flatMap(joint -> crossings.of(joint).stream()).findFirst();
  }

  /**
   * What a fault is felt in.
   *
   * @param base the groups as they are when whole
   * @param islands their branches, with those that are added, as islands of their own
   * @param alteration the fault, with the bond to earth if that makes a loop
   */
  record Affected(Collection<Group> base, List<Island> islands, Alteration alteration) {}

  private Affected affected(Alteration way) {
    Set<Group> groups = new LinkedHashSet<>();
    Set<Branch> touched = new LinkedHashSet<>(way.gone());
    touched.addAll(way.bridged());
    touched.addAll(way.atTop());
    for (Branch branch : touched) {
      if (branch instanceof Source source) {
        groups.addAll(whole.fedBy(source));
      }
      groups.addAll(whole.groupsOf(branch));
    }
    List<Joint> joints = new ArrayList<>();
    for (Joint joint : way.joints()) {
      if (closesLoop(joint)) {
        joints.add(joint);
        if (usesBond(joint)) {
          earth.bond().ifPresent(joints::add);
        }
      }
    }
    for (Joint joint : joints) {
      for (Node end : List.of(joint.from(), joint.to())) {
        zonesThatFeel.getOrDefault(end, List.of()).stream()
            .flatMap(z -> Optional.ofNullable(whole.groupOf.get(z)).stream())
            .forEach(groups::add);
      }
    }
    for (String relay : way.stuck()) {
      circuit.branchesOf(relay).forEach(b -> groups.addAll(whole.groupsOf(b)));
    }
    return new Affected(groups, islands(groups, joints), way.with(joints));
  }

  private boolean usesBond(Joint joint) {
    return earth.terminal().filter(t -> isOf(joint, circuit.islandOf(t).number())).isPresent();
  }

  private boolean isOf(Joint joint, int island) {
    return circuit.islandOf(joint.from()).number() == island
        || circuit.islandOf(joint.to()).number() == island;
  }

  /** A joint between islands that nothing else joins, not even earth, carries no current. */
  private boolean closesLoop(Joint joint) {
    Island one = circuit.islandOf(joint.from());
    Island other = circuit.islandOf(joint.to());
    if (one.number() == other.number()) {
      return true;
    }
    return earth
        .bond()
        .filter(
            bond -> {
              Set<Integer> bonded =
                  Set.copyOf(
                      List.of(
                          circuit.islandOf(bond.from()).number(),
                          circuit.islandOf(bond.to()).number()));
              return bonded.contains(one.number()) && bonded.contains(other.number());
            })
        .isPresent();
  }

  /** The groups' branches, the sources that feed them and the joints, by island. */
  private List<Island> islands(Collection<Group> groups, List<Joint> joints) {
    Map<Integer, Integer> merged = new HashMap<>();
    for (Joint joint : joints) {
      int one = root(merged, circuit.islandOf(joint.from()).number());
      int other = root(merged, circuit.islandOf(joint.to()).number());
      merged.put(Math.max(one, other), Math.min(one, other));
    }
    Map<Integer, Set<Branch>> branches = new LinkedHashMap<>();
    for (Group group : groups) {
      for (Zone zone : group.zones) {
        Set<Branch> of =
            branches.computeIfAbsent(
                root(merged, zone.island.number()), i -> new LinkedHashSet<>());
        zone.elements.forEach(e -> of.add(e.branch()));
        of.addAll(zone.reference.sources());
      }
    }
    for (Joint joint : joints) {
      Island island = circuit.islandOf(joint.from());
      Set<Branch> of =
          branches.computeIfAbsent(root(merged, island.number()), i -> new LinkedHashSet<>());
      of.add(joint);
      of.addAll(island.sources());
      of.addAll(circuit.islandOf(joint.to()).sources());
    }
    List<Island> islands = new ArrayList<>();
    branches.forEach(
        (number, of) -> {
          Set<Node> nodes = new LinkedHashSet<>();
          of.forEach(b -> nodes.addAll(List.of(b.from(), b.to())));
          islands.add(new Island(number, nodes, List.copyOf(of)));
        });
    return islands;
  }

  private static int root(Map<Integer, Integer> merged, int start) {
    int number = start;
    while (merged.getOrDefault(number, number) != number) {
      number = merged.getOrDefault(number, number);
    }
    return number;
  }
}
