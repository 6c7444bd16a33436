package org.coilwright.circuit;

import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;

/** What wires alone join, as drawn and with a mistake among them. */
final class WireNets {
  private final Circuit circuit;
  private final Map<Node, Integer> index = new HashMap<>();
  private final int[][] ends;
  private final int[] drawn;

  WireNets(Circuit circuit) {
    this.circuit = circuit;
    circuit.nodes().forEach(node -> index.put(node, index.size()));
    List<Wire> wires = circuit.netlist().wires();
    this.ends = new int[wires.size()][];
    for (int i = 0; i < ends.length; i++) {
      ends[i] = new int[] {at(wires.get(i).from().value()), at(wires.get(i).to().value())};
    }
    this.drawn = nets(ends);
  }

  /** True if the same terminals are joined as before; never for a part that was turned. */
  boolean isUnchanged(Mistake mistake) {
    int[][] built = ends.clone();
    for (Mistake.Laid laid : mistake.laid()) {
      built[laid.wire()] = new int[] {at(laid.from()), at(laid.to())};
    }
    mistake.leftOut().ifPresent(i -> built[i] = new int[] {0, 0});
    return mistake.turned().isEmpty() && Arrays.equals(drawn, nets(built));
  }

  private int at(Terminal terminal) {
    return circuit.find(terminal).map(node -> index.getOrDefault(node, 0)).orElse(0);
  }

  /** For each node the first node of its net. */
  private int[] nets(int[][] joined) {
    int[] net = new int[index.size()];
    Arrays.setAll(net, i -> i);
    for (int[] end : joined) {
      int one = first(net, end[0]);
      int other = first(net, end[1]);
      net[Math.max(one, other)] = Math.min(one, other);
    }
    for (int i = 0; i < net.length; i++) {
      net[i] = first(net, i);
    }
    return net;
  }

  private static int first(int[] net, int start) {
    int node = start;
    while (net[node] != node) {
      net[node] = net[net[node]];
      node = net[node];
    }
    return node;
  }
}
