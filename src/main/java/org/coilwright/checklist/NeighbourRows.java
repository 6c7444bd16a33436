package org.coilwright.checklist;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.coilwright.checklist.Expected.Band;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Mistake;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;
import org.coilwright.solve.Probing;
import org.coilwright.solve.Span;

/**
 * Readings between two pins that tell a right wire from one on a likely wrong pin, as few as are
 * needed on top of the rows that are there anyway.
 */
final class NeighbourRows {
  /** Pins near a mistake that are tried as places for the leads. */
  private static final int MOST_PINS = 8;

  /** Not megohms: these are read with an ohmmeter, not with an insulation tester. */
  private static final String KILOHM = "kΩ";

  private final Circuit circuit;
  private final Bands bands;
  private final DeadReadings readings;
  private final WiringMistakes mistakes;
  private final Texts texts;
  private final HandMoves moves;
  private final DeadState state;
  private Coverage.Added added = Coverage.NONE.added();

  NeighbourRows(DeadTests tests) {
    this.circuit = tests.anatomy().circuit();
    this.bands = tests.bands();
    this.readings = tests.readings();
    this.mistakes = tests.mistakes();
    this.texts = tests.texts();
    this.moves = new HandMoves(circuit, texts);
    this.state = tests.state();
  }

  /** A measurement that shows mistakes which nothing else shows. */
  private record Candidate(Probing probing, Band band, HandMoves.Move move) {}

  /**
   * Rows for what does not show so far.
   *
   * @param before rows that come before
   */
  List<Row> rows(List<Row> before) {
    List<Mistake> left = mistakes.left(before);
    Candidates candidates = new Candidates();
    left.forEach(mistake -> candidates(mistake, candidates));
    List<Candidate> useful = new ArrayList<>();
    Set<BitSet> shown = new LinkedHashSet<>();
    Map<Integer, Integer> places = mistakes.places(left);
    for (Candidate candidate : candidates.useful.values()) {
      BitSet here = new BitSet();
      for (int i : mistakes.felt(candidate.probing(), places)) {
        here.set(i, readings.shows(candidate.probing(), left.get(i), candidate.band()));
      }
      if (!here.isEmpty() && shown.add(here)) {
        useful.add(candidate);
      }
    }
    List<BitSet> sets = List.copyOf(shown);
    FewestSets.Choice choice = FewestSets.of(sets);
    added = new Coverage.Added(choice.sets().size(), useful.size(), choice.fewest());
    return choice.sets().stream()
        .sorted(Comparator.comparing(i -> useful.get(i).move().name()))
        .map(i -> row(useful.get(i), left, sets.get(i)))
        .toList();
  }

  /** How many rows the last call chose, and from how many. */
  Coverage.Added added() {
    return added;
  }

  /** Every measurement that was thought of, and those of them that show something. */
  private static final class Candidates {
    private final Map<Probing, Optional<Candidate>> known = new HashMap<>();
    private final Map<Probing, Candidate> useful = new LinkedHashMap<>();
  }

  /** By hand as little as can be: something is moved only where nothing shows without. */
  private void candidates(Mistake mistake, Candidates candidates) {
    List<Terminal> pins = pins(mistake);
    boolean found = false;
    for (HandMoves.Move move : moves.of(pins)) {
      if (found && !move.name().isEmpty()) {
        return;
      }
      for (int i = 0; i < pins.size(); i++) {
        for (int j = i + 1; j < pins.size(); j++) {
          Probing either = move.how().apply(state.still(Probing.ohms(pins.get(i), pins.get(j))));
          boolean shows = tried(either, move, mistake, candidates);
          if (!shows && readings.hasDiodes()) {
            shows = tried(either.toward(), move, mistake, candidates);
            shows |= tried(either.exchanged().toward(), move, mistake, candidates);
          }
          found |= shows;
        }
      }
    }
  }

  /** True if this measurement shows the mistake. */
  private boolean tried(
      Probing probing, HandMoves.Move move, Mistake mistake, Candidates candidates) {
    Optional<Candidate> candidate =
        candidates.known.computeIfAbsent(
            probing, p -> band(p).map(band -> new Candidate(p, band, move)));
    boolean shows =
        candidate.isPresent()
            && readings.shows(candidate.get().probing(), mistake, candidate.get().band());
    if (shows) {
      candidates.useful.putIfAbsent(probing, candidate.get());
    }
    return shows;
  }

  /** What the reading must be as drawn; empty if nobody can say. */
  private Optional<Band> band(Probing probing) {
    Span drawn = readings.drawn(probing);
    if (drawn.isOpen()) {
      return Optional.of(
          Band.atLeast(bands.figure("checklist.open-ohms").value() / DeadReadings.KILOHM, KILOHM));
    }
    if (!Double.isInfinite(drawn.high())) {
      return Optional.of(bands.read(drawn));
    }
    return drawn.low() > 0 ? Optional.of(Band.atLeast(drawn.low(), "Ω")) : Optional.empty();
  }

  /** The pins that the mistake is about, then those wired to them. */
  private List<Terminal> pins(Mistake mistake) {
    Set<Terminal> pins = new LinkedHashSet<>(touched(mistake));
    for (Terminal pin : List.copyOf(pins)) {
      for (Node node : circuit.find(pin).map(circuit::net).orElse(Set.of())) {
        node.terminals().stream().filter(t -> !circuit.wiresAt(t).isEmpty()).forEach(pins::add);
      }
    }
    return pins.stream().limit(MOST_PINS).toList();
  }

  private Set<Terminal> touched(Mistake mistake) {
    Set<Terminal> touched = new LinkedHashSet<>();
    for (int i : mistake.wires()) {
      Wire wire = circuit.netlist().wires().get(i);
      touched.add(wire.from().value());
      touched.add(wire.to().value());
    }
    mistake.laid().forEach(laid -> touched.addAll(List.of(laid.from(), laid.to())));
    mistake.turned().ifPresent(t -> touched.addAll(List.of(t.first(), t.second())));
    return touched;
  }

  /**
   * What is moved by hand, and what for: beside the row without it this one looks like a repeat.
   */
  private String why(Candidate candidate, List<Mistake> left, BitSet shown) {
    String moved = candidate.move().inWords();
    Optional<String> tells =
        shown.stream()
            .mapToObj(left::get)
            .flatMap(m -> m.laid().stream())
            .flatMap(laid -> tells(laid).stream())
            .findFirst();
    return moved.isEmpty() || tells.isEmpty() ? moved : moved + " " + tells.get();
  }

  private Optional<String> tells(Mistake.Laid laid) {
    Wire wire = circuit.netlist().wires().get(laid.wire());
    if (!wire.from().value().equals(laid.from())) {
      return Optional.of(texts.of("neighbours.tells", wire.from().value(), laid.from()));
    }
    return wire.to().value().equals(laid.to())
        ? Optional.empty()
        : Optional.of(texts.of("neighbours.tells", wire.to().value(), laid.to()));
  }

  private Row row(Candidate candidate, List<Mistake> left, BitSet shown) {
    Terminal from = candidate.probing().plus().get(0);
    Terminal to = candidate.probing().minus().get(0);
    Set<String> parts = new TreeSet<>();
    shown.stream()
        .mapToObj(left::get)
        .flatMap(m -> m.laid().stream())
        .forEach(
            laid -> {
              Wire wire = circuit.netlist().wires().get(laid.wire());
              if (!wire.from().value().equals(laid.from())) {
                parts.add(laid.from().part());
              }
              if (!wire.to().value().equals(laid.to())) {
                parts.add(laid.to().part());
              }
            });
    boolean open = candidate.band().unit().equals(KILOHM);
    String at = parts.isEmpty() ? from.part() + ", " + to.part() : String.join(", ", parts);
    return Row.of(
            texts,
            candidate.probing().directed() ? "neighbours-plus" : "neighbours",
            Names.of(
                from.part(),
                from.pin() + "-to-" + to,
                candidate.move().name().isEmpty()
                    ? new String[0]
                    : new String[] {candidate.move().name()}),
            candidate.band(),
            Reasons.of(
                texts.of(open ? "how.neighbours-open" : "how.neighbours"),
                bands.figure(open ? "checklist.open-ohms" : "checklist.probe-ohms")),
            from,
            to,
            at)
        .when(why(candidate, left, shown))
        .reading(candidate.probing());
  }
}
