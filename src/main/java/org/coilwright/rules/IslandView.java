package org.coilwright.rules;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Node;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Site;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Written;
import org.coilwright.rule.Outcome;
import org.coilwright.rule.RuleFacts;
import org.coilwright.rule.Subject;
import org.coilwright.sizing.Overcurrent;
import org.coilwright.sizing.PowerSide;
import org.coilwright.solve.Study;

/**
 * A circuit in island operation: the mains are off, and its own source feeds it. The source is
 * where sources are drawn; where none is, it comes in like the mains.
 */
final class IslandView {
  private final PowerSides.Seen seen;
  private final Site.Island written;
  private final List<Node> lines;
  private final List<Node> neutrals;
  private final boolean drawn;
  private final Map<Part, List<Path>> ways = new LinkedHashMap<>();

  private IslandView(PowerSides.Seen seen, Site.Island written) {
    this.seen = seen;
    this.written = written;
    // an inverter that stops with the mains feeds no island
    List<Part> sources =
        wired(circuit(), Part.Source.class).stream()
            .filter(p -> islands(p).filter(yes -> !yes).isEmpty())
            .toList();
    this.drawn = !sources.isEmpty();
    List<Part> entries = drawn ? sources : wired(circuit(), Part.Mains.class);
    this.lines = pins(entries, pin -> pin.startsWith("L"));
    this.neutrals = pins(entries, pin -> pin.equals("N"));
    for (Part load : seen.side().mainsLoads()) {
      List<Path> found =
          circuit().outerNodesOf(load.name()).stream()
              .flatMap(pin -> lines.stream().flatMap(line -> ways(line, pin).stream()))
              .filter(path -> isFed(path, load))
              .map(this::behind)
              .toList();
      if (!found.isEmpty()) {
        ways.put(load, found);
      }
    }
  }

  /**
   * Asks one question of island operation. Where nothing is written about it and a controller may
   * close on a load by itself, it is undecided; where there is none, nothing is asked.
   */
  static List<Outcome> ask(
      Study study, PowerSides sides, RuleFacts rule, Function<IslandView, List<Outcome>> question) {
    Netlist netlist = study.circuit().netlist();
    Optional<Site.Island> island = netlist.site().island();
    if (island.isPresent()) {
      Optional<Part> unsaid =
          wired(study.circuit(), Part.Source.class).stream()
              .filter(p -> ((Part.Source) p).kind().value().equals("inverter"))
              .filter(p -> islands(p).isEmpty())
              .findFirst();
      if (island.get().exists() && unsaid.isPresent()) {
        return List.of(
            Subject.of(rule, unsaid.get().head().mark(), unsaid.get().name())
                .undecided(
                    "islands of " + unsaid.get().name(),
                    "Whether %s feeds on when the mains fail is not written: many inverters stop with them."
                        .formatted(unsaid.get().name())));
      }
      return island.get().exists()
          ? question.apply(new IslandView(sides.of(study), island.get()))
          : List.of();
    }
    boolean byItself =
        netlist.parts().values().stream()
            .anyMatch(p -> p instanceof Part.Controller c && !c.outputs().isEmpty());
    if (!byItself || sides.of(study).side().mainsLoads().isEmpty()) {
      return List.of();
    }
    return List.of(
        Subject.of(rule, netlist.site().mark(), "site")
            .undecided(
                "site.island",
                "What feeds this circuit when the mains fail: an inverter with a battery, a"
                    + " generator? If nothing does, write island: none."));
  }

  private static Optional<Boolean> islands(Part source) {
    return ((Part.Source) source).islands().map(Written::value);
  }

  private static <P extends Part> List<Part> wired(Circuit circuit, Class<P> kind) {
    return circuit.netlist().parts().values().stream()
        .filter(kind::isInstance)
        .filter(
            part ->
                part.pins().stream()
                    .filter(pin -> pin.startsWith("L"))
                    .anyMatch(p -> !circuit.wiresAt(new Terminal(part.name(), p)).isEmpty()))
        .toList();
  }

  private List<Node> pins(List<Part> parts, java.util.function.Predicate<String> which) {
    return parts.stream()
        .flatMap(
            part ->
                part.pins().stream()
                    .filter(which)
                    .flatMap(pin -> circuit().find(new Terminal(part.name(), pin)).stream()))
        .toList();
  }

  private List<Path> ways(Node line, Node pin) {
    return circuit().paths(line, pin, PowerSide::isWay).stream()
        .filter(
            path ->
                path.nodes().stream()
                    .skip(1)
                    .noneMatch(node -> lines.contains(node) || neutrals.contains(node)))
        .toList();
  }

  private boolean isFed(Path path, Part load) {
    Set<String> feeds =
        written.feeds().stream()
            .map(Written::value)
            .collect(Collectors.toCollection(LinkedHashSet::new));
    return feeds.isEmpty()
        || feeds.contains(load.name())
        || path.branches().stream().anyMatch(b -> feeds.contains(b.part()))
        || path.nodes().stream()
            .flatMap(node -> node.terminals().stream())
            .anyMatch(t -> feeds.contains(t.part()) && circuit().branchesOf(t.part()).isEmpty());
  }

  /**
   * What of a way lies behind the part at which the source feeds in: no device ahead of it helps.
   */
  private Path behind(Path path) {
    Set<String> feeds = written.feeds().stream().map(Written::value).collect(Collectors.toSet());
    for (int i = 0; i < path.branches().size(); i++) {
      if (feeds.contains(path.branches().get(i).part())) {
        return from(path, i);
      }
    }
    for (int i = 0; i < path.nodes().size(); i++) {
      if (path.nodes().get(i).terminals().stream().anyMatch(t -> feeds.contains(t.part()))) {
        return from(path, i);
      }
    }
    return path;
  }

  private static Path from(Path path, int first) {
    return new Path(
        path.nodes().subList(first, path.nodes().size()),
        path.branches().subList(first, path.branches().size()));
  }

  PowerSides.Seen seen() {
    return seen;
  }

  Site.Island written() {
    return written;
  }

  Circuit circuit() {
    return seen.side().circuit();
  }

  /** Loads that it feeds, in the order of the netlist. */
  List<Part> loads() {
    return List.copyOf(ways.keySet());
  }

  /** Ways from a line of its source to a load. */
  List<Path> waysOf(Part load) {
    return ways.getOrDefault(load, List.of());
  }

  /** Residual-current devices that every line of a load passes, in the order of the netlist. */
  List<Part.Protective> residual(Part load) {
    return circuit().netlist().parts().values().stream()
        .filter(p -> p instanceof Part.Protective device && device.isRcd())
        .map(Part.Protective.class::cast)
        .filter(device -> waysOf(load).stream().allMatch(way -> passes(way, device)))
        .toList();
  }

  private static boolean passes(Path way, Part device) {
    return way.branches().stream()
        .anyMatch(b -> b instanceof Contact && b.part().equals(device.name()));
  }

  /**
   * True if the neutral is joined to earth on the source's side of a device: by the source, or at
   * the origin, as long as the source's neutral does not get there through the device.
   */
  boolean isBehindBond(Part.Protective device) {
    String bond = written.neutralBond().map(Written::value).orElse("none");
    if (bond.equals("none")) {
      return false;
    }
    if (bond.equals("by-inverter") || !drawn) {
      return true;
    }
    List<Node> origin = pins(wired(circuit(), Part.Mains.class), pin -> pin.equals("N"));
    Set<Node> near =
        circuit()
            .reach(
                neutrals,
                b ->
                    PowerSide.isWay(b)
                        && !(b instanceof Contact && b.part().equals(device.name())));
    return origin.stream().anyMatch(near::contains);
  }

  /** Fuses and circuit-breakers in the line's ways of a load. */
  List<Part> overcurrent(Path way) {
    List<Part> devices = new ArrayList<>();
    for (Branch branch : way.branches()) {
      Overcurrent.device(circuit(), branch)
          .filter(d -> !devices.contains(d))
          .ifPresent(devices::add);
    }
    return devices;
  }
}
