package org.coilwright.solve;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.LoadElement;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Node;

/**
 * Parts a zone into circuits that share nothing but a {@link Feed}. Through a stiff feed they
 * hardly feel one another: what the others can draw at most, times the ohms they share, bounds what
 * each can lose or gain by them. Each circuit keeps the feed that it hangs on.
 */
final class Feeds {
  /**
   * A feed that loses more than this share of its voltage is not stiff. Twice as much in power is
   * still less than what {@link FaultJudge} counts as a change.
   */
  static final double STIFF = 0.02;

  /**
   * A circuit with its feed.
   *
   * @param sag volts that the other circuits can take from its feed, or add, at most; 0 if it
   *     shares none
   */
  record Share(List<Branch> branches, double sag) {}

  private final Setup setup;
  private final Alteration alteration;
  private final List<Branch> part;
  private final Reference reference;
  private final Feed feed;

  private Feeds(Setup setup, List<Branch> part, Reference reference, Alteration alteration) {
    this.setup = setup;
    this.alteration = alteration;
    this.part = part;
    this.reference = reference;
    this.feed = new Feed(setup, part, reference, alteration);
  }

  /** The circuits of a zone; just one where it cannot be parted, or nothing is won by it. */
  static List<Share> of(
      Setup setup, List<Branch> part, Reference reference, Alteration alteration) {
    List<Share> one = List.of(new Share(part, 0));
    boolean plain = part.stream().noneMatch(Source.class::isInstance);
    return plain && part.stream().filter(b -> moves(setup, b)).limit(2).count() > 1
        ? new Feeds(setup, part, reference, alteration).split().orElse(one)
        : one;
  }

  private static boolean moves(Setup setup, Branch branch) {
    return branch instanceof Contact contact && setup.variables.of(contact.actuator()) >= 0;
  }

  private Optional<List<Share>> split() {
    List<List<Branch>> circuits = feed.isShorted() ? List.of() : circuits();
    long moving = circuits.stream().filter(c -> c.stream().anyMatch(b -> moves(setup, b))).count();
    if (moving < 2) {
      return Optional.empty();
    }
    List<Set<Branch>> feeds = new ArrayList<>();
    List<Double> amps = new ArrayList<>();
    Map<Branch, Double> through = new HashMap<>();
    Set<Branch> idle = new LinkedHashSet<>(feed.branches());
    for (List<Branch> circuit : circuits) {
      double most = mostAmps(circuit);
      Set<Branch> own = feed.upTo(ends(circuit));
      feeds.add(own);
      amps.add(most);
      own.forEach(b -> through.merge(b, most, Double::sum));
      idle.removeAll(own);
    }
    List<Share> shares = new ArrayList<>();
    for (int c = 0; c < circuits.size(); c++) {
      double sag = 0;
      for (Branch branch : feeds.get(c)) {
        sag += (through.getOrDefault(branch, 0.0) - amps.get(c)) * ohms(branch);
      }
      // written so that what is not a number is not stiff
      if (!(sag <= STIFF * volts(circuits.get(c), Level.LOW, false))) {
        return Optional.empty();
      }
      List<Branch> all = new ArrayList<>(circuits.get(c));
      all.addAll(feeds.get(c));
      shares.add(new Share(inOrder(all), Math.max(0, sag)));
    }
    if (!idle.isEmpty()) {
      Set<Node> ends = new LinkedHashSet<>();
      idle.forEach(b -> ends.addAll(List.of(b.from(), b.to())));
      idle.addAll(feed.upTo(ends));
      shares.add(new Share(inOrder(idle), 0));
    }
    return Optional.of(shares);
  }

  private List<Branch> inOrder(Collection<Branch> some) {
    Set<Branch> set = new HashSet<>(some);
    return part.stream().filter(set::contains).toList();
  }

  /** What is left of the zone without the feed, by what hangs together; a load's elements do. */
  private List<List<Branch>> circuits() {
    Map<Object, Object> parent = new HashMap<>();
    List<Branch> rest = part.stream().filter(b -> !feed.holds(b)).toList();
    for (Branch branch : rest) {
      for (Node node : List.of(branch.from(), branch.to())) {
        if (!feed.reaches(node)) {
          parent.put(top(parent, branch), top(parent, node));
        }
      }
      if (branch instanceof LoadElement) {
        parent.put(top(parent, branch), top(parent, branch.part()));
      }
    }
    Map<Object, List<Branch>> circuits = new LinkedHashMap<>();
    for (Branch branch : rest) {
      circuits.computeIfAbsent(top(parent, branch), k -> new ArrayList<>()).add(branch);
    }
    return List.copyOf(circuits.values());
  }

  private static Object top(Map<Object, Object> parent, Object start) {
    Object node = start;
    Object above = parent.getOrDefault(node, node);
    while (!above.equals(node)) {
      node = above;
      above = parent.getOrDefault(node, node);
    }
    return node;
  }

  private Set<Node> ends(List<Branch> circuit) {
    Set<Node> ends = new LinkedHashSet<>();
    for (Branch branch : circuit) {
      ends.addAll(List.of(branch.from(), branch.to()));
    }
    ends.removeIf(node -> !feed.reaches(node));
    return ends;
  }

  /** The greatest voltage between two potentials that a circuit hangs on, or the least. */
  private double volts(List<Branch> circuit, Level level, boolean greatest) {
    List<Node> ends = List.copyOf(ends(circuit));
    double least = Double.POSITIVE_INFINITY;
    double most = 0;
    for (int i = 0; i < ends.size(); i++) {
      for (int j = 0; j < i; j++) {
        List<Reference.Leg> one = feed.potential(ends.get(i));
        List<Reference.Leg> other = feed.potential(ends.get(j));
        if (!one.equals(other)) {
          double volts =
              Math.hypot(
                  sum(one, level, true) - sum(other, level, true),
                  sum(one, level, false) - sum(other, level, false));
          least = Math.min(least, volts);
          most = Math.max(most, volts);
        }
      }
    }
    return greatest ? most : least;
  }

  private double sum(List<Reference.Leg> way, Level level, boolean real) {
    double sum = 0;
    for (Reference.Leg leg : way) {
      Source source = leg.source();
      Sources of = setup.sources;
      sum += leg.sign() * (real ? of.re(source, level) : of.im(source, level));
    }
    return sum;
  }

  /**
   * What a circuit draws at most, A: every element at the whole voltage. Without bound if contacts
   * alone may join two potentials. The impedances lie in a sector of the plane; elements in series
   * that partly cancel one another make up for no more than the cosine of half its angle.
   */
  private double mostAmps(List<Branch> circuit) {
    Map<Object, Object> parent = new HashMap<>();
    double siemens = 0;
    double least = 0;
    double most = 0;
    for (Branch branch : circuit) {
      Element element = setup.elements.of(branch, 0, 0, 1);
      switch (alteration.bridged().contains(branch) ? Element.Kind.WIRE : element.kind()) {
        case WIRE, CONTACT, DIODE ->
            parent.put(top(parent, branch.from()), top(parent, branch.to()));
        default -> {
          double here = 0;
          for (Impedance z : impedances(element)) {
            here = Math.max(here, z.size() > 0 ? 1 / z.size() : Double.POSITIVE_INFINITY);
            double angle = Math.atan2(z.im(), z.re());
            least = Math.min(least, angle);
            most = Math.max(most, angle);
          }
          siemens += here;
        }
      }
    }
    Map<Object, Node> met = new HashMap<>();
    for (Node end : ends(circuit)) {
      Node other = met.putIfAbsent(top(parent, end), end);
      if (other != null && !feed.potential(other).equals(feed.potential(end))) {
        return Double.POSITIVE_INFINITY;
      }
    }
    double volts = volts(circuit, Level.HIGH, true);
    return siemens == 0 || volts == 0 ? 0 : volts * siemens / Math.cos((most - least) / 2);
  }

  /** What an element may be worth at its least, pulling in and held, at the currents there are. */
  private Set<Impedance> impedances(Element element) {
    Set<Impedance> all = new LinkedHashSet<>();
    for (Values values : List.of(element.off(), element.on())) {
      for (boolean pulling : new boolean[] {true, false}) {
        if (reference.hasDirect()) {
          values.at(Level.LOW, true, pulling).ifPresent(all::add);
        }
        if (reference.hasMains()) {
          values.at(Level.LOW, false, pulling).ifPresent(all::add);
        }
      }
    }
    return all;
  }

  private double ohms(Branch branch) {
    return setup
        .elements
        .of(branch, 0, 0, 1)
        .on()
        .at(Level.HIGH, false, false)
        .map(Impedance::size)
        .orElse(0.0);
  }
}
