// Over 250 lines: the circuit and one measurement of it share its arrays.
package org.coilwright.solve;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.coilwright.circuit.Actuator;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Mistake;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;
import org.jspecify.annotations.Nullable;

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
  private @Nullable Rest rest;

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

  /** The circuit while nothing is done to it, and its blocks; pieces first, then wires. */
  private final class Rest {
    private final DeadEdges edges = new DeadEdges(pieces.size() + wires.size());
    private final int firstWire = pieces.size();
    private final DeadTree tree;
    private final Map<String, List<Integer>> piecesOf = new HashMap<>();
    private final Map<String, List<Integer>> movedBy = new HashMap<>();

    Rest() {
      for (Piece piece : pieces) {
        int number = edges.count;
        boolean there = piece.contact().map(c -> isClosed(c, Map.of())).orElse(true);
        edges.add(
            piece.from(),
            piece.to(),
            there ? piece.ohms() : Span.OPEN,
            there && piece.diode(),
            there && piece.suppressor());
        piecesOf.computeIfAbsent(piece.part(), p -> new ArrayList<>()).add(number);
        piece
            .contact()
            .ifPresent(
                c ->
                    movedBy
                        .computeIfAbsent(c.actuator().name(), a -> new ArrayList<>())
                        .add(number));
      }
      List<Wire> written = circuit.netlist().wires();
      for (int i = 0; i < wires.size(); i++) {
        edges.add(
            at(written.get(i).from().value()),
            at(written.get(i).to().value()),
            wires.get(i),
            false,
            false);
      }
      this.tree = new DeadTree(index.size(), edges, edges.conducting());
    }
  }

  private Rest rest() {
    Rest known = rest;
    if (known == null) {
      known = new Rest();
      rest = known;
    }
    return known;
  }

  private static boolean isClosed(Contact contact, Map<String, Boolean> operated) {
    Actuator actuator = contact.actuator();
    boolean rest =
        actuator.kind() != Actuator.Kind.PROTECTIVE
            && actuator.atRest(contact.form() == Part.ContactForm.NC);
    return contact.conductsWhen(operated.getOrDefault(actuator.name(), rest));
  }

  /** Blocks that a mistake takes a wire from, or leads around; and the nodes it joins. */
  BitSet blocksOf(Mistake mistake, int[] joined) {
    BitSet blocks = new BitSet();
    rest().tree.span(joined, joined.length, blocks);
    List<Integer> edges = new ArrayList<>();
    mistake.wires().forEach(wire -> edges.add(rest().firstWire + wire));
    mistake
        .turned()
        .ifPresent(turned -> edges.addAll(rest().piecesOf.getOrDefault(turned.part(), List.of())));
    for (int edge : edges) {
      if (rest().tree.blockOf(edge) >= 0) {
        blocks.set(rest().tree.blockOf(edge));
      }
    }
    return blocks;
  }

  /** The nodes that a mistake joins. */
  int[] joinedBy(Mistake mistake) {
    Ends there = endsOf(mistake);
    return IntStream.concat(IntStream.of(there.from), IntStream.of(there.to)).toArray();
  }

  /** What hangs together while nothing is done to the circuit has one number. */
  int part(int node) {
    return rest().tree.part(node);
  }

  /** One measurement, to be read on the circuit as drawn and on others. */
  public final class Measured {
    private final Probing probing;
    private final int[] plus;
    private final int[] minus;

    /** Contacts that are closed for this measurement alone. */
    private final int[] closed;

    /** The leads, and the ends of these contacts. */
    private final int[] points;

    private final Span reading;

    private Measured(Probing probing) {
      this.probing = probing;
      this.plus = probing.plus().stream().mapToInt(DeadCircuit.this::at).toArray();
      this.minus = probing.minus().stream().mapToInt(DeadCircuit.this::at).toArray();
      this.closed =
          probing.operated().keySet().stream()
              .flatMap(name -> rest().movedBy.getOrDefault(name, List.of()).stream())
              .mapToInt(Integer::intValue)
              .filter(i -> isThere(i) && !isClosed(contact(i), Map.of()))
              .toArray();
      IntStream ends =
          IntStream.of(closed).flatMap(i -> IntStream.of(pieces.get(i).from(), pieces.get(i).to()));
      this.points =
          IntStream.concat(IntStream.concat(IntStream.of(plus), IntStream.of(minus)), ends)
              .toArray();
      Near drawn = near(new int[0], List.of());
      this.reading = read(drawn, drawn.edges);
    }

    private Contact contact(int piece) {
      return pieces.get(piece).contact().orElseThrow();
    }

    private boolean isThere(int number) {
      Piece piece = pieces.get(number);
      return !probing.apart().contains(piece.part())
          && piece.contact().map(c -> isClosed(c, probing.operated())).orElse(true);
    }

    /** The node of a wire's end: one of its own where it is taken off its pin. */
    private int end(int wire, int side, Terminal pin, int node) {
      return probing.lifted().contains(pin) ? index.size() + 2 * wire + side : node;
    }

    /** Leads, and ends of contacts that are closed for this measurement. */
    int[] points() {
      return points.clone();
    }

    /** Blocks that may carry current from lead to lead. */
    BitSet blocks() {
      BitSet blocks = new BitSet();
      rest().tree.span(points, points.length, blocks);
      return blocks;
    }

    /**
     * The part of the circuit that a reading can depend on: what lies between the leads and some
     * more nodes.
     */
    private final class Near {
      private final DeadEdges edges;
      private final Map<Integer, Integer> places = new HashMap<>();
      private final Map<Integer, Integer> nodes = new HashMap<>();

      Near(BitSet chosen) {
        edges = new DeadEdges(chosen.cardinality() + 2);
        List<Wire> written = circuit.netlist().wires();
        int firstWire = rest().firstWire;
        for (int i = chosen.nextSetBit(0); i >= 0; i = chosen.nextSetBit(i + 1)) {
          places.put(i, edges.count);
          if (i < firstWire) {
            Piece piece = pieces.get(i);
            boolean there = isThere(i);
            edges.add(
                node(piece.from()),
                node(piece.to()),
                there ? piece.ohms() : Span.OPEN,
                there && piece.diode(),
                there && piece.suppressor());
          } else {
            int wire = i - firstWire;
            Terminal from = written.get(wire).from().value();
            Terminal to = written.get(wire).to().value();
            edges.add(
                node(end(wire, 0, from, rest().edges.from[i])),
                node(end(wire, 1, to, rest().edges.to[i])),
                wires.get(wire),
                false,
                false);
          }
        }
      }

      int node(int node) {
        Integer known = nodes.putIfAbsent(node, nodes.size());
        return known == null ? nodes.size() - 1 : known;
      }

      int[] nodes(int... those) {
        return IntStream.of(those).map(this::node).toArray();
      }

      int place(int edge) {
        return places.getOrDefault(edge, -1);
      }
    }

    private Near near(int[] joined, List<Integer> wiresToo) {
      int[] all = IntStream.concat(IntStream.of(points), IntStream.of(joined)).toArray();
      // ends that are taken off their pins are in no block
      int[] known = IntStream.of(all).filter(n -> n < index.size()).toArray();
      BitSet blocks = new BitSet();
      rest().tree.span(known, known.length, blocks);
      BitSet chosen = new BitSet();
      for (int b = blocks.nextSetBit(0); b >= 0; b = blocks.nextSetBit(b + 1)) {
        for (int edge : rest().tree.edgesOf(b)) {
          chosen.set(edge);
        }
      }
      for (int piece : closed) {
        chosen.set(piece);
      }
      wiresToo.forEach(wire -> chosen.set(rest().firstWire + wire));
      Near near = new Near(chosen);
      near.nodes(all);
      return near;
    }

    private Span read(Near near, DeadEdges edges) {
      int[] one = near.nodes(plus);
      int[] other = near.nodes(minus);
      DeadNetwork network = new DeadNetwork(near.nodes.size(), edges, probing.method(), one, other);
      return network.within(network.block()).read(meter);
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
      Near near =
          near(IntStream.concat(IntStream.of(from), IntStream.of(to)).toArray(), mistake.wires());
      from = near.nodes(from);
      to = near.nodes(to);
      if (!isFelt(mistake, near, from, to)) {
        return reading;
      }
      DeadEdges built = near.edges.copy();
      for (int i = 0; i < count; i++) {
        int place = near.place(rest().firstWire + mistake.laid().get(i).wire());
        built.from[place] = from[i];
        built.to[place] = to[i];
      }
      mistake
          .leftOut()
          .ifPresent(
              wire -> {
                int place = near.place(rest().firstWire + wire);
                built.to[place] = built.from[place];
              });
      mistake.turned().ifPresent(turned -> turn(near, built, turned.part()));
      return read(near, built);
    }

    /** False if no way from lead to lead is lost and none is new. */
    private boolean isFelt(Mistake mistake, Near near, int[] from, int[] to) {
      int[] one = near.nodes(plus);
      int[] other = near.nodes(minus);
      DeadBlock block =
          new DeadNetwork(near.nodes.size(), near.edges, probing.method(), one, other).block();
      List<Integer> touched = new ArrayList<>();
      mistake.wires().forEach(wire -> touched.add(rest().firstWire + wire));
      mistake
          .turned()
          .ifPresent(
              turned -> touched.addAll(rest().piecesOf.getOrDefault(turned.part(), List.of())));
      for (int edge : touched) {
        if (near.place(edge) >= 0 && block.isInside(near.place(edge))) {
          return true;
        }
      }
      return block.isJoined(from, to);
    }

    private void turn(Near near, DeadEdges built, String part) {
      for (int piece : rest().piecesOf.getOrDefault(part, List.of())) {
        int place = near.place(piece);
        if (place >= 0) {
          int from = built.from[place];
          built.from[place] = built.to[place];
          built.to[place] = from;
        }
      }
    }
  }
}
