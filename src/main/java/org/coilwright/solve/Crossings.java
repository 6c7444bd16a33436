package org.coilwright.solve;

import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.circuit.Branch.Joint;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Circuit.Island;
import org.coilwright.circuit.Domain;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;

/** Whether a connection brings mains to an extra-low-voltage circuit, and how much of it. */
final class Crossings {
  /** Pins named in a message; a whole panel's would drown it. */
  private static final int MOST_PINS = 6;

  private final Circuit circuit;
  private final Map<Node, List<Zone>> zonesAt;
  private final Model whole;
  private final Map<Integer, List<String>> pins = new HashMap<>();
  private final Map<Node, Double> volts = new HashMap<>();

  Crossings(Circuit circuit, Map<Node, List<Zone>> zonesAt, Model whole) {
    this.circuit = circuit;
    this.zonesAt = zonesAt;
    this.whole = whole;
  }

  Optional<Crossing> of(Joint joint) {
    Island one = circuit.islandOf(joint.from());
    Island other = circuit.islandOf(joint.to());
    if (one.domain() == Domain.MAINS && isLow(other.domain())) {
      return Optional.of(new Crossing(pins(other), volts(joint.from())));
    }
    if (other.domain() == Domain.MAINS && isLow(one.domain())) {
      return Optional.of(new Crossing(pins(one), volts(joint.to())));
    }
    return Optional.empty();
  }

  private static boolean isLow(Domain domain) {
    return switch (domain) {
      case SELV, PELV, UNDECLARED_ELV -> true;
      case MAINS, NONE -> false;
    };
  }

  /** Where people meet it first: the supply's and the controller's terminals, then the rest. */
  private List<String> pins(Island island) {
    return pins.computeIfAbsent(island.number(), i -> handledFirst(island));
  }

  private List<String> handledFirst(Island island) {
    return island.nodes().stream()
        .flatMap(n -> n.terminals().stream())
        .sorted(Comparator.comparing((Terminal t) -> !isHandled(t)))
        .limit(MOST_PINS)
        .map(Terminal::toString)
        .toList();
  }

  private boolean isHandled(Terminal terminal) {
    Part part = circuit.netlist().parts().get(terminal.part());
    return part instanceof Part.Controller || part instanceof Part.DcSupply;
  }

  /** Highest to neutral in any reachable state; what a line feeds when its contact closes. */
  private double volts(Node node) {
    return volts.computeIfAbsent(node, this::highest);
  }

  private double highest(Node node) {
    double most = 0;
    for (Zone zone : zonesAt.getOrDefault(node, List.of())) {
      int index = zone.indexOf(node);
      Group group = whole.groupOf.get(zone);
      Exploration exploration = group == null ? null : whole.explorations.get(group);
      if (index < 0 || exploration == null) {
        continue;
      }
      for (List<BitSet> steady : exploration.steady.values()) {
        for (BitSet bits : steady) {
          Network.Flow flow =
              exploration.group.situation(bits).flow(zone, Corner.NOMINAL).alternating();
          if (flow.grounded[index]) {
            most = Math.max(most, Math.hypot(flow.vRe[index], flow.vIm[index]));
          }
        }
      }
    }
    return most;
  }
}
