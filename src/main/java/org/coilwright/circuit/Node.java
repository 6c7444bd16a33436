package org.coilwright.circuit;

import java.util.List;
import org.coilwright.netlist.Terminal;
import org.jspecify.annotations.Nullable;

/**
 * A point of the circuit. Mostly one terminal; the bridged clamps of a terminal strip are one node;
 * the star point inside a load is a node without a terminal.
 *
 * @param name its first terminal, or {@code E1.star} for an inner point; unique in a circuit
 * @param terminals every terminal that is this node, sorted
 */
public record Node(String name, List<Terminal> terminals) {
  // written out: what the compiler makes of a record is put together at run time, at each start
  @Override
  public boolean equals(@Nullable Object other) {
    return this == other
        || (other instanceof Node that
            && name.equals(that.name)
            && terminals.equals(that.terminals));
  }

  /** Names are unique in a circuit; a long strip of clamps shall not be hashed at every look-up. */
  @Override
  public int hashCode() {
    return name.hashCode();
  }

  @Override
  public String toString() {
    return name;
  }
}
