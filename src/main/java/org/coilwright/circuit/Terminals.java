package org.coilwright.circuit;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;

/** Which node each terminal is. Both sides of a clamp are one node, and so are bridged clamps. */
final class Terminals {
  private final Map<Terminal, Node> byTerminal = new LinkedHashMap<>();
  private final List<Node> nodes = new ArrayList<>();

  Terminals(Netlist netlist) {
    netlist.parts().values().forEach(this::add);
  }

  private void add(Part part) {
    if (part instanceof Part.TerminalStrip strip) {
      addClamps(strip);
    } else {
      part.pins().forEach(pin -> add(List.of(new Terminal(part.name(), pin))));
    }
  }

  private void addClamps(Part.TerminalStrip strip) {
    Map<String, List<String>> groups = new HashMap<>();
    strip.pins().forEach(pin -> groups.put(pin, new ArrayList<>(List.of(pin))));
    for (List<String> bridge : strip.bridged()) {
      for (String pin : bridge) {
        join(groups, bridge.get(0), pin);
      }
    }
    for (String pin : strip.pins()) {
      Terminal clamp = new Terminal(strip.name(), pin);
      if (!byTerminal.containsKey(clamp)) {
        add(groups.getOrDefault(pin, List.of(pin)).stream().map(p -> clampOf(strip, p)).toList());
      }
    }
  }

  /** The smaller group goes into the larger, so that a long strip stays quick. */
  private static void join(Map<String, List<String>> groups, String first, String second) {
    List<String> one = groups.get(first);
    List<String> other = groups.get(second);
    if (one == null || other == null || one == other) {
      return;
    }
    List<String> large = one.size() >= other.size() ? one : other;
    List<String> small = large == one ? other : one;
    large.addAll(small);
    small.forEach(pin -> groups.put(pin, large));
  }

  private static Terminal clampOf(Part.TerminalStrip strip, String pin) {
    return new Terminal(strip.name(), pin);
  }

  private void add(List<Terminal> terminals) {
    List<Terminal> sorted = terminals.stream().sorted().toList();
    Node node = new Node(sorted.get(0).toString(), sorted);
    nodes.add(node);
    sorted.forEach(t -> byTerminal.put(t, node));
  }

  /** A node inside a part, without a terminal. */
  Node inner(String name) {
    Node node = new Node(name, List.of());
    nodes.add(node);
    return node;
  }

  Optional<Node> find(Terminal terminal) {
    return Optional.ofNullable(byTerminal.get(terminal));
  }

  /**
   * The node of a pin that a part says it has.
   *
   * @throws IllegalArgumentException if no part has it: the reader lets no such netlist through
   */
  Node at(Terminal terminal) {
    return find(terminal)
        .orElseThrow(() -> new IllegalArgumentException("no part has the terminal " + terminal));
  }

  List<Node> nodes() {
    return nodes;
  }
}
