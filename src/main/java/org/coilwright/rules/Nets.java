package org.coilwright.rules;

import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.function.Predicate;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.solve.Study;
import org.jspecify.annotations.Nullable;

/** Which points of a circuit some kinds of branch make one, sorted once for all of them. */
final class Nets {
  private final Map<Node, Integer> numbers = new HashMap<>();

  private Nets(Circuit circuit, Predicate<? super Branch> joins) {
    int next = 0;
    for (Node node : circuit.nodes()) {
      if (!numbers.containsKey(node)) {
        int number = next++;
        circuit.reach(node, joins).forEach(reached -> numbers.put(reached, number));
      }
    }
  }

  /** Points that wires alone join; sorted once a study. */
  static Nets ofWires(Study study) {
    return study.derived(Nets.class, s -> ofWires(s.circuit()));
  }

  /** Points that wires alone join. */
  static Nets ofWires(Circuit circuit) {
    return new Nets(circuit, b -> b instanceof Branch.Conductor);
  }

  /** Points that wires and contacts, in any position, join. */
  static Nets ofWiresAndContacts(Circuit circuit) {
    return ofWaysAnd(circuit, b -> false);
  }

  /** The same, and what else is to count as a way. */
  static Nets ofWaysAnd(Circuit circuit, Predicate<? super Branch> also) {
    return new Nets(
        circuit, b -> b instanceof Branch.Conductor || b instanceof Branch.Contact || also.test(b));
  }

  /** True if the two are one. */
  boolean joined(Node one, Node other) {
    return number(one) == number(other);
  }

  /** The same for every point of a net, and different for different nets. */
  int number(Node node) {
    return Objects.requireNonNull(numbers.get(node), "a point of another circuit");
  }

  /** What names the pair of nets a branch lies between, whichever way round. */
  Pair ends(Branch branch) {
    int from = number(branch.from());
    int to = number(branch.to());
    return new Pair(Math.min(from, to), Math.max(from, to));
  }

  /** Two nets, the lower number first. */
  record Pair(int low, int high) {
    // written out: what the compiler makes of a record is put together at run time, at each start
    @Override
    public boolean equals(@Nullable Object other) {
      return other instanceof Pair that && low == that.low && high == that.high;
    }

    @Override
    public int hashCode() {
      return Objects.hash(low, high);
    }
  }
}
