package org.coilwright.circuit;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;

/**
 * The blocks of a graph: the largest parts that hold together whichever single node is taken out.
 * Blocks meet in single nodes and make up a tree, so whoever looks for the ways between two nodes
 * need look no further than the blocks between them.
 *
 * <p>Depth-first search with low points (Hopcroft and Tarjan 1973), with its own stack: JGraphT's
 * inspector recurses, and a ladder of ten thousand rungs is deeper than a thread's stack.
 */
final class Blocks {
  private final List<Block> all;

  /** The block by which a node hangs on the root of its tree; none for the root itself. */
  private final Map<Node, Block> above = new HashMap<>();

  /**
   * A block; a single branch if that branch is a bridge.
   *
   * @param number tells it from the others
   * @param top its node nearest to the root
   * @param branches its branches
   * @param depth how many blocks it is away from the root, itself included
   */
  record Block(int number, Node top, List<Branch> branches, int depth) {}

  /**
   * Finds them.
   *
   * @param branchesAt the branches that end at a node
   * @param through which of them count
   */
  Blocks(
      Iterable<Node> nodes,
      Function<Node, ? extends Iterable<Branch>> branchesAt,
      Predicate<? super Branch> through) {
    Search search = new Search(branchesAt, through);
    for (Node node : nodes) {
      if (!search.found.containsKey(node)) {
        search.from(node);
      }
    }
    // a block is complete before the one it hangs on: from the last to the first, depths are known
    List<Block> done = new ArrayList<>(search.complete.size());
    for (int i = search.complete.size() - 1; i >= 0; i--) {
      Complete found = search.complete.get(i);
      Block block = new Block(i, found.top(), found.branches(), depth(found.top()) + 1);
      done.add(block);
      for (Branch branch : block.branches()) {
        hang(branch.from(), block);
        hang(branch.to(), block);
      }
    }
    this.all = List.copyOf(done);
  }

  private void hang(Node node, Block block) {
    if (!node.equals(block.top())) {
      above.put(node, block);
    }
  }

  private int depth(Node node) {
    Block block = above.get(node);
    return block == null ? 0 : block.depth();
  }

  /** Every block. */
  List<Block> all() {
    return all;
  }

  /** The blocks between two nodes, in no order; none if no way leads from one to the other. */
  List<Block> between(Node from, Node to) {
    List<Block> passed = new ArrayList<>();
    Node one = from;
    Node other = to;
    while (!one.equals(other)) {
      Block oneUp = above.get(one);
      Block otherUp = above.get(other);
      if (oneUp != null && otherUp != null && oneUp.number() == otherUp.number()) {
        passed.add(oneUp);
        return passed;
      }
      boolean climbOne = depth(one) >= depth(other);
      Block climbed = climbOne ? oneUp : otherUp;
      if (climbed == null) {
        return List.of();
      }
      passed.add(climbed);
      if (climbOne) {
        one = climbed.top();
      } else {
        other = climbed.top();
      }
    }
    return passed;
  }

  /** A node that is being looked at, and how it was come by. */
  private record Step(Node node, Optional<Branch> by, Iterator<Branch> rest) {}

  private record Complete(Node top, List<Branch> branches) {}

  private static final class Search {
    private final Function<Node, ? extends Iterable<Branch>> branchesAt;
    private final Predicate<? super Branch> through;
    private final Map<Node, Integer> found = new HashMap<>();
    private final Map<Node, Integer> low = new HashMap<>();
    private final Deque<Step> open = new ArrayDeque<>();
    private final Deque<Branch> passed = new ArrayDeque<>();
    private final List<Complete> complete = new ArrayList<>();

    Search(
        Function<Node, ? extends Iterable<Branch>> branchesAt, Predicate<? super Branch> through) {
      this.branchesAt = branchesAt;
      this.through = through;
    }

    void from(Node root) {
      enter(root, Optional.empty());
      while (!open.isEmpty()) {
        Step step = open.getLast();
        if (step.rest().hasNext()) {
          follow(step, step.rest().next());
        } else {
          open.removeLast();
          step.by().ifPresent(by -> leave(step.node(), by, open.getLast().node()));
        }
      }
    }

    private void enter(Node node, Optional<Branch> by) {
      int now = found.size();
      found.put(node, now);
      low.put(node, now);
      open.addLast(new Step(node, by, branchesAt.apply(node).iterator()));
    }

    private void follow(Step step, Branch branch) {
      Node next = branch.other(step.node());
      if (next.equals(step.node())
          || step.by().filter(by -> by == branch).isPresent()
          || !through.test(branch)) {
        return;
      }
      Integer when = found.get(next);
      if (when == null) {
        passed.addLast(branch);
        enter(next, Optional.of(branch));
      } else if (when < foundAt(step.node())) {
        passed.addLast(branch);
        low.merge(step.node(), when, Math::min);
      }
    }

    private void leave(Node node, Branch by, Node parent) {
      int reached = low.getOrDefault(node, 0);
      low.merge(parent, reached, Math::min);
      if (reached < foundAt(parent)) {
        return;
      }
      List<Branch> branches = new ArrayList<>();
      Branch last;
      do {
        last = passed.removeLast();
        branches.add(last);
      } while (last != by);
      complete.add(new Complete(parent, branches));
    }

    private int foundAt(Node node) {
      return found.getOrDefault(node, 0);
    }
  }
}
