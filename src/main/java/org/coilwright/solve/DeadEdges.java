package org.coilwright.solve;

import java.util.Arrays;
import java.util.BitSet;

/**
 * What joins the nodes of a circuit that is switched off, in plain arrays: it is copied and changed
 * for every mistake that is looked at.
 */
final class DeadEdges {
  int[] from;
  int[] to;

  /** Least ohms; infinite for what does not conduct. */
  double[] low;

  /** Most ohms. */
  double[] high;

  /** Conducts from {@code from} to {@code to} only. */
  boolean[] diode;

  /** An insulation test has it joined out: it would break down at the test voltage. */
  boolean[] suppressor;

  int count;

  DeadEdges(int capacity) {
    from = new int[capacity];
    to = new int[capacity];
    low = new double[capacity];
    high = new double[capacity];
    diode = new boolean[capacity];
    suppressor = new boolean[capacity];
  }

  /** The same, its ends to be changed. */
  DeadEdges copy() {
    DeadEdges copy = new DeadEdges(0);
    copy.from = from.clone();
    copy.to = to.clone();
    copy.low = low;
    copy.high = high;
    copy.diode = diode;
    copy.suppressor = suppressor;
    copy.count = count;
    return copy;
  }

  /** Adds one, and gives its number. */
  int add(int first, int second, Span ohms, boolean isDiode, boolean isSuppressor) {
    if (count == from.length) {
      int size = 2 * count + 8;
      from = Arrays.copyOf(from, size);
      to = Arrays.copyOf(to, size);
      low = Arrays.copyOf(low, size);
      high = Arrays.copyOf(high, size);
      diode = Arrays.copyOf(diode, size);
      suppressor = Arrays.copyOf(suppressor, size);
    }
    from[count] = first;
    to[count] = second;
    low[count] = ohms.low();
    high[count] = ohms.high();
    diode[count] = isDiode;
    suppressor[count] = isSuppressor;
    return count++;
  }

  /** Those that may carry current, one way at least. */
  BitSet conducting() {
    BitSet conducts = new BitSet();
    for (int i = 0; i < count; i++) {
      conducts.set(i, suppressor[i] || diode[i] || !Double.isInfinite(low[i]));
    }
    return conducts;
  }

  int other(int edge, int node) {
    return from[edge] == node ? to[edge] : from[edge];
  }
}
