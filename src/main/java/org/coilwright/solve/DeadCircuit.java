// Over 250 lines: the circuit and one measurement of it share its arrays.
package org.coilwright.solve;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
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
  private final List<Piece> pieces = new ArrayList<>();
  private final List<Span> wires = new ArrayList<>();
  private final IdentityHashMap<Mistake, Ends> ends = new IdentityHashMap<>();

  /**
   * What a meter's diode test does.
   *
   * @param leastAmps of its current
   * @param mostAmps likewise
   * @param leastVolts that it shows on a diode in its forward direction
   * @param mostVolts likewise
   */
  public record Meter(double leastAmps, double mostAmps, double leastVolts, double mostVolts) {}

  /** Something between two nodes that is no wire; {@code contact} if it can be open. */
  private record Piece(
      String part,
      int from,
      int to,
      Span ohms,
      boolean diode,
      boolean suppressor,
      Optional<Contact> contact) {}

  /** Nodes where a mistake's wires really end, in the order of the mistake. */
  private static final class Ends {
    private final int[] from;
    private final int[] to;

    private Ends(int size) {
      this.from = new int[size];
      this.to = new int[size];
    }
  }

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
        wires.add(worth.apply(branch));
      } else if (branch instanceof Branch.DiodeBranch) {
        diode(branch.part(), branch.from(), branch.to());
      } else {
        boolean varistor =
            branch instanceof Branch.Passive passive && passive.spec() instanceof Part.Varistor;
        pieces.add(
            new Piece(
                branch.part(),
                at(branch.from()),
                at(branch.to()),
                worth.apply(branch),
                false,
                varistor,
                branch instanceof Contact contact ? Optional.of(contact) : Optional.empty()));
      }
      if (branch instanceof Branch.Coil coil && CoilModel.hasBuiltInDiode(coil.spec())) {
        boolean firstIsPlus = CoilModel.polarityOf(coil.spec()) >= 0;
        diode(
            coil.part(),
            firstIsPlus ? coil.to() : coil.from(),
            firstIsPlus ? coil.from() : coil.to());
      }
    }
  }

  private void diode(String part, Node anode, Node cathode) {
    pieces.add(new Piece(part, at(anode), at(cathode), Span.ANY, true, true, Optional.empty()));
  }

  /** Joins two pins inside a device, or outside the circuit, through ohms that nobody knows. */
  public void join(String part, Terminal one, Terminal other, Span ohms) {
    pieces.add(new Piece(part, at(one), at(other), ohms, false, false, Optional.empty()));
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
    return pieces.stream().anyMatch(Piece::diode);
  }

  /** The circuit with the leads on it and done to it what has to be done. */
  public Measured measure(Probing probing) {
    return new Measured(probing);
  }

  private Ends endsOf(Mistake mistake) {
    Ends known = ends.get(mistake);
    if (known == null) {
      known = new Ends(mistake.laid().size());
      for (int i = 0; i < known.from.length; i++) {
        known.from[i] = at(mistake.laid().get(i).from());
        known.to[i] = at(mistake.laid().get(i).to());
      }
      ends.put(mistake, known);
    }
    return known;
  }

  /** One measurement, to be read on the circuit as drawn and on others. */
  public final class Measured {
    private final Probing probing;
    private final DeadEdges drawn;
    private final int firstWire;
    private final int nodes;
    private final int[] plus;
    private final int[] minus;
    private final DeadBlock block;
    private final Span reading;

    private Measured(Probing probing) {
      this.probing = probing;
      this.drawn = new DeadEdges(pieces.size() + wires.size());
      for (Piece piece : pieces) {
        boolean there =
            !probing.apart().contains(piece.part())
                && piece.contact().map(this::isClosed).orElse(true);
        drawn.add(
            piece.from(),
            piece.to(),
            there ? piece.ohms() : Span.OPEN,
            there && piece.diode(),
            there && piece.suppressor());
      }
      this.firstWire = drawn.count;
      List<Wire> written = circuit.netlist().wires();
      for (int i = 0; i < wires.size(); i++) {
        Terminal from = written.get(i).from().value();
        Terminal to = written.get(i).to().value();
        drawn.add(end(i, 0, from, at(from)), end(i, 1, to, at(to)), wires.get(i), false, false);
      }
      this.nodes = index.size() + (probing.lifted().isEmpty() ? 0 : 2 * wires.size());
      this.plus = probing.plus().stream().mapToInt(DeadCircuit.this::at).toArray();
      this.minus = probing.minus().stream().mapToInt(DeadCircuit.this::at).toArray();
      DeadNetwork network = network(drawn);
      this.block = network.block();
      this.reading = network.read(meter);
    }

    private boolean isClosed(Contact contact) {
      Actuator actuator = contact.actuator();
      boolean rest =
          actuator.kind() != Actuator.Kind.PROTECTIVE
              && actuator.atRest(contact.form() == Part.ContactForm.NC);
      return contact.conductsWhen(probing.operated().getOrDefault(actuator.name(), rest));
    }

    /** The node of a wire's end: one of its own where it is taken off its pin. */
    private int end(int wire, int side, Terminal pin, int node) {
      return probing.lifted().contains(pin) ? index.size() + 2 * wire + side : node;
    }

    private DeadNetwork network(DeadEdges edges) {
      return new DeadNetwork(nodes, edges, probing.method(), plus, minus);
    }

    /** The reading on the circuit as drawn: ohms, or volts of a diode test. */
    public Span reading() {
      return reading;
    }

    /** The reading on the circuit with a mistake in it. */
    public Span reading(Mistake mistake) {
      Ends there = endsOf(mistake);
      int count = mistake.laid().size();
      int[] from = new int[count];
      int[] to = new int[count];
      for (int i = 0; i < count; i++) {
        Mistake.Laid laid = mistake.laid().get(i);
        from[i] = end(laid.wire(), 0, laid.from(), there.from[i]);
        to[i] = end(laid.wire(), 1, laid.to(), there.to[i]);
      }
      if (!isFelt(mistake, from, to)) {
        return reading;
      }
      DeadEdges built = drawn.copy();
      for (int i = 0; i < count; i++) {
        built.from[firstWire + mistake.laid().get(i).wire()] = from[i];
        built.to[firstWire + mistake.laid().get(i).wire()] = to[i];
      }
      mistake.leftOut().ifPresent(i -> built.to[firstWire + i] = built.from[firstWire + i]);
      mistake.turned().ifPresent(turned -> turn(built, turned.part()));
      return network(built).read(meter);
    }

    /** False if no way from lead to lead is lost and none is new. */
    private boolean isFelt(Mistake mistake, int[] from, int[] to) {
      for (Mistake.Laid laid : mistake.laid()) {
        if (block.isInside(firstWire + laid.wire())) {
          return true;
        }
      }
      if (mistake.leftOut().isPresent()
          && block.isInside(firstWire + mistake.leftOut().getAsInt())) {
        return true;
      }
      if (mistake.turned().isPresent()) {
        String part = mistake.turned().get().part();
        for (int i = 0; i < pieces.size(); i++) {
          if (pieces.get(i).part().equals(part) && block.isInside(i)) {
            return true;
          }
        }
      }
      return block.isJoined(from, to);
    }

    private void turn(DeadEdges built, String part) {
      for (int i = 0; i < pieces.size(); i++) {
        if (pieces.get(i).part().equals(part)) {
          built.from[i] = pieces.get(i).to();
          built.to[i] = pieces.get(i).from();
        }
      }
    }
  }
}
