package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.IntFunction;
import org.coilwright.diagram.Unit.Port;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;

/** The units of an area and the conductors at them; what lies elsewhere stands as a reference. */
final class Fabric {
  /** Number of a joint that stands for a terminal drawn in two places, not for a conductor. */
  static final int SAME_TERMINAL = -1;

  private final Area area;
  private final List<Unit> units;
  private final List<Joint> joints = new ArrayList<>();
  private final Map<Port, List<Joint>> at = new HashMap<>();
  private final Map<Terminal, List<Port>> ports = new HashMap<>();
  private final Map<String, Unit> references = new LinkedHashMap<>();

  Fabric(Area area, List<Wire> wires, IntFunction<List<String>> words) {
    this.area = area;
    this.units = new ArrayList<>(area.units());
    for (Unit unit : area.units()) {
      for (Port port : unit.ports()) {
        ports.computeIfAbsent(port.terminal(), t -> new ArrayList<>()).add(port);
      }
    }
    for (int i = 0; i < wires.size(); i++) {
      Terminal from = wires.get(i).from().value();
      Terminal to = wires.get(i).to().value();
      boolean fromHere = ports.containsKey(from);
      boolean toHere = ports.containsKey(to);
      if (fromHere && toHere) {
        join(i, from, to, words.apply(i));
      } else if (fromHere || toHere) {
        refer(i, fromHere ? from : to, fromHere ? to : from, words.apply(i));
      }
    }
    ports.forEach(this::sameTerminal);
  }

  private void join(int number, Terminal from, Terminal to, List<String> lines) {
    Port a = any(from);
    Port b = any(to);
    boolean clampA = a.unit().look() == Look.CLAMPS;
    boolean clampB = b.unit().look() == Look.CLAMPS;
    if (clampA && clampB) {
      // downwards in the order of the netlist
      a = side(from, false);
      b = side(to, true);
    } else if (clampA) {
      a = side(from, !b.isTop());
    } else if (clampB) {
      b = side(to, !a.isTop());
    }
    add(new Joint(number, a, b, lines));
  }

  private void refer(int number, Terminal here, Terminal elsewhere, List<String> lines) {
    Port port = any(here);
    if (port.unit().look() == Look.CLAMPS) {
      port = side(here, !area.power());
    }
    boolean above = port.isTop();
    Unit reference =
        references.computeIfAbsent(
            elsewhere + (above ? " above" : " below"),
            name -> {
              Unit unit =
                  new Unit(name, elsewhere.part(), above ? Look.FROM : Look.TO, List.of(), "");
              units.add(unit);
              return above ? unit.bottom(0, elsewhere.pin()) : unit.top(0, elsewhere.pin());
            });
    add(new Joint(number, port, reference.ports().get(0), lines));
  }

  private void sameTerminal(Terminal terminal, List<Port> same) {
    if (same.get(0).unit().look() != Look.CLAMPS) {
      for (int i = 1; i < same.size(); i++) {
        add(new Joint(SAME_TERMINAL, same.get(i - 1), same.get(i), List.of()));
      }
    }
  }

  private void add(Joint joint) {
    joints.add(joint);
    at.computeIfAbsent(joint.a(), p -> new ArrayList<>()).add(joint);
    at.computeIfAbsent(joint.b(), p -> new ArrayList<>()).add(joint);
  }

  private Port any(Terminal terminal) {
    return ports.getOrDefault(terminal, List.of()).get(0);
  }

  private Port side(Terminal terminal, boolean top) {
    return ports.getOrDefault(terminal, List.of()).stream()
        .filter(p -> p.isTop() == top)
        .findFirst()
        .orElseGet(() -> any(terminal));
  }

  Area area() {
    return area;
  }

  /** The units of the area, then the references. */
  List<Unit> units() {
    return units;
  }

  List<Joint> joints() {
    return joints;
  }

  /** The conductors at a port, in the order of the netlist. One to itself stands twice. */
  List<Joint> at(Port port) {
    return at.getOrDefault(port, List.of());
  }

  /** True if a port has more than one conductor, so that it is drawn as a bar. */
  boolean isBar(Port port) {
    return at(port).size() > 1;
  }

  /** Conductors between two units that belong together, not counting references. */
  Set<Unit> neighbours(Unit unit) {
    Set<Unit> near = new HashSet<>();
    for (Port port : unit.ports()) {
      for (Joint joint : at(port)) {
        near.add(joint.other(port).unit());
      }
    }
    return near;
  }
}
