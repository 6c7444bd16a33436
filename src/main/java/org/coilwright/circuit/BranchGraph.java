package org.coilwright.circuit;

import static java.util.stream.Collectors.toCollection;

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
import org.jgrapht.alg.connectivity.ConnectivityInspector;
import org.jgrapht.graph.AbstractBaseGraph;
import org.jgrapht.graph.DefaultGraphSpecificsStrategy;
import org.jgrapht.graph.DefaultGraphType;
import org.jspecify.annotations.Nullable;

/**
 * Nodes and branches as a graph that allows parallel branches and branches back to the same node.
 */
final class BranchGraph {
  private final Graph<Node, Branch> graph = new Wiring();
  private final List<Node> nodes;
  private final List<Branch> branches;

  /**
   * A pseudograph without the index of neighbours that JGraphT keeps by default: nothing here asks
   * which branches join two given nodes, and in a large panel the index costs half the time.
   */
  private static final class Wiring extends AbstractBaseGraph<Node, Branch> {
    Wiring() {
      super(null, null, DefaultGraphType.pseudograph(), new DefaultGraphSpecificsStrategy<>());
    }
  }

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

  /**
   * Breadth first, so the tree it leaves behind holds shortest ways.
   *
   * @param to the node that is looked for; without one all are
   */
  private Map<Node, Optional<Branch>> tree(
      Collection<Node> from, @Nullable Node to, Predicate<? super Branch> through) {
    Map<Node, Optional<Branch>> cameBy = new LinkedHashMap<>();
    Deque<Node> open = new ArrayDeque<>(from);
    from.forEach(node -> cameBy.put(node, Optional.empty()));
    while (!open.isEmpty() && (to == null || !cameBy.containsKey(to))) {
      Node node = open.remove();
      for (Branch branch : graph.edgesOf(node)) {
        Node next = branch.other(node);
        if (!cameBy.containsKey(next) && through.test(branch)) {
          cameBy.put(next, Optional.of(branch));
          open.add(next);
        }
      }
    }
    return cameBy;
  }

  Set<Node> reach(Collection<Node> from, Predicate<? super Branch> through) {
    return tree(from, null, through).keySet();
  }

  Optional<Path> path(Collection<Node> from, Node to, Predicate<? super Branch> through) {
    return new ShortestWays(tree(from, to, through)).to(to);
  }

  ShortestWays ways(Node from, Predicate<? super Branch> through) {
    return new ShortestWays(tree(Set.of(from), null, through));
  }

  /** Ways through the branches that {@code through} admits. */
  Routes routes(Predicate<? super Branch> through) {
    return new Routes(new Blocks(nodes, graph::edgesOf, through));
  }

  Set<Branch> bridges(Island island) {
    Set<Branch> alone =
        new Blocks(island.nodes(), graph::edgesOf, b -> true)
            .all().stream()
                .filter(block -> block.branches().size() == 1)
                .map(block -> block.branches().get(0))
                .collect(toCollection(HashSet::new));
    return island.branches().stream()
        .filter(alone::contains)
        .collect(toCollection(LinkedHashSet::new));
  }
}
