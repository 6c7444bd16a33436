// Over 250 lines: all named questions stand where callers look for them.
package org.coilwright.circuit;

import static java.util.stream.Collectors.toCollection;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Predicate;
import org.coilwright.circuit.Branch.Contact;
import org.coilwright.circuit.Branch.Path;
import org.coilwright.circuit.Branch.Source;
import org.coilwright.netlist.Netlist;
import org.coilwright.netlist.Part;
import org.coilwright.netlist.Terminal;
import org.coilwright.netlist.Wire;
import org.coilwright.netlist.Written;
import org.coilwright.quantity.Quantity;
import org.jspecify.annotations.Nullable;

/** What is wired, as questions a person would ask. Nothing here knows a voltage. */
public final class Circuit {
  /** How many ways between two nodes are looked at where nobody says otherwise. */
  static final int MOST_PATHS = 64;

  private final Netlist netlist;
  private final Terminals terminals;
  private final List<Branch> branches;
  private final Map<String, Branch> byId = new HashMap<>();
  private final Map<String, List<Branch>> byPart = new HashMap<>();
  private final Map<Terminal, List<Wire>> wiresAt = new HashMap<>();
  private final Map<Actuator, List<Contact>> contacts = new LinkedHashMap<>();
  private final List<Actuator> independents;
  private final Map<String, Actuator> independentByName = new HashMap<>();
  private final Map<Class<?>, List<Branch>> byKind = new ConcurrentHashMap<>();
  private final BranchGraph graph;
  private final Map<String, List<Branch.Conductor>> wiresIn = new HashMap<>();
  private final Map<Branch, Integer> places = new HashMap<>();
  private volatile @Nullable Routes ways;
  private final List<Island> islands;
  private final Map<Node, Island> islandOf = new HashMap<>();

  private final Optional<Quantity> unwrittenAir;

  private Circuit(Netlist netlist, Optional<Quantity> unwrittenAir) {
    this.netlist = netlist;
    this.unwrittenAir = unwrittenAir;
    this.terminals = new Terminals(netlist);
    PartBranches parts = new PartBranches(netlist, terminals);
    List<Branch> all = new ArrayList<>(parts.branches());
    all.addAll(Conductors.of(netlist, terminals));
    this.branches = List.copyOf(all);
    parts.actuators().values().forEach(a -> contacts.put(a, new ArrayList<>()));
    for (Branch branch : branches) {
      byId.put(branch.id(), branch);
      places.put(branch, places.size());
      byPart.computeIfAbsent(branch.part(), p -> new ArrayList<>()).add(branch);
      if (branch instanceof Branch.Conductor wire && wire.run().isPresent()) {
        wiresIn.computeIfAbsent(wire.run().get().name(), r -> new ArrayList<>()).add(wire);
      }
      if (branch instanceof Contact contact) {
        contacts.computeIfAbsent(contact.actuator(), a -> new ArrayList<>()).add(contact);
      }
    }
    this.independents = independents(netlist, contacts.keySet());
    independents.forEach(actuator -> independentByName.put(actuator.name(), actuator));
    for (Wire wire : netlist.wires()) {
      wiresAt.computeIfAbsent(wire.from().value(), t -> new ArrayList<>()).add(wire);
      if (!wire.to().value().equals(wire.from().value())) {
        wiresAt.computeIfAbsent(wire.to().value(), t -> new ArrayList<>()).add(wire);
      }
    }
    this.graph = new BranchGraph(terminals.nodes(), branches);
    this.islands = graph.islands();
    islands.forEach(island -> island.nodes().forEach(node -> islandOf.put(node, island)));
  }

  /**
   * The circuit that a netlist describes.
   *
   * @throws IllegalArgumentException if a wire names a terminal that no part has: the reader lets
   *     no such netlist through
   */
  public static Circuit of(Netlist netlist) {
    return new Circuit(netlist, Optional.empty());
  }

  /** The same in air that is not written: computed from the losses in its box, or typed. */
  public Circuit in(Quantity air) {
    return new Circuit(netlist, Optional.of(air));
  }

  /** The air it is in although it is not written; see {@link #in}. */
  public Optional<Quantity> unwrittenAir() {
    return unwrittenAir;
  }

  /** The air in the box, written or not; empty if nothing gives it. */
  public Optional<Quantity> insideAir() {
    return netlist.site().enclosureAir().map(Written::value).or(() -> unwrittenAir);
  }

  /** The air around the devices: that in the box, else that of the room. */
  public Optional<Quantity> airAround() {
    return insideAir().or(() -> netlist.site().ambient().map(Written::value));
  }

  public Netlist netlist() {
    return netlist;
  }

  /** Every node, in the order of the netlist. */
  public List<Node> nodes() {
    return List.copyOf(terminals.nodes());
  }

  /** The node a terminal belongs to; empty if no part has it. */
  public Optional<Node> find(Terminal terminal) {
    return terminals.find(terminal);
  }

  /** Every branch, in the order of the netlist: parts first, then wires. */
  public List<Branch> branches() {
    return branches;
  }

  /** The branches of one kind, in the same order. */
  public <B extends Branch> List<B> branches(Class<B> kind) {
    List<Branch> found =
        byKind.computeIfAbsent(kind, k -> branches.stream().filter(k::isInstance).toList());
    @SuppressWarnings("unchecked") // every one of them was asked whether it is of this kind
    List<B> ofKind = (List<B>) (List<?>) found;
    return ofKind;
  }

  /** The branch with this id. */
  public Optional<Branch> branch(String id) {
    return Optional.ofNullable(byId.get(id));
  }

  /** The branches that belong to a part. */
  public List<Branch> branchesOf(String part) {
    return List.copyOf(byPart.getOrDefault(part, List.of()));
  }

  /** The branches that end at a node. */
  public List<Branch> branchesAt(Node node) {
    return graph.branchesAt(node);
  }

  /** The wires that end at this very terminal (not at its node's other terminals). */
  public List<Wire> wiresAt(Terminal terminal) {
    return List.copyOf(wiresAt.getOrDefault(terminal, List.of()));
  }

  /** The wires that lie in a run, in the order of the netlist. */
  public List<Branch.Conductor> wiresIn(String run) {
    return Collections.unmodifiableList(wiresIn.getOrDefault(run, List.of()));
  }

  /** Everything that conducting branches of any kind and in any position join: galvanic islands. */
  public List<Island> islands() {
    return islands;
  }

  /**
   * The island of a node.
   *
   * @throws IllegalArgumentException if the node is not of this circuit
   */
  public Island islandOf(Node node) {
    Island island = islandOf.get(node);
    if (island == null) {
      throw new IllegalArgumentException("not a node of this circuit: " + node);
    }
    return island;
  }

  /** What a node belongs to, by the sources of its island. */
  public Domain domain(Node node) {
    return islandOf(node).domain();
  }

  /** All nodes that wires alone join to this one, itself included. */
  public Set<Node> net(Node node) {
    return reach(node, b -> b instanceof Branch.Conductor);
  }

  /**
   * Simple paths through branches that {@code through} admits, shortest first, at most {@code
   * most}.
   */
  public List<Path> paths(Node from, Node to, Predicate<? super Branch> through, int most) {
    return routes(through).between(from, to, most);
  }

  /**
   * The ways through branches that {@code through} admits, for whoever asks for many pairs of
   * nodes.
   */
  public Routes routes(Predicate<? super Branch> through) {
    return graph.routes(through);
  }

  /** Simple paths as above, as many as a person could want to follow. */
  public List<Path> paths(Node from, Node to, Predicate<? super Branch> through) {
    return paths(from, to, through, MOST_PATHS);
  }

  /** The shortest path through admitted branches, if there is one. */
  public Optional<Path> path(Node from, Node to, Predicate<? super Branch> through) {
    return graph.path(Set.of(from), to, through);
  }

  /**
   * The shortest way through wires, contacts and diodes that are admitted, if there is one. Costs
   * what lies between the two nodes, not what else hangs on them.
   */
  public Optional<Path> way(Node from, Node to, Predicate<? super Branch> admitted) {
    return ways().shortest(from, to, admitted, this::place);
  }

  /** Ways through wires, contacts and diodes; prepared at the first question. */
  private Routes ways() {
    Routes known = ways;
    if (known == null) {
      known = routes(Circuit::isWay);
      ways = known;
    }
    return known;
  }

  /** Where a branch stands among {@link #branches}. */
  public int place(Branch branch) {
    return places.getOrDefault(branch, 0);
  }

  /** The sources in the islands of some nodes, in the order of the netlist. */
  private List<Source> sourcesOf(Collection<Node> nodes) {
    Set<Island> those = new LinkedHashSet<>();
    nodes.forEach(node -> those.add(islandOf(node)));
    return those.stream()
        .flatMap(island -> island.sources().stream())
        .sorted(Comparator.comparingInt(this::place))
        .toList();
  }

  /**
   * The shortest ways through admitted branches from a node to all others: what {@link #path} finds
   * to each, for the price of one.
   */
  public ShortestWays waysFrom(Node from, Predicate<? super Branch> through) {
    return graph.ways(from, through);
  }

  /** Every node that admitted branches reach from {@code from}, itself included. */
  public Set<Node> reach(Node from, Predicate<? super Branch> through) {
    return graph.reach(Set.of(from), through);
  }

  /** Every node that admitted branches reach from any of {@code from}, those included. */
  public Set<Node> reach(Collection<Node> from, Predicate<? super Branch> through) {
    return graph.reach(from, through);
  }

  /** Branches whose loss alone parts an island in two. */
  public Set<Branch> bridges(Island island) {
    return graph.bridges(island);
  }

  /** True if taking {@code removed} out leaves no way through admitted branches. */
  public boolean cuts(
      Collection<? extends Branch> removed, Node from, Node to, Predicate<? super Branch> through) {
    Set<Branch> out = new HashSet<>(removed);
    return path(from, to, b -> !out.contains(b) && through.test(b)).isEmpty();
  }

  /**
   * Ways from a mains line or a supply's plus to {@code load} that do not pass {@code contacts}:
   * through wires, diodes and other contacts in whatever position, never through a coil or load.
   * The shortest one for each pair of supply terminal and load pin.
   */
  public List<Path> pathsAround(Collection<Contact> contacts, String load) {
    Set<Branch> barred = new HashSet<>(contacts);
    List<Path> around = new ArrayList<>();
    Set<Node> pins = outerNodesOf(load);
    for (Source source : sourcesOf(pins)) {
      for (Node pin : pins) {
        if (islandOf(pin) == islandOf(source.to())) {
          way(source.to(), pin, b -> !barred.contains(b)).ifPresent(around::add);
        }
      }
    }
    return around;
  }

  /**
   * Branches that every way from some supply terminal to some pin of one of these loads passes:
   * without one of them that way is gone.
   */
  public Set<Branch> inevitableBefore(Collection<String> loads) {
    Routes ways = routes(Circuit::isWay);
    Map<Integer, List<Source>> sources = new HashMap<>();
    islands.forEach(island -> sources.put(island.number(), island.sources()));
    Set<Branch> inevitable = new HashSet<>();
    for (String load : loads) {
      for (Node pin : outerNodesOf(load)) {
        for (Source source : sources.getOrDefault(islandOf(pin).number(), List.of())) {
          inevitable.addAll(ways.inevitable(source.to(), pin));
        }
      }
    }
    return inevitable;
  }

  /** The nodes of a part's pins where one of its branches ends, in the order of the branches. */
  public Set<Node> outerNodesOf(String part) {
    return branchesOf(part).stream()
        .flatMap(b -> List.of(b.from(), b.to()).stream())
        .filter(node -> !node.terminals().isEmpty())
        .collect(toCollection(LinkedHashSet::new));
  }

  /** The sources that wires, contacts in any position and diodes join to an end of this branch. */
  public List<Source> suppliesOf(Branch branch) {
    Set<Node> near = graph.reach(List.of(branch.from(), branch.to()), Circuit::isWay);
    return branches(Source.class).stream()
        .filter(s -> near.contains(s.from()) || near.contains(s.to()))
        .toList();
  }

  /** Wires, contacts and diodes: what a current takes to get somewhere without doing work. */
  public static boolean isWay(Branch branch) {
    return branch instanceof Branch.Conductor
        || branch instanceof Contact
        || branch instanceof Branch.DiodeBranch;
  }

  /**
   * Actuators of the independent contacts, in the order of the netlist. Coils are left out, and so
   * are protective devices, which count as closed, unless {@code intent} names them.
   */
  public List<Actuator> independentActuators() {
    return independents;
  }

  /** The actuator of an independent contact, by the name the table and {@code intent} have. */
  public Optional<Actuator> independentActuator(String name) {
    return Optional.ofNullable(independentByName.get(name));
  }

  private static List<Actuator> independents(Netlist netlist, Set<Actuator> all) {
    Set<String> named = new HashSet<>();
    netlist.intent().values().forEach(intent -> named.addAll(intent.value().names()));
    return all.stream()
        .filter(
            a ->
                switch (a.kind()) {
                  case OUTPUT, SWITCH, THERMOSTAT, CUT_OUT -> true;
                  case PROTECTIVE -> named.contains(a.name());
                  case COIL -> false;
                })
        .toList();
  }

  /** The contacts that an actuator moves. */
  public List<Contact> contactsOf(Actuator actuator) {
    return List.copyOf(contacts.getOrDefault(actuator, List.of()));
  }

  /** A galvanic island. */
  public static final class Island {
    private final int number;
    private final Set<Node> nodes;
    private final List<Branch> branches;
    private final List<Source> sources;

    /** An island of these nodes and branches. */
    public Island(int number, Set<Node> nodes, List<Branch> branches) {
      this.number = number;
      this.nodes = nodes;
      this.branches = branches;
      this.sources =
          branches.stream().filter(Source.class::isInstance).map(Source.class::cast).toList();
    }

    /** Islands are counted from 1, in the order of their first node. */
    public int number() {
      return number;
    }

    public Set<Node> nodes() {
      return nodes;
    }

    public List<Branch> branches() {
      return branches;
    }

    /** True if an alternating source (the mains) feeds it. */
    public boolean hasMains() {
      return sources.stream().anyMatch(s -> !s.isDirect());
    }

    /** True if a direct source feeds it. */
    public boolean hasDirect() {
      return sources.stream().anyMatch(Source::isDirect);
    }

    /** Its sources, in the order of the netlist. */
    public List<Source> sources() {
      return sources;
    }

    /** What it belongs to, by its sources. */
    public Domain domain() {
      if (sources.isEmpty()) {
        return Domain.NONE;
      }
      if (hasMains()) {
        return Domain.MAINS;
      }
      Domain domain = Domain.SELV;
      for (Source source : sources) {
        Optional<Part.Isolation> isolation =
            source.output().flatMap(Part.DcOutput::isolation).map(w -> w.value());
        if (isolation.isEmpty() || isolation.get() == Part.Isolation.NONE) {
          return Domain.UNDECLARED_ELV;
        }
        if (isolation.get() == Part.Isolation.PELV) {
          domain = Domain.PELV;
        }
      }
      return domain;
    }
  }
}
