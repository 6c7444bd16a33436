package org.coilwright.solve;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
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
 * What a fault is felt in, and which of it has to be looked at together: circuits that share no
 * more than a feed ({@link Feeds}) do not feel what happens in one of them.
 */
final class FaultReach {
  private final Circuit circuit;
  private final Model whole;
  private final Earth earth;
  private final Map<Node, List<Zone>> zonesThatFeel = new HashMap<>();

  FaultReach(Circuit circuit, Model whole, Earth earth) {
    this.circuit = circuit;
    this.whole = whole;
    this.earth = earth;
    for (Zone zone : whole.grid.zones) {
      for (Node node : zone.nodes) {
        if (!zone.reference.isKnown(node)) {
          zonesThatFeel.computeIfAbsent(node, k -> new ArrayList<>()).add(zone);
        }
      }
    }
  }

  /**
   * What a fault is felt in.
   *
   * @param base the groups as they are when whole
   * @param islands their branches, with those that are added, as islands of their own
   * @param alteration the fault, with the bond to earth if that makes a loop
   * @param feed what several circuits hang on and the fault joins to something
   */
  record Affected(Set<Group> base, List<Island> islands, Alteration alteration, Set<Branch> feed) {
    /** What is felt in it and in other groups too. */
    Set<Group> with(Collection<Group> others) {
      Set<Group> all = new LinkedHashSet<>(base);
      all.addAll(others);
      return all;
    }
  }

  /** What a fault is felt in, in pieces that do not act on one another; at least one. */
  List<Affected> of(Alteration way) {
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
    Set<Branch> feed = new LinkedHashSet<>();
    for (Joint joint : joints) {
      for (Node end : List.of(joint.from(), joint.to())) {
        List<Zone> zones = zonesThatFeel.getOrDefault(end, List.of());
        if (zones.size() > 1) {
          // a stiff feed: what hangs on it feels nothing of this
          shared(zones.get(0)).forEach(feed::add);
        } else {
          zones.forEach(z -> Optional.ofNullable(whole.groupOf.get(z)).ifPresent(groups::add));
        }
      }
    }
    for (String relay : way.stuck()) {
      circuit.branchesOf(relay).forEach(b -> groups.addAll(whole.groupsOf(b)));
    }
    Alteration all = way.with(joints);
    if (groups.size() < 2 || !joints.isEmpty() || leavesSeveral(way, groups)) {
      return List.of(affected(groups, all, feed));
    }
    return groups.stream().map(g -> affected(Set.of(g), all, feed)).toList();
  }

  /** A fault as it is felt in some groups. */
  Affected affected(Set<Group> groups, Alteration alteration, Set<Branch> feed) {
    return new Affected(groups, islands(groups, alteration.joints(), feed), alteration, feed);
  }

  /** Groups, with all that hang on the same feed as one of them. */
  Set<Group> withNeighbours(Collection<Group> groups) {
    Set<Group> all = new LinkedHashSet<>(groups);
    for (Group group : groups) {
      for (Zone zone : group.zones) {
        whole.grid.bundleOf(zone).stream()
            .flatMap(bundle -> bundle.circuits.stream())
            .flatMap(z -> Optional.ofNullable(whole.groupOf.get(z)).stream())
            .forEach(all::add);
      }
    }
    return all;
  }

  private List<Branch> shared(Zone zone) {
    return zone.elements.stream().map(Element::branch).filter(whole.grid::isShared).toList();
  }

  /**
   * True if something that groups share is lost and more than two potentials are left in them, as
   * where several lines lose their neutral: then loads lie in series and each feels the others.
   * With two left whatever lost one of them is dead.
   */
  private boolean leavesSeveral(Alteration way, Set<Group> groups) {
    if (way.gone().isEmpty()) {
      return false;
    }
    Set<Object> potentials = new HashSet<>();
    for (Group group : groups) {
      for (Zone zone : group.zones) {
        boolean feels =
            way.gone().stream()
                .anyMatch(
                    b -> zone.holds(b) || (b instanceof Source s && zone.sources().contains(s)));
        for (Node node : feels ? zone.nodes : List.<Node>of()) {
          List<Reference.Leg> legs = zone.reference.way(node);
          if (zone.reference.isKnown(node)
              && legs.stream().noneMatch(leg -> way.gone().contains(leg.source()))) {
            potentials.add(legs);
          }
        }
      }
    }
    return potentials.size() > 2;
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
  private List<Island> islands(
      Collection<Group> groups, List<Joint> joints, Collection<Branch> feed) {
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
    for (Branch branch : feed) {
      Island island = circuit.islandOf(branch.from());
      Set<Branch> of =
          branches.computeIfAbsent(root(merged, island.number()), i -> new LinkedHashSet<>());
      of.add(branch);
      of.addAll(island.sources());
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
