package org.coilwright.rules;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Part.MainsInput;
import org.coilwright.netlist.Terminal;
import org.coilwright.rules.Feeding.Kind;
import org.coilwright.rules.Feeding.Side;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;

/**
 * The mains input of a controller or of a supply unit, and what reaches it.
 *
 * @param pins the nodes of its first two pins
 * @param feeds each pair of sides that drives a current through it in some position
 */
record SupplyInput(Part part, MainsInput input, List<Node> pins, List<Feed> feeds) {
  /**
   * What lies across the two pins.
   *
   * @param direct true if it comes from a direct-voltage output
   * @param volts nominal; empty if that is not written
   */
  record Feed(Side one, Side other, boolean direct, Optional<Double> volts) {}

  /** Kept with the study. */
  private record All(List<SupplyInput> inputs) {}

  /** Every one that is written, in the order of the netlist; worked out once a study. */
  static List<SupplyInput> all(Study study) {
    return study.derived(All.class, s -> new All(workedOut(s))).inputs();
  }

  /** The netlist key it stands under: {@code mains} or {@code input}. */
  static String key(Part part) {
    return part instanceof Part.Controller ? "mains" : "input";
  }

  private static List<SupplyInput> workedOut(Study study) {
    Map<State, Feeding> feedings = new HashMap<>();
    List<SupplyInput> inputs = new ArrayList<>();
    for (Part part : study.circuit().netlist().parts().values()) {
      Part.inputOf(part)
          .map(input -> of(study, part, input, feedings))
          .filter(input -> input.pins().size() > 1)
          .ifPresent(inputs::add);
    }
    return List.copyOf(inputs);
  }

  private static SupplyInput of(
      Study study, Part part, MainsInput input, Map<State, Feeding> feedings) {
    Circuit circuit = study.circuit();
    List<Node> pins =
        input.pins().stream()
            .limit(2)
            .flatMap(pin -> circuit.find(new Terminal(part.name(), pin)).stream())
            .toList();
    if (pins.size() < 2) {
      return new SupplyInput(part, input, pins, List.of());
    }
    Set<Feed> possible = feeds(circuit, Feeding.whole(study), pins);
    Set<Feed> found = new LinkedHashSet<>();
    for (State state : study.statesToLookAtFor(part.name())) {
      if (found.size() == possible.size()) {
        break;
      }
      Feeding feeding = feedings.computeIfAbsent(state, s -> Feeding.in(study, s));
      found.addAll(feeds(circuit, feeding, pins));
    }
    return new SupplyInput(part, input, pins, List.copyOf(found));
  }

  private static Set<Feed> feeds(Circuit circuit, Feeding feeding, List<Node> pins) {
    Set<Feed> feeds = new LinkedHashSet<>();
    for (Side one : feeding.at(pins.get(0))) {
      for (Side other : feeding.at(pins.get(1))) {
        feed(circuit, one, other).ifPresent(feeds::add);
      }
    }
    return feeds;
  }

  /** Two sides of one direct-voltage output, or two of the mains; nothing else drives a current. */
  private static Optional<Feed> feed(Circuit circuit, Side one, Side other) {
    if (one.equals(other)) {
      return Optional.empty();
    }
    List<Source> between =
        circuit.branches(Source.class).stream()
            .filter(s -> isAt(s, one) || isAt(s, other))
            .toList();
    Optional<Source> whole =
        between.stream().filter(s -> isAt(s, one) && isAt(s, other)).findFirst();
    if (whole.isPresent()) {
      Source source = whole.get();
      return Optional.of(
          new Feed(one, other, source.isDirect(), source.volts().map(v -> v.nominal())));
    }
    boolean lines = one.kind() == Kind.LINE && other.kind() == Kind.LINE;
    return lines && between.get(0).from().equals(between.get(1).from())
        ? Optional.of(
            new Feed(one, other, false, SourceVolts.between(between.get(0), between.get(1))))
        : Optional.empty();
  }

  private static boolean isAt(Source source, Side side) {
    boolean forward = side.kind() == Kind.LINE || side.kind() == Kind.PLUS;
    return (forward ? source.to() : source.from()).equals(side.node());
  }

  /** True if anything is taken from the device: its supply or one of its outputs is wired. */
  static boolean isUsed(Study study, Part part) {
    Circuit circuit = study.circuit();
    return circuit.branchesOf(part.name()).stream()
        .filter(b -> b instanceof Source || b instanceof Contact)
        .anyMatch(b -> isWired(circuit, b));
  }

  private static boolean isWired(Circuit circuit, Branch branch) {
    return circuit.branchesAt(branch.from()).size() > 1
        || circuit.branchesAt(branch.to()).size() > 1;
  }

  /** The relays whose coils get their current from the device, in the order of the netlist. */
  List<String> relays(Study study) {
    return CoilFeed.all(study).stream()
        .filter(feed -> feed.sources().stream().anyMatch(s -> s.part().equals(part.name())))
        .map(CoilFeed::relay)
        .toList();
  }
}
