package org.coilwright.diagram;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;

/** What stands beside units and conductors besides their symbols: ratings, places, findings. */
final class Notes {
  /** As wide as any place that is printed. */
  static final String WIDEST_PLACE = "/88.8";

  private final Netlist netlist;
  private final Diagram.Words words;
  private final Map<Unit, List<Integer>> byUnit = new HashMap<>();
  private final Map<Integer, List<Integer>> byWire = new HashMap<>();
  private final Set<Integer> placed = new HashSet<>();

  Notes(Netlist netlist, List<Unit> drawn, List<Diagram.Finding> findings, Diagram.Words words) {
    this.netlist = netlist;
    this.words = words;
    for (int i = 0; i < findings.size(); i++) {
      int number = i + 1;
      for (String at : findings.get(i).at()) {
        if (mark(at, number, drawn)) {
          placed.add(number);
          break;
        }
      }
    }
  }

  private boolean mark(String at, int number, List<Unit> drawn) {
    Optional<Unit> unit =
        first(drawn, u -> u.ports().stream().anyMatch(p -> p.terminal().toString().equals(at)))
            .or(() -> first(drawn, u -> u.part().equals(at) && u.look() == Look.COIL))
            .or(() -> first(drawn, u -> u.part().equals(at)))
            .or(
                () ->
                    first(
                        drawn,
                        u ->
                            at.startsWith(u.part() + ".")
                                && isMore(u, at.substring(u.part().length() + 1))));
    if (unit.isPresent()) {
      byUnit.computeIfAbsent(unit.get(), u -> new ArrayList<>()).add(number);
      return true;
    }
    for (int i = 0; i < netlist.wires().size(); i++) {
      var wire = netlist.wires().get(i);
      boolean run = wire.run().filter(r -> r.value().equals(at)).isPresent();
      boolean ends =
          at.contains(wire.from().value().toString()) && at.contains(wire.to().value().toString());
      if (run || ends || at.equals("wire " + (i + 1))) {
        byWire.computeIfAbsent(i, w -> new ArrayList<>()).add(number);
        return true;
      }
    }
    return false;
  }

  private static Optional<Unit> first(List<Unit> units, Predicate<Unit> which) {
    return units.stream().filter(which).findFirst();
  }

  /** An output or a contact by its own name, such as {@code heat} or {@code 11-14}. */
  private static boolean isMore(Unit unit, String rest) {
    return unit.name().equals(unit.part() + " " + rest)
        || unit.ports().stream().anyMatch(p -> rest.startsWith(p.terminal().pin() + "-"));
  }

  Diagram.Words words() {
    return words;
  }

  /** Findings that have a place in the diagram, by number. */
  boolean isPlaced(int number) {
    return placed.contains(number);
  }

  List<Integer> markers(Unit unit) {
    return byUnit.getOrDefault(unit, List.of());
  }

  List<Integer> markers(Joint joint) {
    return byWire.getOrDefault(joint.number(), List.of());
  }

  /** What stands left of a unit, its designation first. */
  List<String> lines(Unit unit) {
    List<String> lines = new ArrayList<>();
    lines.add(unit.part());
    if (unit.look() != Look.RESERVED) {
      lines.addAll(unit.words());
    }
    if (isRelayContact(unit)) {
      lines.add(WIDEST_PLACE);
    }
    return lines;
  }

  /** A line of a list, with where the other end is drawn. */
  static String listed(String line, String place) {
    return line.substring(0, line.indexOf('\t')) + " " + place;
  }

  /** The terminal at the other end of a listed conductor. */
  static Terminal otherEnd(String line) {
    String terminal = line.substring(line.indexOf('\t') + 1);
    int dot = terminal.indexOf('.');
    return new Terminal(terminal.substring(0, dot), terminal.substring(dot + 1));
  }

  /** True if its coil stands elsewhere. */
  boolean isRelayContact(Unit unit) {
    return unit.look() != Look.COIL
        && !unit.look().isReference()
        && netlist.parts().get(unit.part()) instanceof Part.Relay;
  }
}
