package org.coilwright.solve;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Deque;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Node;

/**
 * What leads the known potentials of a zone to its circuits and never opens: wires and the poles of
 * protective devices.
 */
final class Feed {
  private final Setup setup;
  private final Reference reference;
  private final Alteration alteration;

  /** The first branch on the way back from a node to its potential. */
  private final Map<Node, Branch> towards = new HashMap<>();

  /** The known node that each node is fed from, known ones from themselves. */
  private final Map<Node, Node> rootOf = new LinkedHashMap<>();

  private final Map<Node, List<Branch>> at = new HashMap<>();
  private final Set<Branch> branches = new LinkedHashSet<>();
  private boolean meshed;
  private boolean shorted;

  /** Follows the feed of a zone from every known potential. */
  Feed(Setup setup, List<Branch> part, Reference reference, Alteration alteration) {
    this.setup = setup;
    this.reference = reference;
    this.alteration = alteration;
    grow(part);
  }

  private void grow(List<Branch> part) {
    Map<Node, List<Branch>> ways = new HashMap<>();
    Deque<Node> open = new ArrayDeque<>();
    for (Branch branch : part) {
      boolean leads = neverOpens(branch);
      for (Node node : List.of(branch.from(), branch.to())) {
        if (reference.isKnown(node) && rootOf.putIfAbsent(node, node) == null) {
          open.add(node);
        }
        if (leads) {
          ways.computeIfAbsent(node, n -> new ArrayList<>(2)).add(branch);
        }
      }
    }
    while (!open.isEmpty()) {
      Node node = open.remove();
      for (Branch branch : ways.getOrDefault(node, List.of())) {
        if (branches.add(branch)) {
          follow(node, branch, open);
        }
      }
    }
  }

  private void follow(Node node, Branch branch, Deque<Node> open) {
    at.computeIfAbsent(branch.from(), n -> new ArrayList<>(2)).add(branch);
    at.computeIfAbsent(branch.to(), n -> new ArrayList<>(2)).add(branch);
    Node root = rootOf.getOrDefault(node, node);
    Node other = branch.other(node);
    Node known = rootOf.putIfAbsent(other, root);
    if (known == null) {
      towards.put(other, branch);
      open.add(other);
    } else {
      shorted |= !reference.way(known).equals(reference.way(root));
      meshed = true;
    }
  }

  private boolean neverOpens(Branch branch) {
    if (alteration.gone().contains(branch)) {
      return false;
    }
    if (branch instanceof Contact contact && setup.variables.of(contact.actuator()) < 0) {
      return alteration.bridged().contains(branch)
          || setup.elements.of(branch, 0, 0, 1).conductsWhen();
    }
    return branch instanceof Conductor;
  }

  /** True if it joins two potentials. */
  boolean isShorted() {
    return shorted;
  }

  boolean holds(Branch branch) {
    return branches.contains(branch);
  }

  Set<Branch> branches() {
    return branches;
  }

  /** True if it comes to a node. */
  boolean reaches(Node node) {
    return rootOf.containsKey(node);
  }

  /** The sources that lead to what a node is fed from; none also where nothing feeds it. */
  List<Reference.Leg> potential(Node node) {
    return reference.way(rootOf.getOrDefault(node, node));
  }

  /** The known nodes that it starts from. */
  List<Node> roots() {
    return rootOf.keySet().stream().filter(reference::isKnown).toList();
  }

  /** The part of it between the known potentials and some of its nodes. */
  Set<Branch> upTo(Collection<Node> ends) {
    if (meshed) {
      return pruned(ends);
    }
    Set<Branch> way = new LinkedHashSet<>();
    for (Node end : ends) {
      Node node = end;
      Branch branch = towards.get(node);
      while (branch != null && way.add(branch)) {
        node = branch.other(node);
        branch = towards.get(node);
      }
    }
    return way;
  }

  /** All of it but its dead ends, as seen from these nodes. */
  private Set<Branch> pruned(Collection<Node> ends) {
    Map<Node, Integer> degree = new HashMap<>();
    at.forEach((node, here) -> degree.put(node, here.size()));
    Set<Branch> left = new LinkedHashSet<>(branches);
    Deque<Node> dead = new ArrayDeque<>();
    degree.forEach(
        (node, count) -> {
          if (count == 1 && isDead(node, ends)) {
            dead.add(node);
          }
        });
    while (!dead.isEmpty()) {
      Node node = dead.remove();
      for (Branch branch : at.getOrDefault(node, List.of())) {
        if (left.remove(branch)) {
          Node other = branch.other(node);
          if (degree.merge(other, -1, Integer::sum) == 1 && isDead(other, ends)) {
            dead.add(other);
          }
        }
      }
    }
    return left;
  }

  private boolean isDead(Node node, Collection<Node> ends) {
    return !ends.contains(node) && !reference.isKnown(node);
  }
}
