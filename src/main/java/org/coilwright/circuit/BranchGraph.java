package org.coilwright.circuit;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Circuit.Island;
import org.jgrapht.Graph;
import org.jgrapht.GraphPath;
import org.jgrapht.alg.connectivity.ConnectivityInspector;
import org.jgrapht.alg.shortestpath.YenKShortestPath;
import org.jgrapht.graph.MaskSubgraph;
import org.jgrapht.graph.Pseudograph;

/**
 * Nodes and branches as a graph that allows parallel branches and branches back to the same node.
 */
final class BranchGraph {
  private final Graph<Node, Branch> graph = new Pseudograph<>(null, null, false);
  private final List<Node> nodes;
  private final List<Branch> branches;

  BranchGraph(List<Node> nodes, List<Branch> branches) {
    this.nodes = nodes;
    this.branches = branches;
    nodes.forEach(graph::addVertex);
    branches.forEach(b -> graph.addEdge(b.from(), b.to(), b));
  }

  List<Branch> branchesAt(Node node) {
    return graph.containsVertex(node) ? List.copyOf(graph.edgesOf(node)) : List.of();
  }

  /** Connected components, numbered from 1 in the order of their first node. */
  List<Island> islands() {
    Map<Node, Integer> number = new HashMap<>();
    List<Set<Node>> members = new ArrayList<>();
    for (Set<Node> component : new ConnectivityInspector<>(graph).connectedSets()) {
      component.forEach(node -> number.put(node, members.size()));
      members.add(component);
    }
    Map<Integer, Set<Node>> nodesOf = new LinkedHashMap<>();
    nodes.forEach(n -> nodesOf.computeIfAbsent(number.get(n), i -> new LinkedHashSet<>()).add(n));
    Map<Integer, List<Branch>> branchesOf = new HashMap<>();
    branches.forEach(
        b -> branchesOf.computeIfAbsent(number.get(b.from()), i -> new ArrayList<>()).add(b));
    List<Island> islands = new ArrayList<>();
    nodesOf.forEach(
        (component, set) ->
            islands.add(
                new Island(
                    islands.size() + 1,
                    Collections.unmodifiableSet(set),
                    List.copyOf(branchesOf.getOrDefault(component, List.of())))));
    return List.copyOf(islands);
  }

  /** Breadth first, so the tree it leaves behind holds shortest ways. */
  private Map<Node, Optional<Branch>> tree(
      Collection<Node> from, Predicate<? super Branch> through) {
    Map<Node, Optional<Branch>> cameBy = new LinkedHashMap<>();
    Deque<Node> open = new ArrayDeque<>(from);
    from.forEach(node -> cameBy.put(node, Optional.empty()));
    while (!open.isEmpty()) {
      Node node = open.remove();
      for (Branch branch : graph.edgesOf(node)) {
        Node next = branch.from().equals(node) ? branch.to() : branch.from();
        if (!cameBy.containsKey(next) && through.test(branch)) {
          cameBy.put(next, Optional.of(branch));
          open.add(next);
        }
      }
    }
    return cameBy;
  }

  Set<Node> reach(Collection<Node> from, Predicate<? super Branch> through) {
    return tree(from, through).keySet();
  }

  Optional<Path> path(Collection<Node> from, Node to, Predicate<? super Branch> through) {
    Map<Node, Optional<Branch>> cameBy = tree(from, through);
    if (!cameBy.containsKey(to)) {
      return Optional.empty();
    }
    List<Node> way = new ArrayList<>(List.of(to));
    List<Branch> by = new ArrayList<>();
    Node node = to;
    Optional<Branch> step = cameBy.getOrDefault(node, Optional.empty());
    while (step.isPresent()) {
      Branch branch = step.get();
      by.add(branch);
      node = branch.from().equals(node) ? branch.to() : branch.from();
      way.add(node);
      step = cameBy.getOrDefault(node, Optional.empty());
    }
    Collections.reverse(way);
    Collections.reverse(by);
    return Optional.of(new Path(List.copyOf(way), List.copyOf(by)));
  }

  List<Path> paths(Node from, Node to, Predicate<? super Branch> through, int most) {
    if (from.equals(to)) {
      return List.of(new Path(List.of(from), List.of()));
    }
    Set<Node> near = reach(List.of(from), through);
    if (!near.contains(to)) {
      return List.of();
    }
    Graph<Node, Branch> admitted =
        new MaskSubgraph<>(graph, n -> !near.contains(n), b -> !through.test(b));
    return new YenKShortestPath<>(admitted)
        .getPaths(from, to, most).stream().map(BranchGraph::path).toList();
  }

  private static Path path(GraphPath<Node, Branch> found) {
    return new Path(List.copyOf(found.getVertexList()), List.copyOf(found.getEdgeList()));
  }

  /**
   * Depth-first search with low points, with its own stack: JGraphT's inspector recurses, and a
   * ladder of ten thousand rungs is deeper than a thread's stack.
   */
  Set<Branch> bridges(Island island) {
    Map<Node, Integer> found = new HashMap<>();
    Map<Node, Integer> low = new HashMap<>();
    Set<Branch> bridges = new HashSet<>();
    for (Node root : island.nodes()) {
      if (!found.containsKey(root)) {
        search(root, found, low, bridges);
      }
    }
    return island.branches().stream()
        .filter(bridges::contains)
        .collect(java.util.stream.Collectors.toCollection(LinkedHashSet::new));
  }

  private record Step(Node node, Optional<Branch> by, java.util.Iterator<Branch> rest) {}

  private void search(
      Node root, Map<Node, Integer> found, Map<Node, Integer> low, Set<Branch> bridges) {
    Deque<Step> open = new ArrayDeque<>();
    enter(new Step(root, Optional.empty(), graph.edgesOf(root).iterator()), open, found, low);
    while (!open.isEmpty()) {
      Step step = open.getLast();
      if (!step.rest().hasNext()) {
        open.removeLast();
        leave(step, open, found, low, bridges);
        continue;
      }
      Branch branch = step.rest().next();
      if (step.by().filter(branch::equals).isPresent()) {
        continue;
      }
      Node next = branch.from().equals(step.node()) ? branch.to() : branch.from();
      Integer when = found.get(next);
      if (when == null) {
        enter(
            new Step(next, Optional.of(branch), graph.edgesOf(next).iterator()), open, found, low);
      } else {
        low.merge(step.node(), when, Math::min);
      }
    }
  }

  private static void enter(
      Step step, Deque<Step> open, Map<Node, Integer> found, Map<Node, Integer> low) {
    int now = found.size();
    found.put(step.node(), now);
    low.put(step.node(), now);
    open.addLast(step);
  }

  private static void leave(
      Step step,
      Deque<Step> open,
      Map<Node, Integer> found,
      Map<Node, Integer> low,
      Set<Branch> bridges) {
    if (open.isEmpty()) {
      return;
    }
    Node parent = open.getLast().node();
    int reached = low.getOrDefault(step.node(), 0);
    low.merge(parent, reached, Math::min);
    if (reached > found.getOrDefault(parent, 0)) {
      step.by().ifPresent(bridges::add);
    }
  }
}
