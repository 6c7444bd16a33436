package org.coilwright.sweep;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import org.coilwright.netlist.Mark;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.ContactSpec;
import org.coilwright.netlist.Part.Pole;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;
import org.coilwright.netlist.Written;
import org.coilwright.sweep.Mutant.Kind;

/** Every single mistake with the wires of a circuit. */
final class WiringMutants {
  /** How many wires are added between any two pins. */
  private static final int ADDED = 150;

  private static final long SEED = 20_261_130;

  private final Base base;
  private final List<Terminal> pins = new ArrayList<>();
  private final List<Mutant> mutants = new ArrayList<>();

  private WiringMutants(Base base) {
    this.base = base;
    for (Part part : base.netlist().parts().values()) {
      part.pins().forEach(pin -> pins.add(new Terminal(part.name(), pin)));
    }
  }

  /** All of them but the added wires, of which a sample drawn by a seed is taken. */
  static List<Mutant> of(Base base) {
    WiringMutants all = new WiringMutants(base);
    base.netlist().wires().forEach(all::movedAndLeftOut);
    all.exchanged();
    all.bridged();
    all.added();
    return List.copyOf(all.mutants);
  }

  private void movedAndLeftOut(Wire wire) {
    for (Written<Terminal> end : List.of(wire.from(), wire.to())) {
      for (Terminal pin : pins) {
        if (!pin.equals(end.value())) {
          String what = name(wire) + " on " + pin + " instead of " + end.value();
          add(Kind.MOVED, what, written(List.of(end), List.of(pin)), List.of(wire), pin);
        }
      }
    }
    List<String> lines = new ArrayList<>(base.lines());
    lines.set(wire.mark().line() - 1, "  # left out");
    add(Kind.LEFT_OUT, name(wire) + " left out", lines, List.of(wire));
  }

  /** Two wires that end on different pins of one part, each on the other's pin. */
  private void exchanged() {
    List<Wire> wires = base.netlist().wires();
    for (int i = 0; i < wires.size(); i++) {
      for (int j = i + 1; j < wires.size(); j++) {
        for (Written<Terminal> one : List.of(wires.get(i).from(), wires.get(i).to())) {
          for (Written<Terminal> other : List.of(wires.get(j).from(), wires.get(j).to())) {
            exchange(wires.get(i), one, wires.get(j), other);
          }
        }
      }
    }
  }

  private void exchange(Wire a, Written<Terminal> one, Wire b, Written<Terminal> other) {
    boolean same = one.value().equals(other.value());
    if (!same && one.value().part().equals(other.value().part())) {
      String what =
          name(a) + " and " + name(b) + " exchanged at " + one.value() + ", " + other.value();
      add(
          Kind.EXCHANGED,
          what,
          written(List.of(one, other), List.of(other.value(), one.value())),
          List.of(a, b));
    }
  }

  private void bridged() {
    for (Part part : base.netlist().parts().values()) {
      List<String> ends = poleEnds(part);
      for (int i = 0; i < ends.size(); i += 2) {
        insert(Kind.BRIDGED, part.name(), ends.get(i), ends.get(i + 1));
      }
      for (int i = 0; i + 3 < ends.size(); i += 2) {
        insert(Kind.BRIDGED, part.name(), ends.get(i), ends.get(i + 2));
        insert(Kind.BRIDGED, part.name(), ends.get(i + 1), ends.get(i + 3));
      }
    }
  }

  /** Both ends of every pole and contact of a part, one after the other. */
  private static List<String> poleEnds(Part part) {
    List<Pole> poles = new ArrayList<>();
    List<ContactSpec> contacts = new ArrayList<>();
    if (part instanceof Part.Protective device) {
      poles.addAll(device.poles());
    } else if (part instanceof Part.Switch device) {
      poles.addAll(device.poles());
    } else if (part instanceof Part.Thermal device) {
      poles.addAll(device.poles());
    } else if (part instanceof Part.Relay relay) {
      contacts.addAll(relay.contacts());
    } else if (part instanceof Part.Controller controller) {
      contacts.addAll(controller.outputs().values());
    } else if (part instanceof Part.Fuse) {
      return List.of("1", "2");
    }
    List<String> ends = new ArrayList<>();
    poles.forEach(p -> ends.addAll(List.of(p.from(), p.to())));
    contacts.forEach(c -> ends.addAll(List.of(c.from(), c.to())));
    return ends;
  }

  private void added() {
    Random random = new Random(SEED + base.name().hashCode());
    Set<Set<Terminal>> drawn = new HashSet<>();
    int most = Math.min(ADDED, pins.size() * (pins.size() - 1) / 2);
    while (drawn.size() < most) {
      Terminal one = pins.get(random.nextInt(pins.size()));
      Terminal other = pins.get(random.nextInt(pins.size()));
      if (!one.equals(other) && drawn.add(Set.of(one, other))) {
        insert(Kind.ADDED, one, other);
      }
    }
  }

  private void insert(Kind kind, String part, String one, String other) {
    if (!one.equals(other)) {
      insert(kind, new Terminal(part, one), new Terminal(part, other));
    }
  }

  /** A wire that is as thick and as short as needs be, so that nothing else is wrong with it. */
  private void insert(Kind kind, Terminal one, Terminal other) {
    int last = base.netlist().wires().stream().mapToInt(w -> w.mark().line()).max().orElseThrow();
    List<String> lines = new ArrayList<>(base.lines());
    lines.add(
        last,
        "  - {from: %s, to: %s, length: 0.2 m, size: 6 mm², insulation: 750 V}"
            .formatted(one, other));
    Set<String> touched = new TreeSet<>();
    touch(touched, one);
    touch(touched, other);
    String verb = kind == Kind.BRIDGED ? " bridged to " : " joined to ";
    mutants.add(
        new Mutant(base.name(), kind, one + verb + other, lines, touched, Set.of(last + 1)));
  }

  private void add(Kind kind, String what, List<String> lines, List<Wire> wires, Terminal... more) {
    Set<String> touched = new TreeSet<>();
    Set<Integer> places = new LinkedHashSet<>();
    for (Wire wire : wires) {
      touch(touched, wire.from().value());
      touch(touched, wire.to().value());
      places.add(wire.mark().line());
      wire.run().ifPresent(run -> touched.add(run.value()));
    }
    for (Terminal pin : more) {
      touch(touched, pin);
    }
    mutants.add(new Mutant(base.name(), kind, what, lines, touched, places));
  }

  private static void touch(Set<String> touched, Terminal pin) {
    touched.add(pin.part());
    touched.add(pin.toString());
  }

  private static String name(Wire wire) {
    return wire.from().value() + "-" + wire.to().value();
  }

  /** The lines with other pins written at some ends. */
  private List<String> written(List<Written<Terminal>> ends, List<Terminal> pins) {
    List<Integer> order = new ArrayList<>();
    for (int i = 0; i < ends.size(); i++) {
      order.add(i);
    }
    // from the right, so that the columns to the left stay as they are
    order.sort(Collections.reverseOrder(Comparator.comparing(i -> column(ends, i))));
    List<String> lines = new ArrayList<>(base.lines());
    for (int i : order) {
      Mark mark = ends.get(i).mark();
      String line = lines.get(mark.line() - 1);
      String before = line.substring(0, mark.column() - 1);
      String after = line.substring(mark.column() - 1 + ends.get(i).text().length());
      lines.set(mark.line() - 1, before + pins.get(i) + after);
    }
    return lines;
  }

  private static int column(List<Written<Terminal>> ends, int i) {
    return ends.get(i).mark().column();
  }
}
