// Over 250 lines: one kind of mistake after the other.
package org.coilwright.circuit;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.stream.Collectors;
import org.coilwright.circuit.Mistake.Kind;
import org.coilwright.circuit.Mistake.Laid;
import org.coilwright.circuit.Mistake.Turned;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;

/**
 * Every single mistake that can be made with the wires of a circuit, in the order of the netlist:
 * an end on another pin of the same part, two ends exchanged at one part or at one end of a run, a
 * wire left out, a part with a direction turned round, a supply reversed.
 */
public final class Mistakes {
  /** Of a part with more pins than this only the nearest pins are taken for each other. */
  private static final int MOST_PINS = 16;

  /** How far away a pin of a long strip may be to be taken for the right one. */
  private static final int NEAR = 2;

  /** In a loom of more wires than this only those written next to each other are exchanged. */
  private static final int MOST_CORES = 24;

  /** On a bar where more wires end than this only ends written close together are exchanged. */
  private static final int MOST_ENDS = 40;

  /** How many ends further on such a bar one may be. */
  private static final int NEXT = 6;

  private final Circuit circuit;
  private final List<Wire> wires;
  private final List<Mistake> all = new ArrayList<>();
  private final Set<List<Laid>> known = new HashSet<>();

  private Mistakes(Circuit circuit) {
    this.circuit = circuit;
    this.wires = circuit.netlist().wires();
  }

  /** One end of a wire. */
  private record End(int wire, boolean first, Terminal pin) {}

  /** All of them; two that leave the very same wires at the very same pins are listed once. */
  public static List<Mistake> of(Circuit circuit) {
    Mistakes mistakes = new Mistakes(circuit);
    mistakes.supplies();
    mistakes.turned();
    for (int wire = 0; wire < mistakes.wires.size(); wire++) {
      mistakes.leftOut(wire);
      mistakes.moved(wire, true);
      mistakes.moved(wire, false);
    }
    mistakes.swapped();
    mistakes.cores();
    return List.copyOf(mistakes.all);
  }

  private void supplies() {
    for (Branch.Source source : circuit.branches(Branch.Source.class)) {
      for (Terminal plus : source.to().terminals()) {
        for (Terminal minus : source.from().terminals()) {
          if (plus.part().equals(source.part())
              && minus.part().equals(source.part())
              && isWired(plus)
              && isWired(minus)) {
            add(
                Kind.SUPPLY_REVERSED,
                exchanged(plus, minus),
                List.of(plus, minus),
                Optional.empty());
          }
        }
      }
    }
  }

  private List<Laid> exchanged(Terminal one, Terminal other) {
    List<Laid> laid = new ArrayList<>();
    for (int i = 0; i < wires.size(); i++) {
      Terminal from = wires.get(i).from().value();
      Terminal to = wires.get(i).to().value();
      Terminal newFrom = from.equals(one) ? other : from.equals(other) ? one : from;
      Terminal newTo = to.equals(one) ? other : to.equals(other) ? one : to;
      if (!newFrom.equals(from) || !newTo.equals(to)) {
        laid.add(new Laid(i, newFrom, newTo));
      }
    }
    return laid;
  }

  private void turned() {
    for (Branch.DiodeBranch diode : circuit.branches(Branch.DiodeBranch.class)) {
      Terminal first = new Terminal(diode.part(), "A");
      Terminal second = new Terminal(diode.part(), "K");
      if (isWired(first) && isWired(second)) {
        // Nobody sees at its leads which is which: exchanging them and turning it are one mistake.
        known.add(exchanged(first, second));
        all.add(
            new Mistake(
                Kind.TURNED,
                List.of(),
                OptionalInt.empty(),
                Optional.of(new Turned(diode.part(), first, second)),
                List.of(first, second),
                Optional.empty()));
      }
    }
  }

  private boolean isWired(Terminal pin) {
    return !circuit.wiresAt(pin).isEmpty();
  }

  private void leftOut(int wire) {
    all.add(
        new Mistake(
            Kind.LEFT_OUT,
            List.of(),
            OptionalInt.of(wire),
            Optional.empty(),
            List.of(),
            Optional.empty()));
  }

  private void moved(int wire, boolean first) {
    Wire written = wires.get(wire);
    Terminal from = written.from().value();
    Terminal to = written.to().value();
    Terminal right = first ? from : to;
    for (String pin : near(right)) {
      Terminal wrong = new Terminal(right.part(), pin);
      add(
          Kind.MOVED,
          List.of(first ? new Laid(wire, wrong, to) : new Laid(wire, from, wrong)),
          List.of(right, wrong),
          Optional.empty());
    }
  }

  /** The pins that one may be taken for. */
  private List<String> near(Terminal right) {
    Part part = circuit.netlist().parts().get(right.part());
    if (part == null) {
      return List.of();
    }
    List<String> pins = part.pins();
    int place = pins.indexOf(right.pin());
    List<String> near = new ArrayList<>();
    for (int i = 0; i < pins.size(); i++) {
      if (i != place && (pins.size() <= MOST_PINS || Math.abs(i - place) <= NEAR)) {
        near.add(pins.get(i));
      }
    }
    return near;
  }

  private void swapped() {
    Map<String, List<End>> atPart = new LinkedHashMap<>();
    for (int i = 0; i < wires.size(); i++) {
      for (boolean first : new boolean[] {true, false}) {
        Terminal pin = first ? wires.get(i).from().value() : wires.get(i).to().value();
        atPart.computeIfAbsent(pin.part(), p -> new ArrayList<>()).add(new End(i, first, pin));
      }
    }
    for (List<End> ends : atPart.values()) {
      for (int i = 0; i < ends.size(); i++) {
        int last = ends.size() <= MOST_ENDS ? ends.size() : Math.min(ends.size(), i + 1 + NEXT);
        for (int j = i + 1; j < last; j++) {
          End one = ends.get(i);
          End other = ends.get(j);
          if (one.wire() != other.wire()
              && !one.pin().equals(other.pin())
              && near(one.pin()).contains(other.pin().pin())) {
            add(
                Kind.SWAPPED,
                List.of(with(one, other.pin()), with(other, one.pin())),
                List.of(one.pin(), other.pin()),
                Optional.empty());
          }
        }
      }
    }
  }

  private Laid with(End end, Terminal there) {
    Wire wire = wires.get(end.wire());
    return end.first()
        ? new Laid(end.wire(), there, wire.to().value())
        : new Laid(end.wire(), wire.from().value(), there);
  }

  /** Cores of one run that have no part in common at either end. */
  private void cores() {
    Map<String, List<Integer>> runs = new LinkedHashMap<>();
    for (int i = 0; i < wires.size(); i++) {
      int wire = i;
      wires
          .get(i)
          .run()
          .ifPresent(r -> runs.computeIfAbsent(r.value(), k -> new ArrayList<>()).add(wire));
    }
    runs.forEach(
        (run, cores) -> {
          for (int i = 0; i < cores.size(); i++) {
            for (int j = i + 1; j < cores.size(); j++) {
              if (j == i + 1 || cores.size() <= MOST_CORES) {
                cores(run, cores.get(i), cores.get(j));
              }
            }
          }
        });
  }

  private void cores(String run, int one, int other) {
    Terminal a = wires.get(one).from().value();
    Terminal b = wires.get(one).to().value();
    Terminal c = wires.get(other).from().value();
    Terminal d = wires.get(other).to().value();
    Set<String> parts = Set.copyOf(List.of(a.part(), b.part()));
    if (!parts.contains(c.part()) && !parts.contains(d.part())) {
      add(
          Kind.SWAPPED,
          List.of(new Laid(one, a, d), new Laid(other, c, b)),
          List.of(),
          Optional.of(run));
    }
  }

  private void add(Kind kind, List<Laid> laid, List<Terminal> pins, Optional<String> run) {
    // A wire with both ends on one pin is no more than one that is left out.
    boolean loop = laid.stream().anyMatch(l -> l.from().equals(l.to()));
    if (!laid.isEmpty() && !loop && known.add(laid)) {
      all.add(new Mistake(kind, laid, OptionalInt.empty(), Optional.empty(), pins, run));
    }
  }

  /** Those after which wires alone still join exactly the same terminals. */
  public static Set<Mistake> harmless(Circuit circuit, List<Mistake> mistakes) {
    WireNets nets = new WireNets(circuit);
    return mistakes.stream().filter(nets::isUnchanged).collect(Collectors.toSet());
  }
}
