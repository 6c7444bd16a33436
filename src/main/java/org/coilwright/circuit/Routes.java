package org.coilwright.circuit;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;
import org.coilwright.circuit.Branch.Path;

/**
 * The ways through some of a circuit's branches: prepared once, then asked about as many pairs of
 * nodes as one likes, each at the cost of what lies between the two.
 */
public final class Routes {
  private final Blocks blocks;

  Routes(Blocks blocks) {
    this.blocks = blocks;
  }

  /**
   * Simple paths between two nodes, shortest first, at most {@code most}. Among paths of one length
   * the order is the same every time and means nothing.
   */
  public List<Path> between(Node from, Node to, int most) {
    if (from.equals(to)) {
      return List.of(new Path(List.of(from), List.of()));
    }
    List<Blocks.Block> between = blocks.between(from, to);
    return between.isEmpty() ? List.of() : new Search(between, from, to).paths(most);
  }

  /** Simple paths as above, as many as a person could want to follow. */
  public List<Path> between(Node from, Node to) {
    return between(from, to, Circuit.MOST_PATHS);
  }

  /** The shortest way between two nodes, if there is one. */
  public Optional<Path> shortest(Node from, Node to) {
    return between(from, to, 1).stream().findFirst();
  }

  /**
   * The shortest way that admitted branches make, found breadth first; among ways of one length
   * that whose branches come first in some order.
   */
  Optional<Path> shortest(
      Node from, Node to, Predicate<? super Branch> admitted, ToIntFunction<Branch> place) {
    if (from.equals(to)) {
      return Optional.of(new Path(List.of(from), List.of()));
    }
    List<Blocks.Block> between = blocks.between(from, to);
    return between.isEmpty()
        ? Optional.empty()
        : new Search(between, from, to, place).shortest(admitted);
  }

  /** True if a way leads from one node to the other without any of these branches. */
  public boolean leadWithout(Collection<? extends Branch> without, Node from, Node to) {
    if (from.equals(to)) {
      return true;
    }
    List<Blocks.Block> between = blocks.between(from, to);
    return !between.isEmpty() && new Search(between, from, to).canPass(Set.copyOf(without));
  }

  /** Branches that every way between two nodes passes; none if there is no way. */
  public List<Branch> inevitable(Node from, Node to) {
    return blocks.between(from, to).stream()
        .filter(block -> block.branches().size() == 1)
        .map(block -> block.branches().get(0))
        .toList();
  }

  /**
   * A path on the way to being found.
   *
   * @param parted how many of its branches it has in common with the path it was derived from
   */
  private record Found(List<Node> nodes, List<Branch> branches, int parted) {
    int length() {
      return branches.size();
    }
  }

  /**
   * Yen's algorithm (Management Science 17, 1971) as Lawler trimmed it: each next path leaves one
   * that is known at some node and goes on from there the shortest way not yet taken. Written out
   * here because every branch counts one, which makes it many times quicker than JGraphT's, and
   * because a check of a small circuit then need not load that.
   */
  private static final class Search {
    private final Map<Node, List<Branch>> at = new HashMap<>();
    private final Node from;
    private final Node to;

    Search(List<Blocks.Block> blocks, Node from, Node to) {
      this.from = from;
      this.to = to;
      for (Blocks.Block block : blocks) {
        for (Branch branch : block.branches()) {
          at.computeIfAbsent(branch.from(), n -> new ArrayList<>()).add(branch);
          at.computeIfAbsent(branch.to(), n -> new ArrayList<>()).add(branch);
        }
      }
    }

    /** As above, each node's branches in the order of their places. */
    Search(List<Blocks.Block> blocks, Node from, Node to, ToIntFunction<Branch> place) {
      this(blocks, from, to);
      at.values().forEach(branches -> branches.sort(Comparator.comparingInt(place)));
    }

    Optional<Path> shortest(Predicate<? super Branch> admitted) {
      at.values().forEach(branches -> branches.removeIf(admitted.negate()));
      return shortest(List.of(), List.of(from), Set.of())
          .map(found -> new Path(found.nodes(), found.branches()));
    }

    List<Path> paths(int most) {
      List<Found> known = new ArrayList<>();
      PriorityQueue<Ranked> candidates =
          new PriorityQueue<>(
              Comparator.comparingInt((Ranked r) -> r.found().length())
                  .thenComparingInt(Ranked::rank));
      int rank = 0;
      Optional<Found> first = shortest(List.of(), List.of(from), Set.of());
      if (first.isPresent()) {
        candidates.add(new Ranked(first.get(), rank++));
      }
      while (known.size() < most && !candidates.isEmpty()) {
        Found next = candidates.remove().found();
        known.add(next);
        for (int i = next.parted(); i < next.length(); i++) {
          Optional<Found> other = leaving(next, i, known);
          if (other.isPresent()) {
            candidates.add(new Ranked(other.get(), rank++));
          }
        }
      }
      return known.stream().map(f -> new Path(f.nodes(), f.branches())).toList();
    }

    private record Ranked(Found found, int rank) {}

    boolean canPass(Set<Branch> closed) {
      Set<Node> seen = new HashSet<>(List.of(from));
      Deque<Node> open = new ArrayDeque<>(seen);
      while (!open.isEmpty() && !seen.contains(to)) {
        Node node = open.remove();
        for (Branch branch : at.getOrDefault(node, List.of())) {
          Node next = branch.other(node);
          if (!closed.contains(branch) && seen.add(next)) {
            open.add(next);
          }
        }
      }
      return seen.contains(to);
    }

    /** The shortest path that leaves {@code path} after {@code shared} branches. */
    private Optional<Found> leaving(Found path, int shared, List<Found> known) {
      if (at.getOrDefault(path.nodes().get(shared), List.of()).size() < (shared == 0 ? 2 : 3)) {
        return Optional.empty();
      }
      List<Branch> root = path.branches().subList(0, shared);
      Set<Branch> taken = new HashSet<>();
      for (Found other : known) {
        if (other.length() > shared && other.branches().subList(0, shared).equals(root)) {
          taken.add(other.branches().get(shared));
        }
      }
      return shortest(root, path.nodes().subList(0, shared + 1), taken);
    }

    /** The shortest path that starts with {@code root} and goes on by none of {@code taken}. */
    private Optional<Found> shortest(List<Branch> root, List<Node> rootNodes, Set<Branch> taken) {
      Node start = rootNodes.get(rootNodes.size() - 1);
      Set<Node> seen = new HashSet<>(rootNodes);
      Map<Node, Branch> cameBy = new HashMap<>();
      Deque<Node> open = new ArrayDeque<>();
      open.add(start);
      while (!open.isEmpty() && !cameBy.containsKey(to)) {
        Node node = open.remove();
        for (Branch branch : at.getOrDefault(node, List.of())) {
          Node next = branch.other(node);
          if (!(node.equals(start) && taken.contains(branch)) && seen.add(next)) {
            cameBy.put(next, branch);
            open.add(next);
          }
        }
      }
      if (!cameBy.containsKey(to)) {
        return Optional.empty();
      }
      List<Node> nodes = new ArrayList<>();
      List<Branch> branches = new ArrayList<>();
      Node node = to;
      for (Branch by = cameBy.get(node); by != null; by = cameBy.get(node)) {
        nodes.add(node);
        branches.add(by);
        node = by.other(node);
      }
      Collections.reverse(nodes);
      Collections.reverse(branches);
      nodes.addAll(0, rootNodes);
      branches.addAll(0, root);
      return Optional.of(new Found(List.copyOf(nodes), List.copyOf(branches), root.size()));
    }
  }
}
