package org.coilwright.sizing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Conductor;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.circuit.Routes;
import org.coilwright.netlist.Part;

/**
 * Which overcurrent device stands between the mains and a point: of all ways to it the one that
 * lets most through counts.
 */
public final class Guards {
  private final Circuit circuit;
  private final List<Node> lines;
  private final Map<Contact, Part> devices = new LinkedHashMap<>();
  private final Set<Node> unguarded = new LinkedHashSet<>();
  private final List<Level> levels = new ArrayList<>();

  private final Routes bare;
  private final Routes whole;

  private record Level(double rating, Set<Node> reached, Routes ways) {}

  /** Every device of a circuit's mains side. */
  public Guards(Circuit circuit) {
    this.circuit = circuit;
    lines =
        circuit.branches(Source.class).stream().filter(s -> !s.isDirect()).map(Source::to).toList();
    circuit
        .branches(Contact.class)
        .forEach(c -> Overcurrent.device(circuit, c).ifPresent(d -> devices.put(c, d)));
    bare = circuit.routes(this::isBare);
    whole = circuit.routes(PowerSide::isWay);
    unguarded.addAll(reach(this::isBare));
    devices.values().stream()
        .distinct()
        .map(Guards::rating)
        .distinct()
        .sorted((a, b) -> Double.compare(b, a))
        .forEach(r -> levels.add(level(r)));
  }

  private Level level(double rating) {
    Predicate<Branch> passed = b -> PowerSide.isWay(b) && passes(b, rating);
    return new Level(rating, reach(passed), circuit.routes(passed));
  }

  private Set<Node> reach(Predicate<Branch> admitted) {
    Set<Node> all = new LinkedHashSet<>();
    lines.forEach(l -> all.addAll(circuit.reach(l, admitted)));
    return all;
  }

  private boolean isBare(Branch branch) {
    return PowerSide.isWay(branch) && !(branch instanceof Contact c && devices.containsKey(c));
  }

  private boolean passes(Branch branch, double rating) {
    return !(branch instanceof Contact c) || !devices.containsKey(c) || ratingOf(c) >= rating;
  }

  private double ratingOf(Contact contact) {
    Part device = devices.get(contact);
    return device == null ? Double.POSITIVE_INFINITY : rating(device);
  }

  /** An unwritten rating counts as the largest. */
  private static double rating(Part device) {
    return Overcurrent.rating(device).orElse(Double.POSITIVE_INFINITY);
  }

  /** True if a mains line gets there without any overcurrent device. */
  public boolean isUnguarded(Node node) {
    return unguarded.contains(node);
  }

  /** True if a mains line gets there at all. */
  public boolean isLive(Node node) {
    return isUnguarded(node) || levels.stream().anyMatch(l -> l.reached().contains(node));
  }

  /** The device that limits what a point can be fed with; empty if none does. */
  public Optional<Part> of(Node node) {
    if (isUnguarded(node)) {
      return Optional.empty();
    }
    return levels.stream()
        .filter(l -> l.reached().contains(node))
        .findFirst()
        .flatMap(level -> nearest(node, level));
  }

  private Optional<Part> nearest(Node node, Level level) {
    for (Node line : lines) {
      Optional<Path> way = level.ways().shortest(line, node);
      if (way.isPresent()) {
        List<Branch> branches = way.get().branches();
        for (int i = branches.size() - 1; i >= 0; i--) {
          if (branches.get(i) instanceof Contact c && devices.containsKey(c)) {
            Part device = devices.get(c);
            if (device != null && rating(device) == level.rating()) {
              return Optional.of(device);
            }
          }
        }
      }
    }
    return Optional.empty();
  }

  /**
   * For a wire before the first device: the devices that it alone feeds, which together limit what
   * it can carry for long.
   *
   * @return empty if something else than a device hangs behind it
   */
  public Optional<List<Part>> behind(Conductor wire) {
    Set<Node> fed = new LinkedHashSet<>();
    for (Node end : List.of(wire.from(), wire.to())) {
      if (unguarded.contains(end) && lines.stream().allMatch(l -> isNeeded(wire, l, end))) {
        fed.addAll(circuit.reach(end, b -> isBare(b) && !b.equals(wire)));
      }
    }
    Set<Part> found = new LinkedHashSet<>();
    for (Node node : fed) {
      for (Branch branch : circuit.branchesAt(node)) {
        if (branch instanceof Contact c && devices.containsKey(c)) {
          Part device = devices.get(c);
          if (device != null) {
            found.add(device);
          }
        } else if (!PowerSide.isWay(branch) && !(branch instanceof Source)) {
          return Optional.empty();
        }
      }
    }
    return Optional.of(List.copyOf(found));
  }

  /**
   * The devices that a wire alone feeds, with nothing but wires and contacts in between.
   *
   * @return empty if something else hangs behind it, or another way leads there
   */
  public Optional<List<Part>> endsIn(Conductor wire) {
    Optional<Node> far =
        List.of(wire.from(), wire.to()).stream()
            .filter(this::isLive)
            .filter(end -> lines.stream().noneMatch(l -> whole.leadWithout(List.of(wire), l, end)))
            .findFirst();
    if (far.isEmpty()) {
      return Optional.empty();
    }
    Set<Part> found = new LinkedHashSet<>();
    for (Node node : circuit.reach(far.get(), b -> isBare(b) && !b.equals(wire))) {
      for (Branch branch : circuit.branchesAt(node)) {
        Part device = branch instanceof Contact c ? devices.get(c) : null;
        if (device != null) {
          found.add(device);
        } else if (!PowerSide.isWay(branch) || branch instanceof Contact) {
          return Optional.empty();
        }
      }
    }
    return Optional.of(List.copyOf(found));
  }

  /** The way of bare wires and contacts from a line to a point, if one leads there. */
  public Optional<Path> bareWay(Node point) {
    return lines.stream().flatMap(l -> bare.shortest(l, point).stream()).findFirst();
  }

  /** True if no way but through the wire leads from a line to a point. */
  private boolean isNeeded(Conductor wire, Node line, Node point) {
    return !bare.leadWithout(List.of(wire), line, point);
  }

  /** What some devices let through together for long, A; empty if a rating is not written. */
  public static OptionalDouble together(List<Part> devices) {
    double sum = 0;
    for (Part device : devices) {
      OptionalDouble rating = Overcurrent.rating(device);
      if (rating.isEmpty()) {
        return rating;
      }
      sum += rating.getAsDouble();
    }
    return OptionalDouble.of(sum);
  }
}
