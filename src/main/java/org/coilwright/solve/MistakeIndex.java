package org.coilwright.solve;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.coilwright.circuit.Mistake;
import org.coilwright.solve.DeadCircuit.Measured;

/**
 * Which mistakes a measurement can feel: those that touch a block between its leads, and those that
 * join parts of the circuit between which the leads lie. All others leave its reading as it is.
 */
public final class MistakeIndex {
  private final DeadCircuit circuit;
  private final Map<Integer, List<Integer>> atBlock = new HashMap<>();
  private final Map<Integer, List<Integer>> joining = new HashMap<>();
  private final List<Set<Integer>> parts = new ArrayList<>();

  /** An index of these, which are called by their places in the list. */
  public MistakeIndex(DeadCircuit circuit, List<Mistake> mistakes) {
    this.circuit = circuit;
    for (int i = 0; i < mistakes.size(); i++) {
      int number = i;
      int[] joined = circuit.joinedBy(mistakes.get(i));
      circuit.blocksOf(mistakes.get(i), joined).stream()
          .forEach(b -> atBlock.computeIfAbsent(b, k -> new ArrayList<>(2)).add(number));
      Set<Integer> of = partsOf(joined);
      parts.add(of);
      if (of.size() > 1) {
        of.forEach(part -> joining.computeIfAbsent(part, k -> new ArrayList<>(2)).add(number));
      }
    }
  }

  private Set<Integer> partsOf(int[] nodes) {
    Set<Integer> of = new HashSet<>();
    IntStream.of(nodes).forEach(node -> of.add(circuit.part(node)));
    return of;
  }

  /** Their places, ascending. */
  public List<Integer> felt(Measured measured) {
    Set<Integer> felt = new TreeSet<>();
    BitSet blocks = measured.blocks();
    for (int b = blocks.nextSetBit(0); b >= 0; b = blocks.nextSetBit(b + 1)) {
      felt.addAll(atBlock.getOrDefault(b, List.of()));
    }
    Set<Integer> own = partsOf(measured.points());
    if (own.size() > 1) {
      // one that joins two of them is in the list of each: the longest need not be gone through
      int longest = own.stream().max((a, b) -> Integer.compare(joins(a), joins(b))).orElseThrow();
      for (int part : own) {
        if (part != longest) {
          joining.getOrDefault(part, List.of()).stream()
              .filter(m -> parts.get(m).stream().filter(own::contains).limit(2).count() > 1)
              .forEach(felt::add);
        }
      }
    }
    return List.copyOf(felt);
  }

  private int joins(int part) {
    return joining.getOrDefault(part, List.of()).size();
  }
}
