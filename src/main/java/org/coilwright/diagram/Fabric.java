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
  private final Map<Port, List<Away>> away = new LinkedHashMap<>();

  /** A conductor that goes to where it is drawn as well. */
  private record Away(int number, Terminal to) {}

  /**
   * @param earlier terminals of the areas before: what goes there is drawn here once more, what
   *     goes to later areas may be listed
   */
  Fabric(Area area, List<Wire> wires, IntFunction<List<String>> words, Set<Terminal> earlier) {
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
        Terminal elsewhere = fromHere ? to : from;
        Port port = facing(fromHere ? from : to);
        if (earlier.contains(elsewhere)) {
          refer(i, port, elsewhere, words.apply(i));
        } else {
          away.computeIfAbsent(port, p -> new ArrayList<>()).add(new Away(i, elsewhere));
        }
      }
    }
    away.forEach(
        (port, conductors) -> {
          if (conductors.size() == 1) {
            int number = conductors.get(0).number();
            refer(number, port, conductors.get(0).to(), words.apply(number));
          } else {
            list(port, conductors, words);
          }
        });
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

  /** Conductors that no area draws, each from reference to reference. */
  Fabric(Area area, List<Wire> wires, IntFunction<List<String>> words, List<Integer> numbers) {
    this.area = area;
    this.units = new ArrayList<>();
    for (int number : numbers) {
      Port from = reference(wires.get(number).from().value(), true);
      Port to = reference(wires.get(number).to().value(), false);
      add(new Joint(number, from, to, words.apply(number)));
    }
  }

  private Port facing(Terminal here) {
    Port port = any(here);
    return port.unit().look() == Look.CLAMPS ? side(here, !area.power()) : port;
  }

  /** The terminal drawn long, with a list of what goes on from it. */
  private void list(Port port, List<Away> conductors, IntFunction<List<String>> words) {
    List<String> lines =
        conductors.stream()
            .map(c -> words.apply(c.number()).get(0) + " " + c.to() + "\t" + c.to())
            .toList();
    Terminal terminal = port.terminal();
    boolean above = port.isTop();
    Unit unit =
        new Unit(
            terminal + (above ? " listed above" : " listed below"),
            terminal.part(),
            above ? Look.LIST_ABOVE : Look.LIST_BELOW,
            lines,
            false);
    units.add(unit);
    Unit ended = above ? unit.bottom(0, terminal.pin()) : unit.top(0, terminal.pin());
    add(new Joint(SAME_TERMINAL, port, ended.ports().get(0), List.of()));
  }

  private void refer(int number, Port port, Terminal elsewhere, List<String> lines) {
    add(new Joint(number, port, reference(elsewhere, port.isTop()), lines));
  }

  private Port reference(Terminal elsewhere, boolean above) {
    return references
        .computeIfAbsent(
            elsewhere + (above ? " above" : " below"),
            name -> {
              Unit unit =
                  new Unit(name, elsewhere.part(), above ? Look.FROM : Look.TO, List.of(), false);
              units.add(unit);
              return above ? unit.bottom(0, elsewhere.pin()) : unit.top(0, elsewhere.pin());
            })
        .ports()
        .get(0);
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
