package org.coilwright.solve;

import java.util.BitSet;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;

/**
 * Finds which of a network's one-way elements conduct: those that would carry current backwards are
 * opened and those with more than their forward voltage are closed, until all agree.
 */
final class Gates {
  private static final double SLACK_VOLTS = 1e-9;
  private static final double SLACK_AMPS = 1e-12;

  /** Choices that are tried before it is said that none agrees with itself. */
  static final int MOST_CHOICES = 10_000;

  private Gates() {}

  /**
   * A one-way element.
   *
   * @param mark of its current in the flow
   * @param forward volts that it takes to conduct, and keeps while it does
   */
  record Gate(int mark, int from, int to, double forward) {}

  /**
   * What was found.
   *
   * @param open gates that conduct, by their place in the list
   * @param consistent false if no assignment agrees with itself
   */
  record Found(Network.Flow flow, BitSet open, boolean consistent) {}

  /** {@code network} solves for the gates that conduct. */
  static Found find(List<Gate> gates, Function<BitSet, Network.Flow> network) {
    return find(gates, new BitSet(), network);
  }

  /** The same, beginning with a guess. */
  static Found find(List<Gate> gates, BitSet guess, Function<BitSet, Network.Flow> network) {
    BitSet open = (BitSet) guess.clone();
    Network.Flow flow = network.apply(open);
    Set<BitSet> tried = new HashSet<>();
    boolean all = true;
    BitSet wrong = disagreeing(gates, flow, open);
    long most = Math.min(20L << Math.min(gates.size(), 14), MOST_CHOICES);
    for (long i = 0; !wrong.isEmpty() && i < most; i++) {
      all &= tried.add((BitSet) open.clone());
      if (all) {
        open.xor(wrong);
      } else {
        // Changing one at a time, always the first, ends for every circuit of diodes and resistors.
        open.flip(wrong.nextSetBit(0));
      }
      flow = network.apply(open);
      wrong = disagreeing(gates, flow, open);
    }
    return new Found(flow, open, wrong.isEmpty());
  }

  private static BitSet disagreeing(List<Gate> gates, Network.Flow flow, BitSet open) {
    BitSet wrong = new BitSet();
    for (int g = 0; g < gates.size(); g++) {
      Gate gate = gates.get(g);
      double volts = flow.vRe[gate.from()] - flow.vRe[gate.to()];
      boolean agrees =
          open.get(g)
              ? flow.iRe[gate.mark()] >= -SLACK_AMPS
              : volts <= gate.forward() + SLACK_VOLTS;
      wrong.set(g, !agrees);
    }
    return wrong;
  }
}
