package org.coilwright.solve;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.coilwright.circuit.Branch;
import org.coilwright.circuit.Circuit;
import org.coilwright.circuit.Circuit.Island;
import org.coilwright.netlist.Terminal;

/** Looks through the steady states of every group for what no circuit should do. */
final class Troubles {
  /** A coil or load that takes less than this share of its rated current is not at work. */
  private static final double AT_WORK = 0.01;

  private final Circuit circuit;
  private final Sources sources;
  private final List<Trouble> found = new ArrayList<>();
  private final Set<String> told = new HashSet<>();

  Troubles(Circuit circuit, Sources sources) {
    this.circuit = circuit;
    this.sources = sources;
  }

  List<Trouble> in(List<Exploration> explorations, States states) {
    explorations.forEach(e -> look(e, states));
    circuit.islands().forEach(this::floating);
    return List.copyOf(found);
  }

  private void look(Exploration exploration, States states) {
    Group group = exploration.group;
    if (!exploration.complete) {
      List<String> contacts =
          group.variables.subList(0, group.independents()).stream()
              .map(v -> group.all.columns().get(v))
              .toList();
      boolean orders = exploration.cut;
      found.add(
          new Trouble.NotExplored(
              positions(exploration, new BitSet()),
              orders ? exploration.allRelays() : contacts,
              orders ? Settling.MOST_MOMENTS : Exploration.MOST_CONTACTS,
              orders));
    }
    found.addAll(Unsettled.in(exploration));
    for (BitSet moved : exploration.order()) {
      List<BitSet> steady = exploration.steady.getOrDefault(moved, List.of());
      Map<String, Boolean> positions = positions(exploration, moved);
      if (steady.isEmpty() && !exploration.cut) {
        List<BitSet> round = exploration.round(moved);
        List<String> relays = exploration.restless(round);
        if (told.add("restless " + relays)) {
          found.add(new Trouble.NoSteadyState(positions, relays));
        }
        // A relay may buzz because what it closes short-circuits what feeds it.
        for (BitSet bits : round) {
          Situation situation = group.situation(bits);
          group.zones.forEach(z -> shorts(situation.flow(z, Corner.NOMINAL), positions));
        }
      }
      // A short-circuit pulls down what its supply feeds; what the armatures do then is its fault.
      if (steady.size() > 1 && steady.stream().noneMatch(bits -> isShorted(group, bits))) {
        BitSet differ = (BitSet) steady.get(0).clone();
        differ.xor(steady.get(1));
        List<String> relays = exploration.relays(differ);
        if (told.add("two " + relays)) {
          List<State> of = states.of(exploration, moved);
          found.add(
              new Trouble.TwoSteadyStates(
                  positions, relays, of.get(0), of.get(1), exploration.raced.contains(moved)));
        }
      }
      for (BitSet bits : steady) {
        Situation situation = group.situation(bits);
        for (Zone zone : group.zones) {
          ZoneFlow flow = situation.flow(zone, Corner.NOMINAL);
          if (!flow.consistent()) {
            continue;
          }
          shorts(flow, positions);
          if (Ways.bare(flow).shorts().isEmpty()) {
            sneaks(flow, positions);
          }
        }
      }
    }
  }

  /** True if some source of the group has a path without a load. */
  static boolean isShorted(Group group, BitSet bits) {
    Situation situation = group.situation(bits);
    return group.zones.stream()
        .anyMatch(z -> !Ways.bare(situation.flow(z, Corner.NOMINAL)).shorts().isEmpty());
  }

  static Map<String, Boolean> positions(Exploration exploration, BitSet moved) {
    Map<String, Boolean> positions = new LinkedHashMap<>();
    Variables variables = exploration.group.all;
    for (int slot = 0; slot < exploration.group.independents(); slot++) {
      int variable = exploration.group.variables.get(slot);
      positions.put(
          variables.columns().get(variable), variables.atRest(variable) != moved.get(slot));
    }
    return positions;
  }

  private void shorts(ZoneFlow flow, Map<String, Boolean> positions) {
    Ways ways = Ways.bare(flow);
    for (Ways.Joined s : ways.shorts()) {
      Optional<Branch.Path> path = ways.path(s, circuit);
      if (path.isPresent() && told.add("short " + s.source().id() + path.get().inWords())) {
        double volts =
            s.other().equals(s.source().to())
                ? sources.volts(s.source(), Level.NOMINAL)
                : lineToLine(s.source());
        double amps = volts / Math.max(ways.ohms(path.get()), 1e-6);
        double limit =
            s.source()
                .limitAmps()
                .orElseGet(
                    () ->
                        circuit
                            .netlist()
                            .site()
                            .mains()
                            .filter(m -> !s.source().isDirect())
                            .flatMap(m -> m.faultCurrent())
                            .map(w -> w.value().nominal())
                            .orElse(Double.POSITIVE_INFINITY));
        found.add(
            new Trouble.ShortCircuit(
                positions, s.source().id(), path.get(), Math.min(amps, limit)));
      }
    }
  }

  /** The largest voltage between this line and another. */
  private double lineToLine(Branch.Source line) {
    return circuit.islandOf(line.to()).sources().stream()
        .filter(s -> !s.isDirect())
        .mapToDouble(
            s ->
                Math.hypot(
                    sources.re(s, Level.NOMINAL) - sources.re(line, Level.NOMINAL),
                    sources.im(s, Level.NOMINAL) - sources.im(line, Level.NOMINAL)))
        .max()
        .orElse(0);
  }

  private void sneaks(ZoneFlow flow, Map<String, Boolean> positions) {
    List<Element> working =
        flow.zone().elements.stream()
            .filter(Element::isConsumer)
            .filter(e -> isWorking(flow, e))
            .toList();
    if (working.size() < 2) {
      return;
    }
    Ways ways = Ways.withPassives(flow);
    for (Element victim : working) {
      boolean from = isFed(ways, flow, victim, victim.from());
      boolean to = isFed(ways, flow, victim, victim.to());
      if (from && to) {
        continue;
      }
      int end = from ? victim.to() : victim.from();
      Optional<Element> through =
          working.stream()
              .filter(e -> !e.branch().part().equals(victim.branch().part()))
              .filter(e -> ways.joined(e.from(), end) || ways.joined(e.to(), end))
              .findFirst();
      through.ifPresent(other -> tell(flow, positions, victim, other, end));
    }
  }

  private void tell(
      ZoneFlow flow, Map<String, Boolean> positions, Element victim, Element other, int end) {
    String one = victim.branch().part();
    String two = other.branch().part();
    String pair = one.compareTo(two) < 0 ? one + " " + two : two + " " + one;
    if (!told.add("sneak " + pair)) {
      return;
    }
    Set<Branch> leading = new HashSet<>(List.of(victim.branch(), other.branch()));
    for (Element element : flow.zone().elements) {
      if (Ways.isBare(flow, element) || element.kind() == Element.Kind.PASSIVE) {
        leading.add(element.branch());
      }
    }
    boolean near = other.from() == end || other.to() != end;
    var start = flow.zone().nodes.get(end == victim.from() ? victim.to() : victim.from());
    var stop = flow.zone().nodes.get(near ? other.to() : other.from());
    Optional<Branch.Path> path = circuit.path(start, stop, leading::contains);
    path.ifPresent(
        p -> found.add(new Trouble.SneakPath(positions, one, two, p, flow.volts(victim))));
  }

  private static boolean isWorking(ZoneFlow flow, Element element) {
    double rated = 0;
    if (element.branch() instanceof Branch.Coil coil) {
      rated = coil.spec().voltage().value().nominal();
    } else if (element.branch() instanceof Branch.LoadElement load) {
      rated = load.ratedVolts().orElse(0);
    }
    return rated > 0 && flow.volts(element) > AT_WORK * rated;
  }

  /** A supply terminal, or another element of the same load, is joined to this end. */
  private static boolean isFed(Ways ways, ZoneFlow flow, Element element, int end) {
    return !ways.sourcesAt(end).isEmpty()
        || flow.zone().elements.stream()
            .anyMatch(
                e ->
                    e.number() != element.number()
                        && e.isConsumer()
                        && e.branch().part().equals(element.branch().part())
                        && (e.from() == end || e.to() == end));
  }

  private void floating(Island island) {
    boolean matters =
        island.branches().stream()
            .anyMatch(b -> b instanceof Branch.Coil || b instanceof Branch.LoadElement);
    boolean wired = island.branches().stream().anyMatch(b -> b instanceof Branch.Conductor);
    if (matters && wired && island.sources().isEmpty()) {
      List<String> pins =
          island.nodes().stream()
              .flatMap(n -> n.terminals().stream())
              .map(Terminal::toString)
              .toList();
      found.add(new Trouble.Floating(Map.of(), pins));
    }
  }
}
