package org.coilwright.solve;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Mistake;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;

/**
 * What an instrument reads on a circuit that is switched off, as drawn or with a mistake in it.
 *
 * <p>Every resistance is known only within limits. The reading between two points of a network
 * rises with each resistance in it (Rayleigh's law of monotony), so that all lowest and all highest
 * together give the least and the greatest reading there can be.
 */
public final class DeadCircuit {
  private final Circuit circuit;
  private final Meter meter;
  private final Map<Node, Integer> index = new HashMap<>();
  private final List<DeadEdge> parts = new ArrayList<>();
  private final List<DeadEdge> wires = new ArrayList<>();
  private final Map<Probing, Drawn> asDrawn = new HashMap<>();

  /**
   * What a meter's diode test does.
   *
   * @param leastAmps of its current
   * @param mostAmps likewise
   * @param leastVolts that it shows on a diode in its forward direction
   * @param mostVolts likewise
   */
  public record Meter(double leastAmps, double mostAmps, double leastVolts, double mostVolts) {}

  /** The reading as drawn, and the nodes that can be felt at the leads. */
  private record Drawn(Span reading, BitSet felt) {}

  /**
   * A circuit to be measured.
   *
   * @param worth ohms of a branch when it is measured: of a contact while it is closed, of all
   *     others as they are; a diode's is not asked for
   */
  public DeadCircuit(Circuit circuit, Function<? super Branch, Span> worth, Meter meter) {
    this.circuit = circuit;
    this.meter = meter;
    circuit.nodes().forEach(node -> index.put(node, index.size()));
    for (Branch branch : circuit.branches()) {
      if (branch instanceof Branch.Conductor) {
        wires.add(edge(branch, DeadEdge.Kind.WIRE, worth.apply(branch)));
      } else if (branch instanceof Branch.DiodeBranch) {
        parts.add(edge(branch, DeadEdge.Kind.DIODE, Span.ANY));
      } else if (branch instanceof Contact) {
        parts.add(edge(branch, DeadEdge.Kind.CONTACT, worth.apply(branch)));
      } else {
        parts.add(edge(branch, DeadEdge.Kind.PLAIN, worth.apply(branch)));
      }
      if (branch instanceof Branch.Coil coil) {
        builtIn(coil).ifPresent(parts::add);
      }
    }
  }

  /** Joins two pins inside a device, or outside the circuit, through ohms that nobody knows. */
  public DeadCircuit joined(String part, Terminal one, Terminal other, Span ohms) {
    parts.add(new DeadEdge(part, DeadEdge.Kind.PLAIN, Optional.empty(), at(one), at(other), ohms));
    return this;
  }

  private DeadEdge edge(Branch branch, DeadEdge.Kind kind, Span ohms) {
    return new DeadEdge(
        branch.part(), kind, Optional.of(branch), at(branch.from()), at(branch.to()), ohms);
  }

  private Optional<DeadEdge> builtIn(Branch.Coil coil) {
    if (!CoilModel.hasBuiltInDiode(coil.spec())) {
      return Optional.empty();
    }
    boolean firstIsPlus = CoilModel.polarityOf(coil.spec()) >= 0;
    return Optional.of(
        new DeadEdge(
            coil.part(),
            DeadEdge.Kind.DIODE,
            Optional.of(coil),
            at(firstIsPlus ? coil.to() : coil.from()),
            at(firstIsPlus ? coil.from() : coil.to()),
            Span.ANY));
  }

  private int at(Node node) {
    Integer number = index.get(node);
    if (number == null) {
      throw new IllegalArgumentException("not a node of this circuit: " + node);
    }
    return number;
  }

  private int at(Terminal terminal) {
    return at(
        circuit
            .find(terminal)
            .orElseThrow(() -> new IllegalArgumentException("no part has " + terminal)));
  }

  /** True if it matters which lead is the positive one. */
  public boolean hasDiodes() {
    return parts.stream().anyMatch(edge -> edge.kind() == DeadEdge.Kind.DIODE);
  }

  /** The reading on the circuit as drawn: ohms, or volts of a diode test. */
  public Span read(Probing probing) {
    return drawn(probing).reading();
  }

  /** The reading on the circuit with a mistake in it. */
  public Span read(Probing probing, Mistake mistake) {
    Drawn drawn = drawn(probing);
    return feels(drawn, mistake)
        ? built(probing, Optional.of(mistake)).read(meter)
        : drawn.reading();
  }

  private Drawn drawn(Probing probing) {
    Drawn known = asDrawn.get(probing);
    if (known == null) {
      DeadNetwork network = built(probing, Optional.empty());
      known = new Drawn(network.read(meter), network.felt());
      asDrawn.put(probing, known);
    }
    return known;
  }

  /** False if everything that the mistake changes is out of the leads' reach before and after. */
  private boolean feels(Drawn drawn, Mistake mistake) {
    for (int wire : mistake.wires()) {
      if (drawn.felt().get(wires.get(wire).from()) || drawn.felt().get(wires.get(wire).to())) {
        return true;
      }
    }
    for (Mistake.Laid laid : mistake.laid()) {
      if (drawn.felt().get(at(laid.from())) || drawn.felt().get(at(laid.to()))) {
        return true;
      }
    }
    return mistake
        .turned()
        .filter(t -> drawn.felt().get(at(t.first())) || drawn.felt().get(at(t.second())))
        .isPresent();
  }

  private DeadNetwork built(Probing probing, Optional<Mistake> mistake) {
    int loose = index.size();
    List<DeadEdge> present = new ArrayList<>();
    for (DeadEdge edge : parts) {
      if (!probing.apart().contains(edge.part()) && isClosed(edge, probing)) {
        boolean turned =
            mistake.flatMap(Mistake::turned).filter(t -> t.part().equals(edge.part())).isPresent();
        present.add(turned ? edge.between(edge.to(), edge.from()) : edge);
      }
    }
    List<Wire> drawn = circuit.netlist().wires();
    Map<Integer, Mistake.Laid> elsewhere = new HashMap<>();
    mistake.ifPresent(m -> m.laid().forEach(l -> elsewhere.put(l.wire(), l)));
    for (int i = 0; i < wires.size(); i++) {
      int wire = i;
      if (mistake.filter(m -> m.leftOut().orElse(-1) == wire).isPresent()) {
        continue;
      }
      Mistake.Laid there =
          elsewhere.getOrDefault(
              i, new Mistake.Laid(i, drawn.get(i).from().value(), drawn.get(i).to().value()));
      int from = probing.lifted().contains(there.from()) ? loose++ : at(there.from());
      int to = probing.lifted().contains(there.to()) ? loose++ : at(there.to());
      present.add(wires.get(i).between(from, to));
    }
    return new DeadNetwork(
        loose,
        present,
        probing.method(),
        probing.plus().stream().mapToInt(this::at).toArray(),
        probing.minus().stream().mapToInt(this::at).toArray());
  }

  private static boolean isClosed(DeadEdge edge, Probing probing) {
    if (edge.branch().isEmpty() || !(edge.branch().get() instanceof Contact contact)) {
      return true;
    }
    Actuator actuator = contact.actuator();
    boolean rest =
        actuator.kind() != Actuator.Kind.PROTECTIVE
            && actuator.atRest(contact.form() == Part.ContactForm.NC);
    return contact.conductsWhen(probing.operated().getOrDefault(actuator.name(), rest));
  }
}
