package org.coilwright.circuit;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;

/** What is wired, as questions a person would ask. Nothing here knows a voltage. */
public interface Circuit {
  Netlist netlist();

  /** Every node, in the order of the netlist. */
  List<Node> nodes();

  /** The node a terminal belongs to; empty if no part has it. */
  Optional<Node> find(Terminal terminal);

  /** Every branch, in the order of the netlist: parts first, then wires. */
  List<Branch> branches();

  /** The branches of one kind, in the same order. */
  <B extends Branch> List<B> branches(Class<B> kind);

  /** The branches that belong to a part. */
  List<Branch> branchesOf(String part);

  /** The branches that end at a node. */
  List<Branch> branchesAt(Node node);

  /** The wires that end at this very terminal (not at its node's other terminals). */
  List<Wire> wiresAt(Terminal terminal);

  /** Everything that conducting branches of any kind and in any position join: galvanic islands. */
  List<Island> islands();

  /** The island of a node. */
  Island islandOf(Node node);

  /** All nodes that wires alone join to this one, itself included. */
  Set<Node> net(Node node);

  /**
   * Simple paths through branches that {@code through} admits, shortest first, at most {@code
   * most}.
   */
  List<Path> paths(Node from, Node to, Predicate<? super Branch> through, int most);

  /** The shortest path through admitted branches, if there is one. */
  Optional<Path> path(Node from, Node to, Predicate<? super Branch> through);

  /** Every node that admitted branches reach from {@code from}, itself included. */
  Set<Node> reach(Node from, Predicate<? super Branch> through);

  /** Branches whose loss alone parts an island in two. */
  Set<Branch> bridges(Island island);

  /** True if taking {@code removed} out leaves no way through admitted branches. */
  boolean cuts(
      Collection<? extends Branch> removed, Node from, Node to, Predicate<? super Branch> through);

  /**
   * Ways from a mains line or supply terminal to {@code load} that do not pass {@code contacts}.
   */
  List<Path> pathsAround(Collection<Contact> contacts, String load);

  /**
   * Actuators of the independent contacts, in the order of the netlist; coils and protective
   * devices left out.
   */
  List<Actuator> independentActuators();

  /** The contacts that an actuator moves. */
  List<Contact> contactsOf(Actuator actuator);

  /** A galvanic island. */
  record Island(int number, Set<Node> nodes, List<Branch> branches) {
    /** True if an alternating source (the mains) feeds it. */
    public boolean hasMains() {
      return branches.stream().anyMatch(b -> b instanceof Branch.Source s && !s.isDirect());
    }

    /** True if a direct source feeds it. */
    public boolean hasDirect() {
      return branches.stream().anyMatch(b -> b instanceof Branch.Source s && s.isDirect());
    }
  }
}
