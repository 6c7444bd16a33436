// Over 250 lines: every question about the circuit that a row asks, in one place.
package org.coilwright.checklist;

import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Terminal;
import org.coilwright.solve.State;
import org.coilwright.solve.Study;

/** What the rows and cautions need to know about a circuit, as named questions. */
final class Anatomy {
  /** The pin of the protective conductor. */
  static final String PE = "PE";

  private final Study study;
  private final Circuit circuit;

  Anatomy(Study study) {
    this.study = study;
    this.circuit = study.circuit();
  }

  Study study() {
    return study;
  }

  Circuit circuit() {
    return circuit;
  }

  Netlist netlist() {
    return circuit.netlist();
  }

  <P extends Part> List<P> parts(Class<P> kind) {
    return netlist().parts().values().stream().filter(kind::isInstance).map(kind::cast).toList();
  }

  <P extends Part> boolean has(Class<P> kind, Predicate<? super P> which) {
    return parts(kind).stream().anyMatch(which);
  }

  boolean hasPhases(Site.Phases phases) {
    return mains().filter(m -> m.phases().value() == phases).isPresent();
  }

  /** Heaters and other loads. */
  List<Part> loads() {
    return netlist().parts().values().stream()
        .filter(p -> p instanceof Part.Heater || p instanceof Part.OtherLoad)
        .toList();
  }

  Optional<Site.MainsSupply> mains() {
    return parts(Part.Mains.class).isEmpty() ? Optional.empty() : netlist().site().mains();
  }

  boolean isNec() {
    return netlist().site().practice().value() == Site.Practice.NEC;
  }

  Optional<Node> node(String part, String pin) {
    return circuit.find(new Terminal(part, pin));
  }

  /** A pin that somebody has wired. */
  boolean wired(String part, String pin) {
    return !circuit.wiresAt(new Terminal(part, pin)).isEmpty();
  }

  /** True if a protective conductor is wired to a load. */
  boolean earthed(Part load) {
    return wired(load.name(), PE);
  }

  /** Positions that decide whether a relay pulls in; all of them if none does alone. */
  List<String> columnsOf(String relay) {
    List<String> deciding =
        study.columns().stream().filter(column -> decides(column, relay)).toList();
    return deciding.isEmpty() ? study.columns() : deciding;
  }

  private boolean decides(String column, String relay) {
    return sound(relay)
        .anyMatch(
            state ->
                stateBeside(state, column)
                    .filter(
                        beside ->
                            !Boolean.valueOf(beside.pulledIn().getOrDefault(relay, false))
                                .equals(state.pulledIn().getOrDefault(relay, false)))
                    .isPresent());
  }

  /** True if every load can be kept off by a device of its own while the control side is on. */
  boolean loadsStayOff() {
    return loads().isEmpty() || !loadOnlyProtection().isEmpty();
  }

  /** Pins of a load that carry its current, in the order of the device. */
  List<String> livePins(Part load) {
    return load.pins().stream().filter(p -> !p.equals(PE)).toList();
  }

  Optional<Branch.Coil> coil(Part.Relay relay) {
    return circuit.branchesOf(relay.name()).stream()
        .filter(Branch.Coil.class::isInstance)
        .map(Branch.Coil.class::cast)
        .findFirst();
  }

  /** True if the mains reaches this node's island. */
  boolean onMains(Node node) {
    return circuit.islandOf(node).hasMains();
  }

  /** True for a coil in a direct-voltage circuit that nothing joins to the mains. */
  boolean elvCoil(Part.Relay relay) {
    return coil(relay)
        .map(c -> circuit.islandOf(c.from()))
        .map(i -> i.hasDirect() && !i.hasMains())
        .orElse(false);
  }

  boolean mainsCoil(Part.Relay relay) {
    return coil(relay).map(c -> onMains(c.from())).orElse(false);
  }

  /** Direct-voltage sources. */
  List<Branch.Source> directSources() {
    return circuit.branches(Branch.Source.class).stream().filter(Branch.Source::isDirect).toList();
  }

  /** Inputs at which devices take their own mains. */
  List<Branch.Input> inputs() {
    return circuit.branches(Branch.Input.class);
  }

  /** What a conductor at this node carries, in one or two words. */
  String carries(Node node) {
    boolean protective =
        circuit.net(node).stream()
            .flatMap(n -> n.terminals().stream())
            .anyMatch(t -> t.pin().equals(PE));
    if (protective) {
      return PE;
    }
    Circuit.Island island = circuit.islandOf(node);
    if (island.hasMains()) {
      return "mains";
    }
    return island.hasDirect() ? "ELV" : "no supply";
  }

  /** Ways of the current: wires and contacts in any position. */
  private static boolean conducts(Branch branch) {
    return branch instanceof Branch.Conductor || branch instanceof Branch.Contact;
  }

  /** Breakers, fuses and residual-current devices without which some of these nodes is cut off. */
  Set<String> protectionOf(Collection<Node> fed) {
    Set<String> names = new LinkedHashSet<>();
    study
        .derived(Behind.class, s -> new Behind(behind()))
        .devices()
        .forEach(
            (name, cutOff) -> {
              if (fed.stream().anyMatch(cutOff::contains)) {
                names.add(name);
              }
            });
    return names;
  }

  /** The nodes that each protective device cuts off from some line, in the order of the netlist. */
  private record Behind(Map<String, Set<Node>> devices) {}

  private Map<String, Set<Node>> behind() {
    Map<String, Set<Node>> behind = new LinkedHashMap<>();
    for (Branch.Source line : circuit.branches(Branch.Source.class)) {
      if (!line.isDirect()) {
        Set<Node> all = circuit.reach(line.to(), Anatomy::conducts);
        for (Part part : netlist().parts().values()) {
          if (part instanceof Part.Protective || part instanceof Part.Fuse) {
            behind
                .computeIfAbsent(part.name(), n -> new HashSet<>())
                .addAll(cutOff(part, line.to(), all));
          }
        }
      }
    }
    return behind;
  }

  private Set<Node> cutOff(Part device, Node line, Set<Node> all) {
    Set<Branch> own = new HashSet<>(circuit.branchesOf(device.name()));
    boolean leads = own.stream().anyMatch(b -> all.contains(b.from()));
    if (!leads) {
      return Set.of();
    }
    Set<Node> left = circuit.reach(line, b -> conducts(b) && !own.contains(b));
    Set<Node> lost = new HashSet<>();
    for (Node node : all) {
      if (!left.contains(node)) {
        lost.add(node);
      }
    }
    return lost;
  }

  /** Nodes of a load's live pins. */
  List<Node> nodesOf(Part load) {
    return livePins(load).stream().flatMap(p -> node(load.name(), p).stream()).toList();
  }

  /** Devices that part every load from the mains and leave the control side on. */
  Set<String> loadOnlyProtection() {
    Set<String> loadSide =
        protectionOf(loads().stream().flatMap(l -> nodesOf(l).stream()).toList());
    loadSide.removeAll(controlProtection());
    return loadSide;
  }

  /** Devices through which controllers and supply units are fed. */
  Set<String> controlProtection() {
    return protectionOf(inputs().stream().flatMap(i -> Stream.of(i.from(), i.to())).toList());
  }

  /** The first state without a short-circuit in which a relay is pulled in, or is not. */
  Optional<State> stateWith(String relay, boolean in) {
    return sound(relay).filter(s -> s.pulledIn().getOrDefault(relay, false) == in).findFirst();
  }

  /** The state in which a load takes most. */
  Optional<State> stateWithOn(String load) {
    return sound(load)
        .filter(s -> study.load(load, s).on())
        .max(Comparator.comparingDouble(s -> study.load(load, s).watts()));
  }

  /** The first state in which a load is off. */
  Optional<State> stateWithOff(String load) {
    return sound(load).filter(s -> !study.load(load, s).on()).findFirst();
  }

  /** The state that differs from another in one position only. */
  Optional<State> stateBeside(State state, String column) {
    Map<String, Boolean> positions = new HashMap<>(state.positions());
    positions.put(column, !positions.getOrDefault(column, false));
    return study.states().stream().filter(s -> s.positions().equals(positions)).findFirst();
  }

  private Stream<State> sound(String part) {
    return study.statesFor(part).stream().filter(s -> !study.isShorted(s));
  }
}
